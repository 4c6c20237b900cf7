import { cholesky, dotProduct, solveCholesky, weightedCovariance } from "../matrix.ts";
import type { CorrectionRun, CorrectQuestion } from "./correct.ts";
import { readsOf } from "./likelihood.ts";
import { distancesOf, LATENT } from "./observe.ts";
import { lifts, scatter } from "./scatter.ts";

/** How well one kind of shots is said by what was learned from all of them. */
export interface KindFit {
  /** Index of the situation. */
  readonly situation: number;
  /** Shots with figures. */
  readonly shots: number;
  /** By how many boards they arrived beside what was learned, in the mean; null where nobody read it. */
  readonly boardsOff: number | null;
  /** Shots whose figures lie where one in a hundred would, of those with figures. */
  readonly strange: number;
  /** They lie so far beside it, all together, that scatter does not explain it. */
  readonly isFar: boolean;
}

/** Whether the shots fit what was learned from them. */
export interface Misfit {
  readonly isExplained: boolean;
  readonly strange: number;
  readonly shots: number;
  /** Those that do not fit first. */
  readonly kinds: readonly KindFit[];
}

/** One shot in so many is taken to be something else altogether; where so many are strange that chance would bring it once in a hundred, nothing explains them. */
const STRANGE = 0.05;
const BY_CHANCE = 0.01;
/** The standard normal's 99 % point. */
const Z99 = 2.326;
/** A kind that lies so many deviations beside what was learned is not explained by it. */
const FAR = 3.5;

/**
 * Holds every shot against what was learned from all of them: how far its figures lie beside what the houses and hands that are left show, with the shot's own
 * scatter and the eye's error (a check of the posterior's predictions; Rubin 1984). What was learned has seen the shots, so that little is strange by chance.
 */
export function misfitOf({ drawn, scatters }: Pick<CorrectionRun, "drawn" | "scatters">, { situations, eye }: CorrectQuestion): Misfit {
  const alike = drawn.map(() => 1);
  const kinds = situations.map((situation, at): KindFit => {
    const distances = distancesOf(situation);
    const about = scatters[at];
    const lift = lifts(about);
    let strange = 0;
    let shots = 0;
    const pins: number[] = [];
    for (const shot of situation.shots) {
      const reads = readsOf(shot, distances, eye);
      if (reads.length === 0) continue;
      shots += 1;
      const shown = weightedCovariance(
        drawn.map((one) => reads.map(({ latent }) => one.shown[at][latent])),
        alike,
      );
      const off = reads.map(({ latent, value }, i) => value - shown.mean[i] - lift[latent]);
      const lower = cholesky(
        reads.map((a, i) =>
          reads.map((b, k) => shown.covariance[i][k] + scatter(about, a.latent, b.latent) + (i === k ? a.eyeSd ** 2 : 0)),
        ),
      );
      if (dotProduct(off, solveCholesky(lower, off)) > chiSquare99(reads.length)) strange += 1;
      reads.forEach(({ latent }, i) => {
        if (latent === LATENT.boardAtPins) pins.push(off[i]);
      });
    }
    const boardsOff = pins.length === 0 ? null : pins.reduce((sum, off) => sum + off, 0) / pins.length;
    const variance = scatter(about, LATENT.boardAtPins, LATENT.boardAtPins) + eye.pinsBoards ** 2;
    const isFar = boardsOff !== null && Math.abs(boardsOff) > FAR * Math.sqrt(variance / pins.length);
    return { situation: at, shots, boardsOff, strange, isFar };
  });
  const strange = kinds.reduce((sum, kind) => sum + kind.strange, 0);
  const shots = kinds.reduce((sum, kind) => sum + kind.shots, 0);
  const isExplained = atLeast(strange, shots) >= BY_CHANCE && kinds.every(({ isFar }) => !isFar);
  return {
    isExplained,
    strange,
    shots,
    kinds: kinds.toSorted((a, b) => b.strange / Math.max(1, b.shots) - a.strange / Math.max(1, a.shots)),
  };
}

/** The 99 % point of χ² with so many degrees of freedom (Wilson and Hilferty 1931). */
function chiSquare99(degrees: number): number {
  const part = 2 / (9 * degrees);
  return degrees * (1 - part + Z99 * Math.sqrt(part)) ** 3;
}

/** The chance of at least so many strange shots of n, each strange one time in twenty. */
function atLeast(strange: number, shots: number): number {
  let chance = (1 - STRANGE) ** shots;
  let below = 0;
  for (let k = 0; k < strange; k++) {
    below += chance;
    chance *= ((shots - k) / (k + 1)) * (STRANGE / (1 - STRANGE));
  }
  return 1 - below;
}
