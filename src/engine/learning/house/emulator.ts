import type { Assumed } from "../../assumptions.ts";
import type { Bowler } from "../../delivery/bowler.ts";
import { evenPoints, normalDeviate } from "../../random.ts";
import { cholesky, dotProduct, lowerTimes, type Matrix, solveCholesky } from "../matrix.ts";
import type { SituationSeen } from "./notes.ts";
import { distancesOf, NOT_OFF, type Off, observe, throwerFor } from "./observe.ts";
import { assumedAt, bowlerAt, HOUSE_IDS, type MeanKnown, PARAMETER_IDS, type Place, valuesAt } from "./parameters.ts";

/** Where the parameters are looked for: a cloud about a middle. Coordinates w with place = middle + L w. */
export interface Region {
  readonly middle: Place;
  readonly lower: Matrix;
}

/**
 * What a situation's shots show, as a quadratic in the parameters over a region, fitted to the averaged model by least squares; and how far a shot's own
 * scatter moves it, to second order: shots that scatter do not lie evenly about the one that was meant. What the quadratic misses is kept as a
 * standard deviation.
 */
export interface Emulator {
  readonly region: Region;
  /** By latent: constant, linear, then the products of two coordinates, row by row. */
  readonly coefficients: readonly (readonly number[])[];
  readonly missedSd: readonly number[];
  /** By latent: what one standard deviation of each of the five of the bowler's spread moves it by, at the region's middle. */
  readonly offs: readonly (readonly number[])[];
  /** By latent and by the same five: as half a second derivative, so that a scatter z moves what is seen by off·z + bend·z². */
  readonly bends: readonly (readonly number[])[];
  /** What would be expected under the registry's values: "early" and "late" are told against it. */
  readonly expected: readonly number[];
}

const SIZE = PARAMETER_IDS.length;
/** Terms of a quadratic in so many coordinates. */
const TERMS = 1 + SIZE + (SIZE * (SIZE + 1)) / 2;
/** More points than terms, so that what is missed is seen. */
const POINTS = 2 * TERMS;
/** A little of each diagonal is added: coordinates that nothing depends on stay put. */
const RIDGE = 1e-8;

/** @param seed of the points at which the model is run */
export function emulate(
  situation: SituationSeen,
  about: { readonly bowler: Bowler; readonly known: MeanKnown; readonly centre: Assumed; readonly usual: Place },
  region: Region,
  seed: number,
): Emulator {
  const distances = distancesOf(situation);
  const seenAt = (place: Place, off: Off = NOT_OFF): Float64Array => {
    const values = valuesAt(place, about.bowler, about.known);
    return observe(throwerFor(situation, bowlerAt(values, about.bowler), assumedAt(values, about.centre)), situation, distances, off);
  };
  const unit = evenPoints(POINTS, SIZE, seed);
  const cloud = Array.from({ length: POINTS }, (_, i) => Array.from({ length: SIZE }, (_, k) => 1.2 * normalDeviate(unit[i * SIZE + k])));
  const places = cloud.map((w) => withinPrior(placeAt(region, w)));
  const rows = places.map((place) => terms(coordinates(region, place)));
  const seen = places.map((place) => seenAt(place));
  const latents = seen[0].length;
  const lower = cholesky(normalEquations(rows));
  const coefficients = Array.from({ length: latents }, (_, latent) => {
    const right = Array.from({ length: TERMS }, (_, term) => rows.reduce((sum, row, i) => sum + row[term] * seen[i][latent], 0));
    return solveCholesky(lower, right);
  });
  const missedSd = coefficients.map((c, latent) => {
    const squares = rows.reduce((sum, row, i) => sum + (dotProduct(c, row) - seen[i][latent]) ** 2, 0);
    return Math.sqrt(squares / (POINTS - TERMS));
  });
  return { region, coefficients, missedSd, ...offsAt(seenAt, region.middle, latents), expected: [...seenAt(about.usual)] };
}

/** What a place shows, latent by latent. */
export function emulated({ coefficients, region }: Emulator, place: Place): number[] {
  const row = terms(coordinates(region, place));
  return coefficients.map((c) => dotProduct(c, row));
}

/** Covariance of two latents of a shot that scatters about the one that was meant, with what the quadratic misses. */
export function scatter({ offs, bends, missedSd }: Emulator, a: number, b: number): number {
  return dotProduct(offs[a], offs[b]) + 2 * dotProduct(bends[a], bends[b]) + (a === b ? missedSd[a] ** 2 : 0);
}

/** By latent: how far the mean of shots that scatter lies from the shot that was meant. */
export function lifts({ bends }: Emulator): readonly number[] {
  return bends.map((of) => of.reduce((sum, bend) => sum + bend, 0));
}

/**
 * How far out each of the five is tried, standard deviations: with the weights 1/6, 2/3, 1/6 on the three points the mean of what is seen comes out right for
 * a polynomial of the fifth order in it (Gauss–Hermite, Abramowitz & Stegun 25.4.46).
 */
const REACH = Math.sqrt(3);

function offsAt(seenAt: (place: Place, off?: Off) => Float64Array, middle: Place, latents: number): Pick<Emulator, "offs" | "bends"> {
  const meant = seenAt(middle);
  const both = [0, 1, 2, 3, 4].map((k) =>
    [REACH, -REACH].map((reach) => seenAt(middle, NOT_OFF.map((_, i) => (i === k ? reach : 0)) as unknown as Off)),
  );
  const byLatent = (of: (up: number, down: number, mid: number) => number) =>
    Array.from({ length: latents }, (_, latent) => both.map(([up, down]) => of(up[latent], down[latent], meant[latent])));
  return {
    offs: byLatent((up, down) => (up - down) / (2 * REACH)),
    bends: byLatent((up, down, mid) => (up + down - 2 * mid) / (2 * REACH ** 2)),
  };
}

function placeAt({ middle, lower }: Region, w: readonly number[]): Place {
  const off = lowerTimes(lower, w);
  return middle.map((m, i) => m + off[i]);
}

/** w with place = middle + L w. */
function coordinates({ middle, lower }: Region, place: Place): number[] {
  const w: number[] = [];
  for (let i = 0; i < place.length; i++) {
    let sum = place[i] - middle[i];
    for (let k = 0; k < i; k++) sum -= lower[i][k] * w[k];
    w.push(sum / lower[i][i]);
  }
  return w;
}

/** The model is run only where the prior lets the house be; a delivery three of its deviations off is far enough. */
function withinPrior(place: Place): Place {
  return place.map((p, i) => (i < HOUSE_IDS.length ? Math.min(1, Math.max(-1, p)) : Math.min(3, Math.max(-3, p))));
}

function terms(w: readonly number[]): number[] {
  const row = [1, ...w];
  for (let i = 0; i < w.length; i++) for (let k = i; k < w.length; k++) row.push(w[i] * w[k]);
  return row;
}

function normalEquations(rows: readonly (readonly number[])[]): number[][] {
  const squares = Array.from({ length: TERMS }, () => new Array<number>(TERMS).fill(0));
  for (const row of rows) for (let i = 0; i < TERMS; i++) for (let k = 0; k <= i; k++) squares[i][k] += row[i] * row[k];
  for (let i = 0; i < TERMS; i++) {
    for (let k = 0; k < i; k++) squares[k][i] = squares[i][k];
    squares[i][i] += RIDGE * (squares[i][i] + 1);
  }
  return squares;
}
