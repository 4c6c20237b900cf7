import { knownCover } from "#engine/ball/ball";
import { meaningOf } from "#engine/planning/pictures";
import type { FinishPlan } from "#engine/planning/plan";
import type { PlanQuestion } from "#engine/planning/question";
import { oilOf } from "#server/plans/oilOf";
import { coverWord } from "#words/coverWord";
import { customerLines } from "#words/customerLines";
import { LEAVES_IN_WORDS, leaveMeaningText, pinsText } from "#words/en/carry";
import {
  cliffText,
  HEADINGS,
  handText,
  keepsText,
  LOSS_NOTE,
  lineText,
  NAMED_LINE_NOTE,
  NO_LINE,
  oilText,
  plateauText,
  sureText,
  TABLE_NOTES,
  TODAYS_LINE_NOTES,
  todaysLineText,
} from "#words/en/planReport";
import { BALL_JOB_WORDS } from "#words/en/screens";
import { messageText } from "#words/messageText";
import { assumptionTable } from "./assumptionTable.ts";
import { candidateTable, todaysLineTable } from "./candidateTable.ts";
import { plateauLines } from "./plateauLines.ts";
import { paragraph } from "./textTable.ts";

const WIDTH = 100;

/** The plan as a page of text for the technician, with a few lines for the customer at the end. */
export function planText(plan: FinishPlan, question: PlanQuestion, defaults: readonly string[]): string {
  const agreeing = plan.rules.filter((rule) => rule.agrees).map(({ message }) => messageText(message));
  const disagreeing = plan.rules
    .filter((rule) => !rule.agrees)
    .map(({ message, why }) => (why === null ? messageText(message) : `${messageText(message)} Here not: ${messageText(why)}`));
  const sections = [
    heading(plan, question),
    [`${HEADINGS.candidates}:`, "", ...candidateTable(plan), "", ...TABLE_NOTES.flatMap((note) => paragraph(note, "  ", WIDTH))],
    onTodaysLine(plan, question),
    pickLines(plan),
    list(HEADINGS.pins, pinsLines(plan, question)),
    list(HEADINGS.messages, plan.messages.map(messageText)),
    list(HEADINGS.reasons, plan.reasons.map(messageText)),
    list(HEADINGS.customer, customerLines(plan)),
    list(HEADINGS.agree, agreeing),
    list(HEADINGS.disagree, disagreeing),
    [`${HEADINGS.assumptions}:`, ...assumptionTable(plan.assumptions)],
    defaults.length === 0 ? [] : [`${HEADINGS.defaults}:`, ...paragraph(defaults.join(", "), "  ", WIDTH)],
    list(HEADINGS.cautions, plan.cautions.map(messageText)),
  ];
  return `${sections
    .filter((section) => section.length > 0)
    .map((section) => section.join("\n"))
    .join("\n\n")}\n`;
}

/** What the pins do with each finish, and what the likeliest leaves of the pick tell. */
function pinsLines({ candidates, pick }: FinishPlan, question: PlanQuestion): string[] {
  const picked = candidates.find(({ finish }) => finish === pick?.finish)?.pins ?? null;
  const meanings = (picked?.leaves ?? []).slice(0, LEAVES_IN_WORDS).map(({ leave }) => leaveMeaningText(leave, meaningOf(question, leave)));
  return [
    ...candidates.flatMap(({ finish, pins }) => (pins === null ? [] : [pinsText(finish, pins)])),
    ...(meanings.length === 0 ? [] : [`${meanings.join("; ")}.`]),
  ];
}

function heading(plan: FinishPlan, { bowler, ball, lane }: PlanQuestion): string[] {
  const { pattern } = lane;
  const patternName = pattern.kind === "named" ? pattern.id : pattern.kind === "oilSheet" ? pattern.sheet.name : pattern.name;
  const oil = oilOf(pattern);
  const played = lane.playedShots === 0 ? "fresh" : `after ${lane.playedShots} shots`;
  const line = plan.today.line === null ? NO_LINE : lineText(plan.today.line.laydownBoard, plan.today.line.launchAngleDeg);
  return [
    `${ball.name}: ${coverWord(knownCover(ball))}, ${BALL_JOB_WORDS[ball.job]}`,
    `${bowler.name}, ${handText(bowler)} · ${patternName}, ${played}`,
    oilText(oil, oil.stated.ratio),
    todaysLineText(plan.today.finish, line),
  ];
}

/** Every finish without a move, and the move that brings it to its own line. */
function onTodaysLine(plan: FinishPlan, { line }: PlanQuestion): string[] {
  const table = todaysLineTable(plan);
  return table.length === 0
    ? []
    : [
        `${HEADINGS.onTodaysLine}:`,
        "",
        ...table,
        "",
        ...[...TODAYS_LINE_NOTES, ...(line === null ? [] : [NAMED_LINE_NOTE])].flatMap((note) => paragraph(note, "  ", WIDTH)),
      ];
}

function pickLines(plan: FinishPlan): string[] {
  if (plan.pick === null) return [];
  const { finish, plateau, cliff, sure, sureShare } = plan.pick;
  return [
    `${HEADINGS.pickLine}: ${plateauText(plateau, finish)}`,
    "",
    ...plateauLines(plan),
    ...(plan.candidates.some((candidate) => candidate.chance !== null) ? [`  ${LOSS_NOTE}`] : []),
    "",
    ...paragraph(
      keepsText(plan.candidates.flatMap(({ finish: name, keepsGames }) => (keepsGames ? [{ finish: name, ...keepsGames }] : []))),
      "  ",
      WIDTH,
    ),
    ...paragraph(cliffText(cliff), "  ", WIDTH),
    ...paragraph(sureText(sure, sureShare, plan.worlds), "  ", WIDTH),
  ];
}

function list(title: string, items: readonly string[]): string[] {
  return items.length === 0 ? [] : [`${title}:`, ...items.flatMap((item) => paragraph(item, "  · ", WIDTH))];
}
