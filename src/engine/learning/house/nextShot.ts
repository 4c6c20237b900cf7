import { cholesky, dotProduct, logDet, meanAndCovariance, solveCholesky } from "../matrix.ts";
import { type Emulator, emulated, scatter } from "./emulator.ts";
import type { Eye } from "./notes.ts";
import { LATENT } from "./observe.ts";
import { PARAMETER_IDS, type ParameterId, type Place } from "./parameters.ts";

/** What one more shot of a kind would tell. */
export interface NextShot {
  /** Index of the situation. */
  readonly situation: number;
  /** Expected information, nats: half the logarithm of how much smaller the cloud of what is still possible becomes. */
  readonly nats: number;
  /** The parameter of which it would tell most, and the share of its spread that would be left. */
  readonly tells: ParameterId;
  readonly left: number;
}

/** What a careful eye notes of a shot: breakpoint, its distance, the board at the pins, the speed there. */
const SEEN = [LATENT.breakpointBoard, LATENT.breakpointFt, LATENT.boardAtPins, LATENT.pinsMph] as const;
const STEP = 0.05;

/**
 * Which kind of shot would tell most if it were seen next, most first. Straight about the middle of what is still possible: with gradient G, cloud Σ and
 * noise S the shot tells ½ log det(1 + S⁻¹GΣGᵀ) (Lindley 1956).
 */
export function nextShots(emulators: readonly Emulator[], places: readonly Place[], eye: Eye): readonly NextShot[] {
  const { mean, covariance } = meanAndCovariance(places);
  return emulators
    .map((emulator, situation): NextShot => {
      const gradient = gradientAt(emulator, mean);
      const noise = SEEN.map((a, i) => SEEN.map((b, k) => scatter(emulator, a, b) + (i === k ? eyeSd(a, eye) ** 2 : 0)));
      const spread = gradient.map((row) => covariance.map((column) => dotProduct(row, column)));
      const whole = noise.map((row, i) => row.map((value, k) => value + dotProduct(spread[i], gradient[k])));
      const lower = cholesky(whole);
      const nats = 0.5 * (logDet(lower) - logDet(cholesky(noise)));
      const left = PARAMETER_IDS.map((_, p) => {
        const column = spread.map((row) => row[p]);
        const taken = dotProduct(column, solveCholesky(lower, column));
        return Math.sqrt(Math.max(0, 1 - taken / covariance[p][p]));
      });
      const best = left.indexOf(Math.min(...left));
      return { situation, nats, tells: PARAMETER_IDS[best], left: left[best] };
    })
    .toSorted((a, b) => b.nats - a.nats);
}

function gradientAt(emulator: Emulator, at: Place): number[][] {
  const columns = at.map((_, p) => {
    const [up, down] = [STEP, -STEP].map((step) =>
      emulated(
        emulator,
        at.map((value, i) => (i === p ? value + step : value)),
      ),
    );
    return SEEN.map((latent) => (up[latent] - down[latent]) / (2 * STEP));
  });
  return SEEN.map((_, latent) => columns.map((column) => column[latent]));
}

function eyeSd(latent: number, eye: Eye): number {
  if (latent === LATENT.breakpointBoard) return eye.breakpointBoards;
  if (latent === LATENT.breakpointFt) return eye.breakpointFt;
  return latent === LATENT.boardAtPins ? eye.pinsBoards : eye.speedMph;
}
