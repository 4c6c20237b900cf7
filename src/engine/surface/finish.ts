import { ASSUMPTIONS, type Assumed } from "../assumptions.ts";
import { refuse } from "../fault.ts";
import { MICROINCH, MICROMETRE } from "../units.ts";
import { FINISHES_FROM, FINISHES_TO, freshRaUm, LEAVES_FROM, LEAVES_TO, MIDDLE_NUMBER, PADS } from "./pads.ts";

/**
 * A finish as the plan names it: the last abrasive, and polish over it or not. Written `2000` or `1000 + polish`.
 * The number follows the trade's pad numbering; which grading system stands behind it is the abrasive's own record.
 */
export interface Finish {
  readonly number: number;
  readonly polished: boolean;
}

/** How a finish is written, in words. */
export const FINISH_WRITTEN = 'a number such as 2000, or "1000 + polish"';
const ALLOWED = `a number from ${FINISHES_FROM} to ${FINISHES_TO}, with or without polish over it: 2000, "1000 + polish"`;

/** @throws EngineFault for `polish` alone, a number out of range, or anything else. */
export function parseFinish(text: string | number, path = "finish"): Finish {
  const match = /^\s*(\d{1,6})\s*(\+\s*polish)?\s*$/i.exec(String(text));
  if (!match) refuse(path, text, ALLOWED);
  const number = Number(match[1]);
  if (number < FINISHES_FROM || number > FINISHES_TO) refuse(path, text, ALLOWED);
  return { number, polished: match[2] !== undefined };
}

export function finishText(finish: Finish): string {
  return finish.polished ? `${finish.number} + polish` : String(finish.number);
}

export function sameFinish(a: Finish, b: Finish): boolean {
  return a.number === b.number && a.polished === b.polished;
}

/** Finishes that are asked for at the counter, dull to smooth. */
export const COUNTER_FINISHES: readonly string[] = PADS.flatMap(({ number, atCounter }) =>
  [{ number, polished: false }, ...(atCounter === "plain and polished" ? [{ number, polished: true }] : [])].map(finishText),
);

function leftByUm(number: number): number {
  return (
    freshRaUm(number) ?? refuse("finish", number, `a number from ${LEAVES_FROM} to ${LEAVES_TO}: outside it nobody knows what it leaves`)
  );
}

/** Roughness of the pad about which the whole ladder is wider or narrower, µm. */
export const MIDDLE_RA_UM = leftByUm(MIDDLE_NUMBER);

/**
 * Effective roughness of a finish, µm. Between the table's numbers a straight line in the logarithms; the ladder as a whole is `roughness.scale` times as
 * rough and `roughness.spread` times as far apart; polish keeps a share of its base.
 *
 * @throws EngineFault for a number outside the table of pads
 */
export function effectiveRaUm(finish: Finish, a?: Assumed): number {
  const scale = a?.["roughness.scale"] ?? 1;
  const spread = a?.["roughness.spread"] ?? 1;
  const base = MIDDLE_RA_UM * (leftByUm(finish.number) / MIDDLE_RA_UM) ** spread;
  if (!finish.polished) return scale * base;
  const keeps = a?.["roughness.polishKeeps"] ?? ASSUMPTIONS["roughness.polishKeeps"].value;
  const floor = a?.["roughness.polishFloor"] ?? ASSUMPTIONS["roughness.polishFloor"].value;
  return scale * Math.hypot(keeps * base, floor);
}

/** A tester's reading as the law takes it: readings never enter raw. */
export function effectiveRaOfReadingUm(raMicroinch: number, a: Assumed): number {
  return ((raMicroinch * MICROINCH) / MICROMETRE) * a["roughness.readingFactor"];
}

/** What a tester would read, µin, where the law takes so many µm. */
export function readingOfEffectiveRa(effectiveUm: number, a: Assumed): number {
  return (effectiveUm * MICROMETRE) / MICROINCH / a["roughness.readingFactor"];
}

/** From dull to smooth. */
export function byRoughness(a: Finish, b: Finish): number {
  return effectiveRaUm(b) - effectiveRaUm(a);
}
