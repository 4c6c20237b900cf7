import { cholesky, dotProduct, logDet, solveCholesky, weightedCovariance } from "../matrix.ts";
import type { CorrectionRun } from "./correct.ts";
import type { Eye } from "./notes.ts";
import { LATENT } from "./observe.ts";
import type { Parameter } from "./parameters.ts";
import { scatter } from "./scatter.ts";

/** What one more shot of a kind would tell. */
export interface NextShot {
  /** Index of the situation. */
  readonly situation: number;
  /** Expected information, nats: half the logarithm of how much smaller the cloud of what is still possible becomes. */
  readonly nats: number;
  /** The parameter of which it would tell most, and the share of its spread that would be left. */
  readonly tells: Parameter;
  readonly left: number;
}

/** What a careful eye notes of a shot: breakpoint, its distance, the board at the pins, the speed there. */
const SEEN = [LATENT.breakpointBoard, LATENT.breakpointFt, LATENT.boardAtPins, LATENT.pinsMph] as const;

/**
 * Which kind of shot would tell most if it were seen next, most first. With the covariance Σ of what the houses and hands still possible show, and the noise S
 * of a shot and an eye, it tells ½ log det(1 + S⁻¹Σ) (Lindley 1956, for normal clouds).
 */
export function nextShots({ scatters, drawn, correction }: CorrectionRun, eye: Eye): readonly NextShot[] {
  const alike = drawn.map(() => 1);
  return scatters
    .map((about, situation): NextShot => {
      const rows = drawn.map(({ values, shown }) => [...SEEN.map((latent) => shown[situation][latent]), ...values]);
      const { covariance } = weightedCovariance(rows, alike);
      const noise = SEEN.map((a, i) => SEEN.map((b, k) => scatter(about, a, b) + (i === k ? eyeSd(a, eye) ** 2 : 0)));
      const lower = cholesky(noise.map((row, i) => row.map((value, k) => value + covariance[i][k])));
      const nats = 0.5 * (logDet(lower) - logDet(cholesky(noise)));
      const left = correction.parameters.map((_, p) => {
        const at = SEEN.length + p;
        const column = SEEN.map((_latent, i) => covariance[i][at]);
        return Math.sqrt(Math.max(0, 1 - dotProduct(column, solveCholesky(lower, column)) / covariance[at][at]));
      });
      const best = left.indexOf(Math.min(...left));
      const { id, hand } = correction.parameters[best];
      return { situation, nats, tells: { id, hand }, left: left[best] };
    })
    .toSorted((a, b) => b.nats - a.nats);
}

function eyeSd(latent: number, eye: Eye): number {
  if (latent === LATENT.breakpointBoard) return eye.breakpointBoards;
  if (latent === LATENT.breakpointFt) return eye.breakpointFt;
  return latent === LATENT.boardAtPins ? eye.pinsBoards : eye.speedMph;
}
