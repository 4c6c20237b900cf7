import type { Assumed } from "../assumptions.ts";
import type { CoverId } from "../ball/ball.ts";
import { CELL_X, CELL_Y, COLUMNS, FIRST_X, type FilmMap, ROWS } from "../lane/filmMap.ts";
import { MIDDLE_RA_UM } from "../surface/finish.ts";
import { FOOT } from "../units.ts";

/** Coefficient of friction at a place of the lane. */
export type FrictionField = (x: number, y: number) => number;

/** What the law needs of ball and lane. Roughness is a number here: which finish it belongs to is not the law's business. */
export interface Contact {
  readonly dry: number;
  readonly oil: number;
  /** Film, µm, at which half of the load is carried by asperities. */
  readonly halfFilmUm: number;
  readonly exponent: number;
  /** Of the two shapes of the law, the share of the exponential one, 0–1. */
  readonly exponential: number;
}

/** Smoother than any ball is, µm: where a power of the roughness ends. */
const SMOOTHEST_UM = 0.02;

/**
 * The constants of one ball on one lane.
 *
 * σ = √(Ra_ball² + Ra_lane²) is the composite roughness (Johnson, Greenwood & Poon 1972), λ = h/σ the film ratio.
 * Half of the load is on asperities at λ = l₀·c_l: see docs/model/friction.md.
 *
 * @param ballRaUm effective roughness of the ball, µm, ≥ 0.
 */
export function contactOf(cover: CoverId, ballRaUm: number, a: Assumed): Contact {
  const composite = Math.hypot(ballRaUm, a["friction.laneRoughness"]);
  return {
    dry: a["house.dry"] * a[`friction.dry.${cover}`] * (Math.max(ballRaUm, SMOOTHEST_UM) / MIDDLE_RA_UM) ** a["friction.dryWithRoughness"],
    oil: a["friction.oil"],
    halfFilmUm: a["friction.filmRatio"] * a[`filmReach.${cover}`] * composite,
    exponent: a["friction.exponent"],
    exponential: a["friction.exponentialShare"],
  };
}

/**
 * µ for a film of h µm: dry friction on the share of the load that asperities carry, oil's on the rest. With r = (h/h_½)ⁿ that share is 1/(1 + r), or 2^(−r)
 * where the law is taken exponential: one half at the same film, but with a thinner tail.
 */
export function frictionCoefficient(contact: Contact, filmUm: number): number {
  return frictionAt(contact, (filmUm / contact.halfFilmUm) ** contact.exponent);
}

/** @param ratio r = (h/h_½)ⁿ */
function frictionAt(contact: Contact, ratio: number): number {
  const share = (1 - contact.exponential) / (1 + ratio) + contact.exponential * 2 ** -ratio;
  return share * contact.dry + (1 - share) * contact.oil;
}

/**
 * The film that the ball meets: what lies there, plus what it still carries from the lane behind it,
 * h + α c_k ∫ h(x, y′) e^(−(y−y′)/ℓ) dy′/ℓ. The integral runs down every column; between rows the film is linear, which integrates exactly.
 */
export function filmMet(film: FilmMap, cover: CoverId, a: Assumed): Float64Array {
  const reach = a["carriedOil.reach"] * FOOT;
  const share = a["carriedOil.share"] * a[`carriedOil.${cover}`];
  const scale = a["film.scale"];
  const step = CELL_Y / reach;
  const keep = Math.exp(-step);
  const nearWeight = 1 - (1 - keep) / step;
  const farWeight = (1 - keep) / step - keep;
  const met = new Float64Array(film.um.length);
  const tilt = frontAgainstBack(a["house.frontOil"]);
  const carried = new Float64Array(COLUMNS);
  for (let row = 0; row < ROWS; row++) {
    const scaled = scale * tilt[row];
    for (let column = 0; column < COLUMNS; column++) {
      const at = row * COLUMNS + column;
      const here = film.um[at];
      if (row > 0) carried[column] = carried[column] * keep + here * nearWeight + film.um[at - COLUMNS] * farWeight;
      met[at] = scaled * (here + share * carried[column]);
    }
  }
  return met;
}

