import type { Assumed } from "../assumptions.ts";
import { type CoverId, coverOf } from "../ball/ball.ts";
import { FOOT } from "../units.ts";
import { CELL_ML_PER_UM, CELL_X, CELL_Y, COLUMNS, columnShare, FIRST_X, type FilmMap, ROWS, rowShare } from "./filmMap.ts";
import { BOARD } from "./geometry.ts";

/** Where balls rolled: for each row of the film map the middle of the track and the standard deviation of the shots about it, m. */
export interface Track {
  readonly x: Float64Array;
  readonly scatter: Float64Array;
  /** Of all shots that are thrown, 0–1. */
  readonly share: number;
}

/** How one kind of ball wears a film. Source and range of each constant: assumptions; derivation: docs/model/wear.md. */
export interface WearLaw {
  /** Share of the film taken at the middle of one ball's track. */
  readonly removal: number;
  /** Standard deviation of one ball's track, m. */
  readonly footprint: number;
  /** Share of what was taken that is laid down again further on. */
  readonly laidDown: number;
  /** e-folding length of laying it down, m. */
  readonly reach: number;
}

/** η = η₀(0.6 + 0.8 Ra/(Ra + 0.4 µm)): a rougher ball takes more. */
export function wearLaw(cover: CoverId, ballRaUm: number, a: Assumed): WearLaw {
  return {
    removal: a["wear.removal"] * (0.6 + (0.8 * ballRaUm) / (ballRaUm + 0.4)),
    footprint: a["wear.footprint"] * BOARD,
    laidDown: a[coverOf(cover).laws.laidDown],
    reach: a["wear.laidDownReach"] * FOOT,
  };
}

/** Beyond so many standard deviations of its width a track takes nothing. */
const TRACK_ENDS = 4.5;

/**
 * The film after a number of shots along some tracks. Each ball takes its share over a Gaussian footprint; scattered shots widen the footprint and
 * lower its middle. Of what a ball takes, part is laid down again along the tracks ahead; the rest, and what is still on the ball at the
 * end, leaves the lane. Nothing is made: film left + volume taken = film before.
 *
 * @param tracks their shares sum to one
 * @returns the worn film and the volume that left the lane, mL.
 */
export function wornFilm(film: FilmMap, tracks: readonly Track[], shots: number, law: WearLaw): { film: FilmMap; takenMl: number } {
  const um = film.um.slice();
  const laidPerRow = 1 - Math.exp(-CELL_Y / law.reach);
  const footprint = new Float64Array(COLUMNS);
  const rate = new Float64Array(COLUMNS);
  let onBall = 0;
  let gone = 0;
  for (let row = 0; row < ROWS; row++) {
    footprint.fill(0);
    rate.fill(0);
    for (const track of tracks) rollOver(track, row, law, footprint, rate);
    let total = 0;
    let taken = 0;
    for (let column = 0; column < COLUMNS; column++) {
      if (footprint[column] === 0) continue;
      total += footprint[column] * columnShare(column);
      const at = row * COLUMNS + column;
      const left = um[at] * shareLeft(shots * rate[column]);
      taken += (um[at] - left) * columnShare(column);
      um[at] = left;
    }
    onBall += taken * rowShare(row) * law.laidDown;
    gone += taken * rowShare(row) * (1 - law.laidDown);
    const laid = total > 1e-9 ? onBall * laidPerRow : 0;
    onBall -= laid;
    if (laid > 0)
      for (let column = 0; column < COLUMNS; column++) um[row * COLUMNS + column] += (laid * footprint[column]) / (total * rowShare(row));
  }
  return { film: { um, lengthFt: film.lengthFt }, takenMl: (gone + onBall) * CELL_ML_PER_UM };
}

/** Below this six terms of e^(−x) are right to twelve digits. */
const SLIGHT = 0.02;

/** e^(−x), x ≥ 0. */
function shareLeft(x: number): number {
  if (x > SLIGHT) return Math.exp(-x);
  return 1 - x * (1 - x * (1 / 2 - x * (1 / 6 - x * (1 / 24 - x * (1 / 120)))));
}

/**
 * Adds what one track does in one row: its footprint, and the rate at which the film falls a shot, −ln(1 − p g). Column by column the bell's ratio to its
 * neighbour falls by the same factor, so that a row takes three exponentials and no more.
 */
function rollOver({ x, scatter, share }: Track, row: number, law: WearLaw, footprint: Float64Array, rate: Float64Array): void {
  const width = Math.sqrt(law.footprint * law.footprint + scatter[row] * scatter[row]);
  const peak = law.removal * (law.footprint / width);
  const middle = (x[row] - FIRST_X) / CELL_X;
  const reach = (TRACK_ENDS * width) / CELL_X;
  const first = Math.max(0, Math.ceil(middle - reach));
  const last = Math.min(COLUMNS - 1, Math.floor(middle + reach));
  const apart = CELL_X / width;
  const off = (first - middle) * apart;
  let weight = Math.exp(-0.5 * off * off);
  let ratio = Math.exp(-apart * (off + 0.5 * apart));
  const bend = Math.exp(-apart * apart);
  for (let column = first; column <= last; column++) {
    footprint[column] += share * weight;
    rate[column] += share * fallOf(peak * weight);
    weight *= ratio;
    ratio *= bend;
  }
}

/** Below these nine and four terms of the series are right to ten digits; most of a footprint lies below the second. */
const LITTLE = 0.06;
const HARDLY = 0.004;

/** −ln(1 − share taken). */
function fallOf(taken: number): number {
  // Written out: with a division in every turn of a loop this was a seventh of a plan's time.
  if (taken < HARDLY) return taken + taken * taken * (1 / 2 + taken * (1 / 3 + taken * (1 / 4)));
  if (taken > LITTLE) return -Math.log1p(-taken);
  let sum = (1 / 9) * taken;
  sum = (sum + 1 / 8) * taken;
  sum = (sum + 1 / 7) * taken;
  sum = (sum + 1 / 6) * taken;
  sum = (sum + 1 / 5) * taken;
  sum = (sum + 1 / 4) * taken;
  sum = (sum + 1 / 3) * taken;
  sum = (sum + 1 / 2) * taken;
  return (sum + 1) * taken;
}
