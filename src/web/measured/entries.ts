import type { Reading, ReadingWritten } from "#contract/records/reading";
import { assume } from "#engine/assumptions";
import type { CoverId } from "#engine/ball/ball";
import { TYPICAL_BALL } from "#engine/ball/typical";
import { ABRASIVES, knownAbrasive } from "#engine/surface/abrasives";
import { hardnessOf } from "#engine/surface/benchBall";
import { effectiveRaOfReadingUm, effectiveRaUm, parseFinish } from "#engine/surface/finish";
import { PAD_NUMBERS } from "#engine/surface/pads";
import type { SideId } from "#engine/surface/padWork/sides";
import { type EvennessVerdict, evenness } from "#engine/surface/readings/evenness";
import type { Place } from "#engine/surface/readings/places";
import { USUAL_HABITS } from "#engine/surface/stages";
import { MICROINCH, MICROMETRE } from "#engine/units";

export type Way = "reference ball" | "tester";
export type Comparison = NonNullable<Reading["comparison"]>;
export type RoughnessUnit = "µin" | "µm";

/** The sides as they are read: those that can be seen with the grip towards one, then the ball is turned over once. */
export const READ_ORDER: readonly SideId[] = ["grip", "left", "right", "fingers", "thumb", "opposite"];

/** The largest Ra that is taken: more is no finish of a ball (the same as for files of readings). */
const MOST_MICROINCH = 1000;
const UM_OF: Readonly<Record<RoughnessUnit, number>> = { µin: MICROINCH / MICROMETRE, µm: 1 };

export function mostIn(unit: RoughnessUnit): number {
  return (MOST_MICROINCH * UM_OF.µin) / UM_OF[unit];
}

/** The readings of one place as typed, µm; null where something typed is no reading. A decimal comma is as good as a point. */
export function readingsOf(typed: string, unit: RoughnessUnit): readonly number[] | null {
  const words = typed.split(/[\s;]+/).filter((word) => word !== "");
  const values = words.map((word) => (/^(\d+([.,]\d*)?|[.,]\d+)$/.test(word) ? Number(word.replace(",", ".")) : Number.NaN));
  const isReading = (value: number) => value > 0 && value <= mostIn(unit);
  return values.every(isReading) ? values.map((value) => value * UM_OF[unit]) : null;
}

/** A roughness in the shop's unit, as a figure to draw with. */
export function inUnit(um: number, unit: RoughnessUnit): number {
  return um / UM_OF[unit];
}

interface Belongs {
  readonly ballId: string;
  readonly ticketId: string | null;
  readonly when: Reading["when"];
  /** ISO; readings that were taken in one go have the same. */
  readonly at: string;
  readonly place: Place;
}

/** What is written down of one place: a row for each figure, or how it looked beside the reference. */
export function testerRows(um: readonly number[], belongs: Belongs): ReadingWritten[] {
  return um.map((raUm) => ({ ...belongs, how: "tester" as const, raUm }));
}

export function sheenRow(comparison: Comparison, referenceBallId: string | null, belongs: Belongs): ReadingWritten {
  return { ...belongs, how: "reference ball", comparison, referenceBallId };
}

/** Whether the sides that were read agree, and how they stand against the finish; null before two sides can be read. */
export interface SidesVerdict {
  readonly verdict: EvennessVerdict;
  /** Null where there is no finish to compare with. */
  readonly targetUm: number | null;
}

export interface Bench {
  /** Null where nobody knows it. */
  readonly cover: CoverId | null;
  readonly diameterIn: number;
  /** A finish, or empty. */
  readonly wanted: string;
  /** What the last stage was done with; null where nobody knows. */
  readonly lastAbrasive: string | null;
}

/** Readings of each side as a tester shows them, µm. Sides without any are left out; without a finish they are held against the middle one of them. */
export function verdictOf(read: readonly { readonly side: string; readonly um: readonly number[] }[], bench: Bench): SidesVerdict | null {
  const a = assume();
  const sides = read
    .filter(({ um }) => um.length > 0)
    .map(({ side, um }) => ({ side, raUm: um.map((one) => effectiveRaOfReadingUm((one * MICROMETRE) / MICROINCH, a)) }));
  if (sides.length < 2) return null;
  const means = sides.map(({ raUm }) => raUm.map(Math.log).reduce((sum, log) => sum + log, 0) / raUm.length).toSorted((x, y) => x - y);
  const middle = Math.exp((means[Math.floor((means.length - 1) / 2)] + means[Math.ceil((means.length - 1) / 2)]) / 2);
  const targetUm = bench.wanted === "" ? null : effectiveRaUm(parseFinish(bench.wanted));
  const setting = {
    grainUm: grainOf(bench),
    force: "medium",
    by: "spinner",
    spinnerRpm: USUAL_HABITS.spinnerRpm,
    diameterIn: bench.diameterIn,
    hardnessD: hardnessOf({ hardnessD: null, cover: bench.cover }),
    ownCut: 1,
  } as const;
  return { verdict: evenness(sides, targetUm ?? middle, setting, a), targetUm };
}

/** Grain of the last pad; else of the pad whose number the finish has or is nearest below, since that is what it would be put on with. */
function grainOf({ lastAbrasive, wanted }: Bench): number {
  const last = knownAbrasive(lastAbrasive);
  if (last !== null && last.grainUm > 0) return last.grainUm;
  const { number } = wanted === "" ? TYPICAL_BALL.finish : parseFinish(wanted);
  const under = PAD_NUMBERS.findLast((pad) => pad <= number) ?? PAD_NUMBERS[0];
  return ABRASIVES[`pad-${under}`].grainUm;
}
