import type { Candidate, FinishPlan, Interval } from "#engine/planning/plan";
import { tiedChance } from "#engine/planning/tiedChance";
import { COLUMNS } from "#words/en/planReport";
import { fixed, signed } from "#words/figures";
import { type Column, textTable } from "./textTable.ts";

const NONE = "–";

/** The candidates side by side, each on its own line; the pick is marked `>`, today's finish `*`. */
export function candidateTable(plan: FinishPlan): string[] {
  const figures = figuresOf(plan);
  return textTable([
    namesOf(plan),
    figures(COLUMNS.laydown, ({ line }) => figure(line?.laydownBoard, 1)),
    figures(COLUMNS.launch, ({ line }) => figure(line?.launchAngleDeg, 2)),
    figures(COLUMNS.hook, ({ hookStartFt }) => figure(hookStartFt, 1)),
    figures(COLUMNS.roll, ({ rollStartFt }) => figure(rollStartFt, 1)),
    figures(COLUMNS.entry, ({ entryAngleDeg }) => figure(entryAngleDeg, 1)),
    figures(COLUMNS.slip, ({ slipAtPinsMps }) => figure(slipAtPinsMps, 2)),
    figures(COLUMNS.speed, ({ speedAtPinsMph }) => figure(speedAtPinsMph, 1)),
    plan.metric === "expectedPins"
      ? figures(COLUMNS.pins, ({ expectedPins }) => ranged(expectedPins, 1, 1))
      : figures(COLUMNS.chance, ({ finish, chance }) => ranged(tiedChance(plan, finish) ?? chance, 100, 0)),
    figures(COLUMNS.lossLaunch, ({ missLoss }) => inHundred(missLoss?.halfDegree)),
    figures(COLUMNS.lossSpeed, ({ missLoss }) => inHundred(missLoss?.mph)),
    figures(COLUMNS.lossBoard, ({ missLoss }) => inHundred(missLoss?.board)),
  ]);
}

/** The same on the line that is played today, and the move from it; nothing where nobody knows one. */
export function todaysLineTable(plan: FinishPlan): string[] {
  if (plan.candidates.every(({ onTodaysLine }) => onTodaysLine === null)) return [];
  const figures = figuresOf(plan);
  return textTable([
    namesOf(plan),
    figures(COLUMNS.change, ({ onTodaysLine }) => (onTodaysLine === null ? NONE : signed(onTodaysLine.boardChange, 1))),
    figures(COLUMNS.held, ({ onTodaysLine }) => figure(onTodaysLine?.chance && 100 * onTodaysLine.chance.value, 0)),
    figures(COLUMNS.feet, ({ onTodaysLine }) => moved(onTodaysLine?.move?.feetBoards)),
    figures(COLUMNS.target, ({ onTodaysLine }) => moved(onTodaysLine?.move?.targetBoards)),
  ]);
}

function namesOf({ candidates, pick, today }: FinishPlan): Column {
  const mark = (finish: string) => `${finish === pick?.finish ? ">" : " "}${finish === today.finish ? "*" : " "}${finish}`;
  return { heading: [`  ${COLUMNS.finish[0]}`, ""], cells: candidates.map(({ finish }) => mark(finish)), align: "left" };
}

function figuresOf({ candidates }: FinishPlan) {
  return (heading: readonly [string, string], cell: (candidate: Candidate) => string): Column => ({
    heading,
    cells: candidates.map(cell),
    align: "right",
  });
}

function figure(value: number | null | undefined, decimals: number): string {
  return value === null || value === undefined ? NONE : fixed(value, decimals);
}

function inHundred(share: number | undefined): string {
  return figure(share === undefined ? null : 100 * share, 1);
}

/** Boards of a move, to the half board that a bowler can stand on. */
function moved(boards: number | undefined): string {
  return boards === undefined ? NONE : signed(Math.round(2 * boards) / 2, 1);
}

function ranged(interval: Interval | null, times: number, decimals: number): string {
  if (interval === null) return NONE;
  const { value, low, high } = interval;
  return `${fixed(times * value, decimals)} (${fixed(times * low, decimals)}–${fixed(times * high, decimals)})`;
}
