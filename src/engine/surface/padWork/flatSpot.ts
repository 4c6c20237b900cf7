import { ROUNDNESS_IN } from "../../rules/ruleBooks.ts";
import type { Received } from "./received.ts";

const UM_PER_IN = 25_400;

/** What work does to the ball's roundness. */
export interface FlatSpot {
  /** Most and least depth taken off anywhere, µm. */
  readonly deepestUm: number;
  readonly leastUm: number;
  /** Largest less smallest loss of diameter. */
  readonly outOfRoundUm: number;
  readonly outOfRoundIn: number;
  /** Over what is allowed; 1 is all of it, for a ball that was round before. */
  readonly ofAllowed: number;
  /** How often the same work could be done before a round ball is out of round by what is allowed; null where it does no such thing. */
  readonly timesToAllowed: number | null;
}

/** Opposite cells lie half the count apart, see {@link ./cells.ts}. */
export function flatSpotOf({ depthUm }: Received): FlatSpot {
  const half = depthUm.length / 2;
  let [deepest, least, most, fewest] = [0, Number.POSITIVE_INFINITY, 0, Number.POSITIVE_INFINITY];
  for (let i = 0; i < half; i++) {
    const [here, opposite] = [depthUm[i], depthUm[i + half]];
    deepest = Math.max(deepest, here, opposite);
    least = Math.min(least, here, opposite);
    most = Math.max(most, here + opposite);
    fewest = Math.min(fewest, here + opposite);
  }
  const outOfRoundIn = (most - fewest) / UM_PER_IN;
  const ofAllowed = outOfRoundIn / ROUNDNESS_IN;
  return {
    deepestUm: deepest,
    leastUm: least,
    outOfRoundUm: most - fewest,
    outOfRoundIn,
    ofAllowed,
    timesToAllowed: ofAllowed > 1e-9 ? 1 / ofAllowed : null,
  };
}
