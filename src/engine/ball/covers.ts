import type { Finish } from "../surface/finish.ts";
import type { CoverId } from "./ball.ts";

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
