import { dotProduct } from "../matrix.ts";
import { NOT_OFF, type Off } from "./observe.ts";

/** How far a shot's own scatter moves what is seen of it, to second order: shots that scatter do not lie evenly about the one that was meant. */
export interface Scatter {
  /** By latent: what one standard deviation of each of the five of the bowler's spread moves it by. */
  readonly offs: readonly (readonly number[])[];
  /** By latent and by the same five: as half a second derivative, so that a scatter z moves what is seen by off·z + bend·z². */
  readonly bends: readonly (readonly number[])[];
  /** By latent: variance that is added, since the model itself is off by as much in every shot of a kind. */
  readonly offByModel: readonly number[];
}

/**
 * How far out each of the five is tried, standard deviations: with the weights 1/6, 2/3, 1/6 on the three points the mean of what is seen comes out right for
 * a polynomial of the fifth order in it (Gauss–Hermite, Abramowitz & Stegun 25.4.46).
 */
const REACH = Math.sqrt(3);

/**
 * What the model may be off by in every shot of a kind alike, standard deviations: chosen. However many shots of a kind are seen, their mean is not believed
 * further.
 */
const MODEL_SD = {
  hookFt: 1,
  breakpointBoard: 0.4,
  breakpointFt: 1,
  boardAtPins: 0.5,
  entryDeg: 0.3,
  launchMph: 0,
  pinsMph: 0.15,
  boards: 0.1,
} as const;

/** @param seenAt what is seen of a shot that is off by so much @param shots of the kind: all share the model's error, so that their mean is off by it however many there are */
export function scatterOf(seenAt: (off: Off) => ArrayLike<number>, shots: number): Scatter {
  const sds = Object.values(MODEL_SD);
  const meant = seenAt(NOT_OFF);
  const both = [0, 1, 2, 3, 4].map((k) =>
    [REACH, -REACH].map((reach) => seenAt(NOT_OFF.map((_, i) => (i === k ? reach : 0)) as unknown as Off)),
  );
  const byLatent = (of: (up: number, down: number, mid: number) => number) =>
    Array.from(meant, (mid, latent) => both.map(([up, down]) => of(up[latent], down[latent], mid)));
  return {
    offs: byLatent((up, down) => (up - down) / (2 * REACH)),
    bends: byLatent((up, down, mid) => (up + down - 2 * mid) / (2 * REACH ** 2)),
    offByModel: Array.from(meant, (_, latent) => shots * (sds[Math.min(latent, sds.length - 1)] ?? 0) ** 2),
  };
}

/** Covariance of two latents of a shot that scatters about the one that was meant. */
export function scatter({ offs, bends, offByModel }: Scatter, a: number, b: number): number {
  return dotProduct(offs[a], offs[b]) + 2 * dotProduct(bends[a], bends[b]) + (a === b ? offByModel[a] : 0);
}

/** By latent: how far the mean of shots that scatter lies from the shot that was meant. */
export function lifts({ bends }: Scatter): readonly number[] {
  return bends.map((of) => of.reduce((sum, bend) => sum + bend, 0));
}