/** Beyond here the back stays as it is; patterns end about here. */
const TILT_OVER = 40 * FOOT;

/** By what a house's oil differs from what is stated, row by row: f at the foul line, 1/f from 40 ft on, evenly (in the logarithm) between. */
function frontAgainstBack(f: number): Float64Array {
  return Float64Array.from({ length: ROWS }, (_, row) => f ** (1 - 2 * Math.min(1, (row * CELL_Y) / TILT_OVER)));
}

/** Films are looked up in steps of this, µm: where the law bends most (half film 0.15 µm) straight lines between are wrong by 2e-4. */
export const TABLE_STEP_UM = 0.01;

/**
 * Friction over the lane. The law is tabulated over film once, so that an evaluation costs two interpolations.
 *
 * @param met film met by the ball, from {@link filmMet}.
 */
export function laneFriction(met: Float64Array, contact: Contact): FrictionField {
  const table = lawTable(contact, met);
  const perX = 1 / CELL_X;
  const perY = 1 / CELL_Y;
  const perFilm = 1 / TABLE_STEP_UM;
  const lastColumn = COLUMNS - 1.000001;
  const lastRow = ROWS - 1.000001;
  return (x, y) => {
    let across = (x - FIRST_X) * perX;
    if (!(across > 0)) across = 0;
    else if (across > lastColumn) across = lastColumn;
    let along = y * perY;
    if (!(along > 0)) along = 0;
    else if (along > lastRow) along = lastRow;
    const column = across | 0;
    const row = along | 0;
    const right = across - column;
    const at = row * COLUMNS + column;
    const near = met[at] + (met[at + 1] - met[at]) * right;
    const far = met[at + COLUMNS] + (met[at + COLUMNS + 1] - met[at + COLUMNS]) * right;
    const place = (near + (far - near) * (along - row)) * perFilm;
    const cell = place | 0;
    return table[cell] + (table[cell + 1] - table[cell]) * (place - cell);
  };
}

/** The same law in the cells of the film map, each times `by`: for those who run many shots and take straight lines between the cells. */
export function tabulated(met: Float64Array, contact: Contact, by: number, into: Float32Array): void {
  const table = lawTable(contact, met);
  for (let at = 0; at < into.length; at++) {
    const place = met[at] / TABLE_STEP_UM;
    const cell = place | 0;
    into[at] = by * (table[cell] + (table[cell + 1] - table[cell]) * (place - cell));
  }
}

function lawTable(contact: Contact, met: Float64Array): Float64Array {
  let thickest = 0;
  for (let i = 0; i < met.length; i++) if (met[i] > thickest) thickest = met[i];
  const table = new Float64Array(Math.ceil(thickest / TABLE_STEP_UM) + 3);
  table[0] = frictionAt(contact, 0);
  // Powers of an even row of films, by logarithms that are worked out once: an exponential costs a third of a power.
  const logs = logarithms(table.length);
  const half = Math.log(contact.halfFilmUm / TABLE_STEP_UM);
  for (let i = 1; i < table.length; i++) table[i] = frictionAt(contact, Math.exp(contact.exponent * (logs[i] - half)));
  return table;
}

let keptLogs = new Float64Array(0);

/** ln i, for i from 1 to below at least so many. */
function logarithms(count: number): Float64Array {
  if (keptLogs.length < count) keptLogs = Float64Array.from({ length: count }, (_, i) => Math.log(i));
  return keptLogs;
}

export function constantFriction(mu: number): FrictionField {
  return () => mu;
}

/** Oil, then dry: µ = oil + (dry − oil)·½(1 + tanh((y − change)/width)), lengths in metres. */
export function twoZoneFriction(oil: number, dry: number, change: number, width: number): FrictionField {
  return (_x, y) => oil + (dry - oil) * 0.5 * (1 + Math.tanh((y - change) / width));
}
