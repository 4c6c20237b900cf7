import type { ResolvedCorrection } from "#contract/correctFile";
import { type CorrectionRun, hasSettled, type Learned } from "#engine/learning/house/correct";
import type { Misfit } from "#engine/learning/house/misfit";
import type { NextShot } from "#engine/learning/house/nextShot";
import type { Parameter } from "#engine/learning/house/parameters";
import type { FinishPlan } from "#engine/planning/plan";
import { WORLDS } from "#engine/planning/worldCounts";
import { chanceChange, type PlanChange } from "#tasks/planChanges";
import { BAG } from "#words/en/bag";
import { CORRECT, misfitText, parameterName } from "#words/en/correct";
import { SHOT_DEFAULTS } from "#words/en/shotReport";
import { type Column, paragraph, textTable } from "./textTable.ts";

const WIDTH = 100;
const MOST_NEXT = 3;

/** A house correction as text: what was learned, what was not, what to look at next, and what it does to the plans. */
export function correctText(
  { correction }: CorrectionRun,
  misfit: Misfit,
  next: readonly NextShot[],
  plans: readonly PlanChange[],
  { question, names, handNames, defaults }: ResolvedCorrection,
): string {
  const nameOf = (of: Parameter) => parameterName(of, handNames);
  const lineOf = ({ situation }: NextShot) =>
    BAG.line(question.situations[situation].line.laydownBoard, question.situations[situation].line.launchAngleDeg);
  const sections = [
    [CORRECT.heading(correction.shots, question.situations.length)],
    parameterTable(correction.parameters, nameOf),
    ...(misfit.isExplained ? [] : [paragraph(misfitText(misfit, names), "", WIDTH)]),
    [
      CORRECT.restsOn(correction.worlds),
      ...(correction.beyond.length === 0 ? [] : [CORRECT.beyond(correction.beyond.map(nameOf))]),
      ...(correction.untold.length === 0 ? [] : [CORRECT.untold(correction.untold.map(nameOf))]),
      ...correction.tied.map(({ pair: [a, b], correlation }) => CORRECT.tied(nameOf(a), nameOf(b), correlation)),
      ...(!hasSettled(correction) ? [CORRECT.notConverged(correction.worstRhat)] : []),
      CORRECT.held,
    ].flatMap((line) => paragraph(line, "", WIDTH)),
    [
      `${CORRECT.next}:`,
      ...next
        .slice(0, MOST_NEXT)
        .flatMap((shot) =>
          paragraph(CORRECT.nextLine(names[shot.situation], lineOf(shot), shot.nats, nameOf(shot.tells), shot.left), "  ", WIDTH),
        ),
    ],
    [...paragraph(`${CORRECT.plans(WORLDS.final)}:`, "", WIDTH), ...plans.flatMap((change) => paragraph(planLine(change), "  ", WIDTH))],
    [
      ...paragraph(CORRECT.jobHouse, "", WIDTH),
      ...(defaults.length === 0 ? [] : paragraph(`${SHOT_DEFAULTS}: ${defaults.join(", ")}`, "", WIDTH)),
    ],
  ];
  return `${sections.map((section) => section.join("\n")).join("\n\n")}\n`;
}

function parameterTable(parameters: readonly Learned[], nameOf: (of: Parameter) => string): string[] {
  const figure = ({ id }: Learned, value: number) => CORRECT.figure(id, value);
  const column = (heading: readonly [string, string], align: Column["align"], cell: (one: Learned) => string): Column => ({
    heading,
    cells: parameters.map(cell),
    align,
  });
  const { columns } = CORRECT;
  return textTable(
    [
      column(columns.what, "left", (one) => `  ${nameOf(one)}`),
      column(columns.before, "right", (one) => `${figure(one, one.before.low)} – ${figure(one, one.before.high)}`),
      column(columns.after, "right", (one) => figure(one, one.value)),
      column(columns.range, "right", (one) => `${figure(one, one.low)} – ${figure(one, one.high)}`),
      column(columns.left, "right", ({ left }) => CORRECT.percent(left)),
    ],
    2,
  );
}

function planLine(change: PlanChange): string {
  return CORRECT.planLine(change.ball, pickOf(change.before), pickOf(change.after), 100 * chanceChange(change));
}

function pickOf({ pick }: FinishPlan): string {
  return pick?.finish ?? CORRECT.noPick;
}
