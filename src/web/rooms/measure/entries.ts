import type { Reading, ReadingWritten } from "#contract/records/reading";
import { assume } from "#engine/assumptions";
import type { CoverId } from "#engine/ball/ball";
import { ABRASIVES, type Abrasive } from "#engine/surface/abrasives";
import { hardnessOf } from "#engine/surface/benchBall";
import { effectiveRaOfReadingUm, effectiveRaUm, parseFinish } from "#engine/surface/finish";
import { SIDE_IDS, type SideId } from "#engine/surface/padWork/sides";
import { type EvennessVerdict, evenness } from "#engine/surface/readings/evenness";
import { USUAL_HABITS } from "#engine/surface/stages";
import { MICROINCH, MICROMETRE } from "#engine/units";

export type Way = "reference ball" | "tester";
export type Comparison = NonNullable<Reading["comparison"]>;
export type RoughnessUnit = "µin" | "µm";

/** What is being entered. What was typed one way stays while the other is looked at. */
export interface ReadingsDraft {
  /** Goes with every reading, so that pressing twice keeps nothing twice. */
  readonly key: string;
  readonly when: Reading["when"];
  readonly how: Way;
  /** Null: as the ticket says; empty: with no finish. */
  readonly wanted: string | null;
  /** Null: the shop's newest. */
  readonly referenceBallId: string | null;
  readonly sheen: Readonly<Partial<Record<SideId, Comparison>>>;
  readonly typed: Readonly<Partial<Record<SideId, string>>>;
}

export function emptyReadings(key: string, when: Reading["when"], how: Way): ReadingsDraft {
  return { key, when, how, wanted: null, referenceBallId: null, sheen: {}, typed: {} };
}

/** What is left in the form when its readings have been kept: the other way's, and what could not be read as numbers. */
export function afterKeeping(draft: ReadingsDraft, unit: RoughnessUnit, key: string): ReadingsDraft {
  if (draft.how === "reference ball") return { ...draft, key, sheen: {} };
  const left = SIDE_IDS.flatMap((side) => (readingsOf(draft.typed[side] ?? "", unit) === null ? [[side, draft.typed[side]]] : []));
  return { ...draft, key, typed: Object.fromEntries(left) };
}

/** The largest Ra that is taken: more is no finish of a ball (the same as for files of readings). */
const MOST_MICROINCH = 1000;
const UM_OF: Readonly<Record<RoughnessUnit, number>> = { µin: MICROINCH / MICROMETRE, µm: 1 };

export function mostIn(unit: RoughnessUnit): number {
  return (MOST_MICROINCH * UM_OF.µin) / UM_OF[unit];
}

/** The readings of one side as typed, µm; null where something typed is no reading. A decimal comma is as good as a point. */
export function readingsOf(typed: string, unit: RoughnessUnit): readonly number[] | null {
  const words = typed.split(/[\s;]+/).filter((word) => word !== "");
  const values = words.map((word) => (/^(\d+([.,]\d*)?|[.,]\d+)$/.test(word) ? Number(word.replace(",", ".")) : Number.NaN));
  const isReading = (value: number) => value > 0 && value <= mostIn(unit);
  return values.every(isReading) ? values.map((value) => value * UM_OF[unit]) : null;
}

/** Whether the sides that were read agree, and how they stand against the finish; null before two sides can be read. */
export interface SidesVerdict {
  readonly verdict: EvennessVerdict;
  /** Null where there is no finish to compare with. */
  readonly targetUm: number | null;
}

interface Bench {
  /** Null where nobody knows it. */
  readonly cover: CoverId | null;
  readonly diameterIn: number;
  /** A finish, or empty. */
  readonly wanted: string;
  /** What the last stage was done with; null where nobody knows. */
  readonly lastAbrasive: string | null;
}

export function sidesVerdict(typed: ReadingsDraft["typed"], bench: Bench & { readonly unit: RoughnessUnit }): SidesVerdict | null {
  return verdictOf(
    SIDE_IDS.map((side) => ({ side, um: readingsOf(typed[side] ?? "", bench.unit) ?? [] })),
    bench,
  );
}

