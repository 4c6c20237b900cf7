import type { Finish } from "../surface/finish.ts";
import { type Ball, COVER_IDS, type CoverId, isKnown } from "./ball.ts";

/** What the trade does with a cover. Common practice throughout, no source. */
export interface Cover {
  /** Finishes of the usual range, from dull to smooth: the candidates where none are named. */
  readonly usual: readonly Finish[];
  /** A final finish below this number is never put on; null where there is no such rule. */
  readonly neverBelow: number | null;
  readonly reactive: boolean;
}

const plain = (...numbers: number[]): Finish[] => numbers.map((number) => ({ number, polished: false }));
const polished = (number: number): Finish => ({ number, polished: true });

export const COVERS: Readonly<Record<CoverId, Cover>> = {
  polyester: { usual: [...plain(1000, 2000, 3000, 4000), polished(4000)], neverBelow: null, reactive: false },
  urethane: { usual: plain(360, 500, 800, 1000), neverBelow: null, reactive: false },
  solid: { usual: [...plain(500, 1000, 2000, 3000, 4000), polished(4000)], neverBelow: 500, reactive: true },
  hybrid: { usual: [...plain(500, 1000, 2000, 3000, 4000), polished(2000), polished(4000)], neverBelow: 500, reactive: true },
  pearl: { usual: [...plain(2000, 3000, 4000), polished(2000), polished(4000)], neverBelow: 500, reactive: true },
};

/** What a cover that nobody knows is computed about: in the middle of what balls are made of today. */
export const MIDDLE_COVER: CoverId = "hybrid";
/** Polyester is for spares: a ball that is to strike has it hardly ever (common practice). */
const COVERS_THAT_STRIKE: readonly CoverId[] = ["urethane", "solid", "hybrid", "pearl"];

/** The cover of a ball; null where nobody knows it. */
export function knownCover(ball: Pick<Ball, "cover" | "unknown">): CoverId | null {
  return isKnown(ball, "cover") ? ball.cover : null;
}

/** The cover of a ball, or where nobody knows it all that it may be. */
export function coversOf(ball: Pick<Ball, "cover" | "unknown" | "job">): readonly CoverId[] {
  const known = knownCover(ball);
  if (known !== null) return [known];
  return ball.job === "spare" || ball.job === "house" ? COVER_IDS : COVERS_THAT_STRIKE;
}

/** What holds for a cover; where nobody knows it, what holds for any that it may be: the dullest finish of the strictest, and care as of resin. */
export function careRules(cover: CoverId | null): Pick<Cover, "neverBelow" | "reactive"> {
  return cover === null ? { neverBelow: COVERS[MIDDLE_COVER].neverBelow, reactive: true } : COVERS[cover];
}
