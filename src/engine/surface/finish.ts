import { ASSUMPTIONS, type Assumed } from "../assumptions.ts";
import { refuse } from "../fault.ts";
import { MICROINCH, MICROMETRE } from "../units.ts";

/**
 * A finish as the plan names it: the last abrasive, and polish over it or not. Written `2000` or `1000 + polish`.
 * The number follows the trade's pad numbering; which grading system stands behind it is the abrasive's own record.
 */
export interface Finish {
  readonly number: number;
  readonly polished: boolean;
}

export const LEAST_NUMBER = 360;
export const MOST_NUMBER = 5000;
const ALLOWED = `a number from ${LEAST_NUMBER} to ${MOST_NUMBER}, with or without polish over it: 2000, "1000 + polish"`;

/** @throws EngineFault for `polish` alone, a number out of range, or anything else. */
export function parseFinish(text: string | number, path = "finish"): Finish {
  const match = /^\s*(\d{3,4})\s*(\+\s*polish)?\s*$/i.exec(String(text));
  if (!match) refuse(path, text, ALLOWED);
  const number = Number(match[1]);
  if (number < LEAST_NUMBER || number > MOST_NUMBER) refuse(path, text, ALLOWED);
  return { number, polished: match[2] !== undefined };
}

export function finishText(finish: Finish): string {
  return finish.polished ? `${finish.number} + polish` : String(finish.number);
}

export function sameFinish(a: Finish, b: Finish): boolean {
  return a.number === b.number && a.polished === b.polished;
}

/** The pad about which the whole ladder is wider or narrower: roughness of a 2000 pad, µm. */
export const MIDDLE_RA_UM = 0.45;

/**
 * Effective roughness of fresh pads, µm, as the friction law takes it: the one table of the program. From memory of the trade's readings times
 * `roughness.readingFactor`, made one set with the calibrated friction; every value ± `roughness.scale`.
 */
const PAD_RA_UM: readonly (readonly [number, number])[] = [
  [360, 1.5],
  [500, 1.1],
  [1000, 0.7],
  [2000, MIDDLE_RA_UM],
  [3000, 0.3],
  [4000, 0.22],
  [5000, 0.18],
];

/**
 * Effective roughness of a finish, µm. Between the table's numbers a straight line in the logarithms; the ladder as a whole is `roughness.scale` times as
 * rough and `roughness.spread` times as far apart; polish keeps a share of its base.
 */
export function effectiveRaUm(finish: Finish, a?: Assumed): number {
  const scale = a?.["roughness.scale"] ?? 1;
  const spread = a?.["roughness.spread"] ?? 1;
  const base = MIDDLE_RA_UM * (padRaUm(finish.number) / MIDDLE_RA_UM) ** spread;
  if (!finish.polished) return scale * base;
  const keeps = a?.["roughness.polishKeeps"] ?? ASSUMPTIONS["roughness.polishKeeps"].value;
  const floor = a?.["roughness.polishFloor"] ?? ASSUMPTIONS["roughness.polishFloor"].value;
  return scale * Math.hypot(keeps * base, floor);
}

function padRaUm(number: number): number {
  const after = Math.max(
    1,
    PAD_RA_UM.findIndex(([n]) => n >= number),
  );
  const [fromNumber, fromRa] = PAD_RA_UM[after - 1];
  const [toNumber, toRa] = PAD_RA_UM[after];
  const share = Math.log(number / fromNumber) / Math.log(toNumber / fromNumber);
  return fromRa * (toRa / fromRa) ** share;
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
