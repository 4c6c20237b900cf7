import type { Resolved } from "#contract/resolve/question";
import type { BagPlan, BagStage, BagStretch } from "#engine/planning/bag/bagPlan";
import type { BagQuestion } from "#engine/planning/bag/question";
import type { Worked } from "#engine/planning/bag/states";
import { BAG } from "#words/en/bag";
import { SHOT_DEFAULTS } from "#words/en/shotReport";
import { fixed } from "#words/figures";
import { messageText } from "#words/messageText";
import { type Column, paragraph, textTable } from "./textTable.ts";

const WIDTH = 100;

/** A bag plan as text: what it is worth, what to do beforehand, which ball when and why, what it says of the bag. */
export function bagText(plan: BagPlan, { question, defaults }: Resolved<BagQuestion>): string {
  const { session } = question;
  const sections = [
    [BAG.heading(question.bowler.name, question.balls.length, session.games), ...sums(plan)],
    plan.stages.length === 0 ? [] : [`${BAG.beforehand}:`, ...beforehand(plan)],
    plan.stages.length === 0 ? [] : [`${BAG.through}:`, ...plan.stretches.flatMap((stretch) => stretchLines(stretch, session.stagesAGame))],
    plan.stages.length === 0 ? [] : stageTable(plan.stages, session.stagesAGame),
    [...comparisons(plan), ...plan.messages.map(messageText)].flatMap((line) => paragraph(line, "", WIDTH)),
    [
      ...paragraph(BAG.assumed, "", WIDTH),
      ...(defaults.length === 0 ? [] : paragraph(`${SHOT_DEFAULTS}: ${told(defaults).join(", ")}`, "", WIDTH)),
    ],
  ];
  return `${sections
    .filter((section) => section.length > 0)
    .map((section) => section.join("\n"))
    .join("\n\n")}\n`;
}

function sums({ strikes, frames, changes, sure, sureShare }: BagPlan): string[] {
  if (strikes === null) return [];
  return [
    `  ${BAG.strikes(strikes.value, strikes.low, strikes.high, frames)}, ${BAG.changes(changes)}`,
    `  ${BAG.sure[sure]}: ${BAG.sureText(sureShare)}`,
  ];
}

function worked({ finish, asItLies }: Worked): string {
  return asItLies ? BAG.asItLies(finish) : finish;
}

function beforehand({ balls }: BagPlan): string[] {
  const thrown = balls.filter(({ role }) => role === "thrown");
  const work = thrown.filter(({ asItLies }) => !asItLies).map(({ name, today, finish, minutes }) => BAG.work(name, today, finish, minutes));
  const byHand = thrown.flatMap(({ name, byHand: hand }) =>
    hand === null ? [] : [BAG.byHand(name, hand.number, hand.beforeGame, hand.minutes)],
  );
  const named = (role: string) => balls.filter((ball) => ball.role === role).map(({ name }) => name);
  const [stay, aside] = [named("notNeeded"), named("aside")];
  return [
    ...(work.length + byHand.length === 0 ? [BAG.nothingBeforehand] : [...work, ...byHand]),
    ...(stay.length === 0 ? [] : [BAG.stay(stay)]),
    ...(aside.length === 0 ? [] : [BAG.aside(aside)]),
  ].flatMap((line) => paragraph(line, "  ", WIDTH));
}

function stretchLines({ fromStage, toStage, ball, runnerUp, gain, reasons, ...state }: BagStretch, parts: number): string[] {
  const place = (stage: number) => BAG.place(1 + Math.floor(stage / parts), 1 + (stage % parts), parts);
  const lines = [`  ${BAG.stretch(ball, worked(state), place(fromStage), place(toStage))}`];
  if (runnerUp === null || gain === null) return lines;
  const why = reasons.map(messageText).join("; ");
  const against = BAG.against(runnerUp.ball, worked(runnerUp), gain.value, gain.low, gain.high);
  return [...lines, ...paragraph(`${against}; ${why}.`, "    ", WIDTH)];
}

function stageTable(stages: readonly BagStage[], parts: number): string[] {
  const { columns } = BAG;
  const column = (heading: readonly [string, string], align: Column["align"], cell: (stage: BagStage) => string): Column => ({
    heading,
    cells: stages.map(cell),
    align,
  });
  const orDash = (value: number | null, decimals: number) => (value === null ? "–" : fixed(value, decimals));
  return textTable(
    [
      column(columns.when, "left", ({ game, part }) => BAG.place(game, part, parts)),
      column(columns.ball, "left", ({ ball, ...state }) => `${ball}, ${worked(state)}`),
      column(columns.line, "left", ({ line }) => (line === null ? "–" : BAG.line(line.laydownBoard, line.launchAngleDeg))),
      column(columns.hook, "right", ({ hookStartFt }) => orDash(hookStartFt, 1)),
      column(columns.entry, "right", ({ entryAngleDeg }) => orDash(entryAngleDeg, 1)),
      column(
        columns.chance,
        "right",
        ({ chance }) => `${fixed(100 * chance.value, 0)} (${fixed(100 * chance.low, 0)}–${fixed(100 * chance.high, 0)})`,
      ),
      column(columns.oil, "right", ({ oilMl }) => fixed(oilMl, 1)),
    ],
    2,
  );
}

function comparisons({ balls, againstNoWork, againstOneBall, mostPossible, minutes, changes }: BagPlan): string[] {
  return [
    ...balls.flatMap(({ name, lostWithout }) =>
      lostWithout === null ? [] : [BAG.without(name, lostWithout.value, lostWithout.low, lostWithout.high)],
    ),
    ...(againstNoWork === null || minutes === 0 ? [] : [BAG.noWork(againstNoWork.value, againstNoWork.low, againstNoWork.high)]),
    ...(againstOneBall === null || changes === 0
      ? []
      : [
          BAG.oneBall(
            againstOneBall.ball,
            worked(againstOneBall),
            againstOneBall.gain.value,
            againstOneBall.gain.low,
            againstOneBall.gain.high,
          ),
        ]),
    ...(mostPossible === null
      ? []
      : [
          BAG.mostPossible(
            mostPossible.gain.value,
            mostPossible.gain.low,
            mostPossible.gain.high,
            mostPossible.minutes,
            mostPossible.changes,
          ),
        ]),
  ];
}

/** The same field of several balls is told once. */
function told(defaults: readonly string[]): readonly string[] {
  return [...new Set(defaults.map((path) => path.replace(/^balls\[\d+\]/, "balls[]")))];
}
