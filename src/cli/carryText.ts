import { assume } from "#engine/assumptions";
import type { Hand } from "#engine/delivery/bowler";
import { CARRY_TABLE, type CarryResult, type HitPoint, leaveSeen, strikeMap } from "#engine/pins/carry";
import { CARRY as TABLE } from "#engine/pins/carryData";
import type { QualityName } from "#engine/pins/carryGrid";
import { type Explanation, leaveMeaning, type Seen } from "#engine/pins/explain";
import { leaveText } from "#engine/pins/leave";
import { CARRY, changesText, explainedText, leaveMeaningText, liesText } from "#words/en/carry";
import { paragraph } from "./textTable.ts";

const WIDTH = 110;

/** What the pins do at one hit, or about one. */
export interface HitAnswer {
  readonly hit: HitPoint;
  readonly scatter: { readonly boards: number; readonly entryDeg: number } | null;
  /** Of the hit itself, or over the scatter. */
  readonly chance: { readonly value: number; readonly low: number; readonly high: number };
  readonly carry: CarryResult;
}

export interface CarryReport {
  readonly hand: Hand;
  readonly hits: readonly HitAnswer[];
  readonly seen: readonly Seen[];
  readonly explanation: Explanation | null;
}

/** The report as text: each hit with its chance and leaves, then what explains the leaves that were seen. */
export function carryText(report: CarryReport): string {
  const sections = [
    ...report.hits.map((hit) => hitLines(hit, report)),
    report.explanation === null ? [] : explanationLines(report),
    paragraph(CARRY.simulated(TABLE.provenance.runs), "", WIDTH),
  ];
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join("\n"))
    .join("\n\n")}\n`;
}

function hitLines({ hit, scatter, chance, carry }: HitAnswer, { hand }: CarryReport): string[] {
  const place = `${CARRY.hit(hit.board, hit.entryDeg)}${scatter === null ? "" : `, ${CARRY.scattered(scatter.boards, scatter.entryDeg)}`}`;
  const leaves = [
    ...carry.leaves.map(({ leave, share }) => `${leaveText(leaveSeen(leave, hand))} (${CARRY.share(100 * share)})`),
    `${CARRY.other} (${CARRY.share(100 * carry.other)})`,
  ];
  return [
    `${place}: ${CARRY.chance(chance.value, chance.low, chance.high)}, ${CARRY.pinsDown(carry.pinsDown)}`,
    ...paragraph(`${CARRY.leaves}: ${leaves.join(", ")}`, "  ", WIDTH),
    ...(isBeyond(hit.quality) ? paragraph(CARRY.beyond, "  ! ", WIDTH) : []),
  ];
}

function isBeyond(quality: Readonly<Record<QualityName, number>>): boolean {
  const names = Object.keys(CARRY_TABLE.qualities) as QualityName[];
  return names.some((name) => quality[name] < CARRY_TABLE.qualities[name].low || quality[name] > CARRY_TABLE.qualities[name].high);
}

function explanationLines({ explanation, seen, hand }: CarryReport): string[] {
  if (explanation === null) return [];
  const map = strikeMap(assume());
  const total = seen.reduce((sum, { count }) => sum + count, 0);
  return [
    CARRY.explained(total),
    ...seen.map(({ leave, count }) => {
      const words = leave === 0 ? CARRY.strike : leaveMeaningText(leaveText(leaveSeen(leave, hand)), leaveMeaning(leave, map));
      return `  ${count} × ${words}`;
    }),
    ...paragraph(`${liesText(explanation)} ${explainedText(explanation)}`, "", WIDTH),
    ...changesText(explanation.changes).flatMap((line) => paragraph(line, "  · ", WIDTH)),
  ];
}
