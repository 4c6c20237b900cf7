import type { Candidate, FinishPlan } from "#engine/planning/plan";
import { COLUMNS } from "#words/en/planReport";
import { fixed, signed } from "#words/figures";
import { type Column, textTable } from "./textTable.ts";

const NONE = "–";

/** The candidates side by side; the pick is marked `>`, today's finish `*`. */
export function candidateTable(plan: FinishPlan): string[] {
  const { candidates } = plan;
  const mark = ({ finish }: Candidate) => `${finish === plan.pick?.finish ? ">" : " "}${finish === plan.today.finish ? "*" : " "}${finish}`;
  const figures = (heading: readonly [string, string], cell: (candidate: Candidate) => string): Column => ({
    heading,
    cells: candidates.map(cell),
    align: "right",
  });
  return textTable([
    { heading: [`  ${COLUMNS.finish[0]}`, ""], cells: candidates.map(mark), align: "left" },
    figures(COLUMNS.laydown, ({ line }) => figure(line?.laydownBoard, 1)),
    figures(COLUMNS.launch, ({ line }) => figure(line?.launchAngleDeg, 2)),
    figures(COLUMNS.hook, ({ hookStartFt }) => figure(hookStartFt, 1)),
    figures(COLUMNS.roll, ({ rollStartFt }) => figure(rollStartFt, 1)),
    figures(COLUMNS.entry, ({ entryAngleDeg }) => figure(entryAngleDeg, 1)),
    figures(COLUMNS.slip, ({ slipAtPinsMps }) => figure(slipAtPinsMps, 2)),
    figures(COLUMNS.speed, ({ speedAtPinsMph }) => figure(speedAtPinsMph, 1)),
    figures(COLUMNS.chance, chanceCell),
    figures(COLUMNS.roomLaunch, ({ missRoom }) => figure(missRoom?.launchAngleDeg, 2)),
    figures(COLUMNS.roomSpeed, ({ missRoom }) => figure(missRoom?.speedMph, 1)),
    figures(COLUMNS.roomBoards, ({ missRoom }) => figure(missRoom?.boards, 1)),
    figures(COLUMNS.change, ({ onTodaysLine }) => (onTodaysLine === null ? NONE : signed(onTodaysLine.boardChange, 1))),
  ]);
}

function figure(value: number | null | undefined, decimals: number): string {
  return value === null || value === undefined ? NONE : fixed(value, decimals);
}

function chanceCell({ chance }: Candidate): string {
  if (chance === null) return NONE;
  return `${fixed(100 * chance.value, 0)} (${fixed(100 * chance.low, 0)}–${fixed(100 * chance.high, 0)})`;
}
