import type { Assumed } from "../assumptions.ts";
import { COVER_IDS, type CoverId, coverOf } from "../ball/ball.ts";
import { TYPICAL_BALL } from "../ball/typical.ts";
import { fadeLaw, raAfter } from "./fade.ts";
import { effectiveRaOfReadingUm, effectiveRaUm, type Finish } from "./finish.ts";
import { type RoughnessRange, roughnessOfHistory, type WorkDone } from "./history.ts";

/** The ball as it lies on the bench. */
export interface BenchBall {
  /** Null where nobody knows it: it is then worked as any cover stands it. */
  readonly cover: CoverId | null;
  /** Shore D; null where nobody measured it. */
  readonly hardnessD: number | null;
  readonly diameterIn: number;
  /** Null where nobody knows it. */
  readonly finish: Finish | null;
  /** What was done to it, in order, where it is known: it then speaks for the fresh finish instead of the name; empty where it is not. */
  readonly history: readonly WorkDone[];
  readonly gamesSince: number;
  /** A reading of the track, if one was taken. */
  readonly raMicroinch: number | null;
  /** How it compares with the reference ball of its finish by sheen and touch; null where nobody compared. */
  readonly compared: Compared | null;
  readonly trackWear: "none" | "light" | "deep";
  /** Deep where a fingernail catches on them; not there where nobody looked. */
  readonly scratches?: "none" | "deep";
  readonly plug: "none" | "proud" | "flush";
  readonly oil: "clean" | "some" | "soaked";
}

/** A short ordinal scale for eye and fingertip: much smoother than the reference … much duller. */
export const COMPARED = ["muchSmoother", "smoother", "alike", "duller", "muchDuller"] as const;
export type Compared = (typeof COMPARED)[number];

/** What a step on that scale may mean, as a factor on Ra: a wide reading, carried as one. Common practice: a step on the ladder is a factor of about 1.5. */
const COMPARED_FACTOR: Readonly<Record<Compared, readonly [low: number, value: number, high: number]>> = {
  muchSmoother: [0.2, 0.35, 0.55],
  smoother: [0.45, 0.65, 0.9],
  alike: [0.75, 1, 1.35],
  duller: [1.1, 1.5, 2.2],
  muchDuller: [1.8, 2.8, 5],
};

/** Shore D of the ball; of a cover that nobody knows the mean of all. */
export function hardnessOf({ hardnessD, cover }: Pick<BenchBall, "hardnessD" | "cover">): number {
  if (hardnessD !== null) return hardnessD;
  if (cover !== null) return coverOf(cover).hardnessD;
  return COVER_IDS.reduce((sum, id) => sum + coverOf(id).hardnessD, 0) / COVER_IDS.length;
}

/** What an unknown surface is taken as, by a factor of three either way (common practice: the commonest finish out of the box). */
const UNKNOWN_FINISH: Finish = TYPICAL_BALL.finish;
const UNKNOWN_FACTOR = 3;

/** The finish as it was put on: by its history where that is known, begun on an unknown surface, else by its name. */
export function freshRoughness(ball: BenchBall, a: Assumed): number {
  const { history, finish } = ball;
  if (history.length === 0) return effectiveRaUm(finish ?? UNKNOWN_FINISH, a);
  const unknown = effectiveRaUm(UNKNOWN_FINISH, a);
  return roughnessOfHistory(history, { value: unknown, low: unknown / UNKNOWN_FACTOR, high: UNKNOWN_FACTOR * unknown }).value;
}

/** What the state of a surface is known from. */
export type SurfaceKnownFrom = "reading" | "comparison" | "games" | "nothing";

/** Whether nothing tells what is on the ball: a comparison says how it stands to its finish, and that is not known either. */
export function surfaceIsUnknown({ finish, history, raMicroinch }: BenchBall): boolean {
  return finish === null && history.length === 0 && raMicroinch === null;
}

/** How the track stands, µm effective, from the best that is known: a reading, a comparison, or games on the finish. */
export function trackRoughness(ball: BenchBall, a: Assumed): RoughnessRange & { readonly from: SurfaceKnownFrom } {
  const fresh = freshRoughness(ball, a);
  if (ball.raMicroinch !== null) {
    const value = effectiveRaOfReadingUm(ball.raMicroinch, a);
    return { value, low: 0.9 * value, high: 1.1 * value, from: "reading" };
  }
  if (surfaceIsUnknown(ball)) return { value: fresh, low: fresh / UNKNOWN_FACTOR, high: UNKNOWN_FACTOR * fresh, from: "nothing" };
  if (ball.compared !== null) {
    const [low, value, high] = COMPARED_FACTOR[ball.compared];
    return { value: value * fresh, low: low * fresh, high: high * fresh, from: "comparison" };
  }
  const faded = raAfter(fadeLaw(ball.cover, a), fresh, ball.gamesSince);
  const spread = 0.2 + 0.2 * (1 - Math.exp(-ball.gamesSince / 20));
  return { value: faded, low: faded * (1 - spread), high: faded * (1 + spread), from: "games" };
}
