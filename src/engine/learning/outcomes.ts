import type { CoverId } from "../ball/ball.ts";
import { EngineFault } from "../fault.ts";

/** What the bowler said at the next visit. */
export const OUTCOMES = ["as said", "partly", "not"] as const;
export type Outcome = (typeof OUTCOMES)[number];

/** A plan that was carried out, and what came of it. */
export interface PlanOutcome {
  readonly outcome: Outcome;
  readonly cover: CoverId | null;
  /** What was complained of; empty where nothing was. */
  readonly symptoms: readonly string[];
  /** How sure the plan said it was, 0–1; null where no plan was made. */
  readonly sureShare: number | null;
}

/** A share of plans that held, with its 95 % interval. */
export interface HeldShare {
  readonly held: number;
  readonly of: number;
  readonly share: number;
  readonly low: number;
  readonly high: number;
}

/** How well the odds were calibrated: of plans that said about so much, the share that held. */
export interface CalibrationBin {
  readonly from: number;
  readonly to: number;
  /** Mean of what was said. */
  readonly said: number;
  readonly held: HeldShare;
  /** Whether what was said lies inside the interval of what was seen. */
  readonly agrees: boolean;
}

export interface OutcomeReport {
  readonly all: HeldShare;
  readonly byCover: readonly { readonly cover: CoverId; readonly held: HeldShare }[];
  readonly bySymptom: readonly { readonly symptom: string; readonly held: HeldShare }[];
  readonly calibration: readonly CalibrationBin[];
  /** Mean square of what was said less what came, over plans with odds (Brier 1950); null without any. 0 is perfect, 0.25 a coin. */
  readonly brier: number | null;
}

/** Half a success for "partly". */
const WORTH: Readonly<Record<Outcome, number>> = { "as said": 1, partly: 0.5, not: 0 };
const BINS: readonly (readonly [from: number, to: number])[] = [
  [0, 0.5],
  [0.5, 0.7],
  [0.7, 0.9],
  [0.9, 1],
];
const Z_95 = 1.959964;

/**
 * A share with its 95 % interval by Wilson's score (Wilson 1927; Newcombe 1998): honest for few and for none.
 *
 * @param held 0 ≤ held ≤ of; halves are allowed. @throws EngineFault otherwise
 */
export function heldShare(held: number, of: number): HeldShare {
  if (!(Number.isInteger(of) && of >= 0 && held >= 0 && held <= of))
    throw new EngineFault([{ path: "held", value: `${held} of ${of}`, allowed: "0 ≤ held ≤ of" }]);
  if (of === 0) return { held, of, share: 0, low: 0, high: 1 };
  const share = held / of;
  const z2 = Z_95 * Z_95;
  const middle = (share + z2 / (2 * of)) / (1 + z2 / of);
  const half = (Z_95 * Math.sqrt((share * (1 - share)) / of + z2 / (4 * of * of))) / (1 + z2 / of);
  return { held, of, share, low: Math.max(0, middle - half), high: Math.min(1, middle + half) };
}

/** Which of the shop's plans held: in all, by cover, by complaint, and against the odds that were told. */
export function outcomeReport(outcomes: readonly PlanOutcome[]): OutcomeReport {
  const shareOf = (some: readonly PlanOutcome[]) =>
    heldShare(
      some.reduce((sum, { outcome }) => sum + WORTH[outcome], 0),
      some.length,
    );
  const covers = [...new Set(outcomes.flatMap(({ cover }) => cover ?? []))];
  const symptoms = [...new Set(outcomes.flatMap((one) => one.symptoms))];
  const withOdds = outcomes.flatMap((one) => (one.sureShare === null ? [] : [{ ...one, said: one.sureShare }]));
  return {
    all: shareOf(outcomes),
    byCover: covers.map((cover) => ({ cover, held: shareOf(outcomes.filter((one) => one.cover === cover)) })),
    bySymptom: symptoms.map((symptom) => ({ symptom, held: shareOf(outcomes.filter((one) => one.symptoms.includes(symptom))) })),
    calibration: BINS.flatMap(([from, to]) => {
      const inside = withOdds.filter(({ said }) => said >= from && (said < to || to === 1));
      if (inside.length === 0) return [];
      const held = shareOf(inside);
      const said = inside.reduce((sum, one) => sum + one.said, 0) / inside.length;
      return [{ from, to, said, held, agrees: said >= held.low && said <= held.high }];
    }),
    brier:
      withOdds.length === 0 ? null : withOdds.reduce((sum, { said, outcome }) => sum + (said - WORTH[outcome]) ** 2, 0) / withOdds.length,
  };
}