/** The same of readings as a tester shows them, µm. Sides without any are left out. */
export function verdictOf(read: readonly { readonly side: string; readonly um: readonly number[] }[], bench: Bench): SidesVerdict | null {
  const a = assume();
  const sides = read
    .filter(({ um }) => um.length > 0)
    .map(({ side, um }) => ({ side, raUm: um.map((one) => effectiveRaOfReadingUm((one * MICROMETRE) / MICROINCH, a)) }));
  if (sides.length < 2) return null;
  const logs = sides.flatMap(({ raUm }) => raUm.map(Math.log));
  const ownMean = Math.exp(logs.reduce((sum, log) => sum + log, 0) / logs.length);
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
  return { verdict: evenness(sides, targetUm ?? ownMean, setting, a), targetUm };
}

/** Grain of the last pad; else of the pad whose number the finish has or is nearest below, since that is what it would be put on with. */
function grainOf({ lastAbrasive, wanted }: Bench): number {
  const known: Abrasive | undefined = lastAbrasive === null ? undefined : (ABRASIVES as Readonly<Record<string, Abrasive>>)[lastAbrasive];
  if (known !== undefined && known.grainUm > 0) return known.grainUm;
  const number = wanted === "" ? USUAL_NUMBER : parseFinish(wanted).number;
  const pads = Object.values<Abrasive>(ABRASIVES).filter(({ kind, grade }) => kind === "foamPad" && (grade?.number ?? 0) <= number);
  return pads.reduce((finest, pad) => Math.min(finest, pad.grainUm), ABRASIVES["pad-360"].grainUm);
}

/** The commonest box finish (common practice). */
const USUAL_NUMBER = 2000;

/** What an eye finds: sides by how they look against the reference, the commonest look first. */
export interface SheenVerdict {
  readonly groups: readonly { readonly as: Comparison; readonly sides: readonly SideId[] }[];
  readonly notLooked: readonly SideId[];
  /** Sides to go back to, where the reference is what is wanted: those that do not look like it. */
  readonly backTo: readonly SideId[];
}

/** @param isWanted whether the reference ball has the finish that the work was to give */
export function sheenVerdict(sheen: ReadingsDraft["sheen"], isWanted: boolean): SheenVerdict | null {
  const looked = SIDE_IDS.filter((side) => sheen[side] !== undefined);
  if (looked.length < 2) return null;
  const groups = (["the same", "duller", "smoother"] as const)
    .map((as) => ({ as, sides: looked.filter((side) => sheen[side] === as) }))
    .filter(({ sides }) => sides.length > 0)
    .toSorted((a, b) => b.sides.length - a.sides.length);
  const backTo = isWanted ? looked.filter((side) => sheen[side] !== "the same") : [];
  return { groups, notLooked: SIDE_IDS.filter((side) => sheen[side] === undefined), backTo };
}

interface Belongs {
  readonly ballId: string;
  readonly ticketId: string | null;
  readonly referenceBallId: string | null;
  readonly unit: RoughnessUnit;
  /** When it was kept, ISO. */
  readonly at: string;
}

interface ReadingToKeep {
  readonly key: string;
  readonly side: SideId;
  readonly body: ReadingWritten;
}

/** The readings to be kept, each with a key of its own. Sides that hold something that is no reading are left in the form. */
export function readingsToKeep(draft: ReadingsDraft, { ballId, ticketId, referenceBallId, unit, at }: Belongs): readonly ReadingToKeep[] {
  return SIDE_IDS.flatMap((side): readonly ReadingToKeep[] => {
    const common = { ballId, ticketId, at, when: draft.when, place: side, how: draft.how };
    if (draft.how === "reference ball") {
      const comparison = draft.sheen[side];
      return comparison === undefined ? [] : [{ key: `${draft.key}-${side}`, side, body: { ...common, comparison, referenceBallId } }];
    }
    const read = readingsOf(draft.typed[side] ?? "", unit) ?? [];
    return read.map((raUm, i) => ({ key: `${draft.key}-${side}-${i}`, side, body: { ...common, raUm } }));
  });
}
