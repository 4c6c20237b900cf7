import type { Assumed } from "../assumptions.ts";
import { type CoverId, coverOf } from "../ball/ball.ts";
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
  const { dryFriction, filmReach } = coverOf(cover).laws;
  return {
    dry: a["house.dry"] * a[dryFriction] * (Math.max(ballRaUm, SMOOTHEST_UM) / MIDDLE_RA_UM) ** a["friction.dryWithRoughness"],
    oil: a["friction.oil"],
    halfFilmUm: a["friction.filmRatio"] * a[filmReach] * composite,
    exponent: a["friction.exponent"],
    exponential: a["friction.exponentialShare"],
  };
}

/**
 * µ for a film of h µm: dry friction on the share of the load that asperities carry, oil's on the rest. With r = (h/h_½)ⁿ that share is 1/(1 + r), or 2^(−r)
 * where the law is taken exponential: one half at the same film, but with a thinner tail.
 */
export function frictionCoefficient(contact: Contact, filmUm: number): number {
  return blended(contact, asperityShare(contact, filmUm));
}

/** The share of the load that asperities carry. */
function asperityShare(contact: Contact, filmUm: number): number {
  return shareAtRatio(contact, (filmUm / contact.halfFilmUm) ** contact.exponent);
}

/** @param ratio r = (h/h_½)ⁿ */
function shareAtRatio({ exponential }: Contact, ratio: number): number {
  return (1 - exponential) / (1 + ratio) + exponential * 2 ** -ratio;
}

function blended(contact: Contact, share: number): number {
  return share * contact.dry + (1 - share) * contact.oil;
}

/**
 * The film that the ball meets: what lies there, plus what it still carries from the lane behind it,
 * h + α c_k ∫ h(x, y′) e^(−(y−y′)/ℓ) dy′/ℓ. The integral runs down every column; between rows the film is linear, which integrates exactly.
 */
export function filmMet(film: FilmMap, cover: CoverId, a: Assumed): Float64Array {
  const met = new Float64Array(film.um.length);
  meeting(film, cover, a)(met, 0, COLUMNS);
  const tilt = frontAgainstBack(a["house.frontOil"]);
  for (let at = 0, row = 0; row < ROWS; row++) {
    const scaled = a["film.scale"] * tilt[row];
    for (let column = 0; column < COLUMNS; column++, at++) met[at] *= scaled;
  }
  return met;
}

/** Lays what lies and is carried in `columns` columns from `first` on, all the rows of each, row by row: as the film is stated, before a house's own oil. */
type Meeting = (met: Float64Array, first: number, columns: number) => void;

function meeting(film: FilmMap, cover: CoverId, a: Assumed): Meeting {
  const reach = a["carriedOil.reach"] * FOOT;
  const share = a["carriedOil.share"] * a[coverOf(cover).laws.carriedOil];
  const step = CELL_Y / reach;
  const keep = Math.exp(-step);
  const nearWeight = 1 - (1 - keep) / step;
  const farWeight = (1 - keep) / step - keep;
  return (met, first, columns) => {
    const carried = new Float64Array(columns);
    for (let row = 0, to = 0; row < ROWS; row++) {
      for (let column = 0, at = row * COLUMNS + first; column < columns; column++, at++, to++) {
        const here = film.um[at];
        if (row > 0) carried[column] = carried[column] * keep + here * nearWeight + film.um[at - COLUMNS] * farWeight;
        met[to] = here + share * carried[column];
      }
    }
  };
}

/** Beyond here the back stays as it is; patterns end about here. */
const TILT_OVER = 40 * FOOT;

/** By what a house's oil differs from what is stated, row by row: f at the foul line, 1/f from 40 ft on, evenly (in the logarithm) between. */
function frontAgainstBack(f: number): Float64Array {
  const tilt = new Float64Array(ROWS).fill(1 / f);
  const aRow = f ** ((-2 * CELL_Y) / TILT_OVER);
  for (let row = 0, here = f; row * CELL_Y < TILT_OVER; row++, here *= aRow) tilt[row] = here;
  return tilt;
}

/** Films are looked up in steps of this, µm: where the law bends most (half film 0.15 µm) straight lines between are wrong by 2e-4. */
export const TABLE_STEP_UM = 0.01;

/** Columns that are worked out together once a ball crosses one of them, a divisor of all but the last; with the next one, so that one can look between the two. */
const STRIP = 8;
const STRIP_WIDTH = STRIP + 1;

/** What differs from house to house and from night to night. */
export type HouseNight = Pick<Assumed, "house.dry" | "house.frontOil" | "film.scale">;

/**
 * Friction over the lane for one house after another, worked out where it is asked for: a single shot crosses a third of the columns and meets some hundred
 * films, so that neither the whole map nor the whole law is wanted. What does not change from house to house is kept between them. The law is tabulated over
 * film, so that an evaluation costs two interpolations.
 *
 * @param ballRaUm effective roughness of the ball, µm, ≥ 0. @param a all but what the houses differ in
 */
export function laneFriction(film: FilmMap, cover: CoverId, ballRaUm: number, a: Assumed): (house: HouseNight) => FrictionField {
  const meet = meeting(film, cover, a);
  const strips: (Float64Array | undefined)[] = new Array((COLUMNS - 1) / STRIP).fill(undefined);
  const stripOf = (at: number): Float64Array => {
    const known = strips[at];
    if (known !== undefined) return known;
    const strip = new Float64Array(ROWS * STRIP_WIDTH);
    meet(strip, at * STRIP, STRIP_WIDTH);
    strips[at] = strip;
    return strip;
  };
  const law = contactOf(cover, ballRaUm, a);
  let shares = new Float64Array(0);
  const shareAt = (cell: number): number => {
    if (cell >= shares.length) {
      const longer = new Float64Array(2 * cell + 1000).fill(Number.NaN);
      longer.set(shares);
      shares = longer;
    }
    if (Number.isNaN(shares[cell])) shares[cell] = asperityShare(law, cell * TABLE_STEP_UM);
    return shares[cell];
  };
  const perX = 1 / CELL_X;
  const perY = 1 / CELL_Y;
  const perFilm = 1 / TABLE_STEP_UM;
  const lastColumn = COLUMNS - 1.000001;
  const lastRow = ROWS - 1.000001;
  return (house) => {
    const contact = contactOf(cover, ballRaUm, { ...a, ...house });
    const tilt = frontAgainstBack(house["house.frontOil"]);
    const scale = house["film.scale"] * perFilm;
    return (x, y) => {
      let across = (x - FIRST_X) * perX;
      if (!(across > 0)) across = 0;
      else if (across > lastColumn) across = lastColumn;
      let along = y * perY;
      if (!(along > 0)) along = 0;
      else if (along > lastRow) along = lastRow;
      const column = across | 0;
      const row = along | 0;
      const strip = (column / STRIP) | 0;
      const met = stripOf(strip);
      const right = across - column;
      const at = row * STRIP_WIDTH + column - strip * STRIP;
      const near = tilt[row] * (met[at] + (met[at + 1] - met[at]) * right);
      const far = tilt[row + 1] * (met[at + STRIP_WIDTH] + (met[at + STRIP_WIDTH + 1] - met[at + STRIP_WIDTH]) * right);
      const place = (near + (far - near) * (along - row)) * scale;
      const cell = place | 0;
      const below = shareAt(cell);
      return blended(contact, below + (shareAt(cell + 1) - below) * (place - cell));
    };
  };
}

/**
 * Friction over the lane for whoever runs many shots on one film, or has the film that is met already: the whole map and the whole law at once, an evaluation
 * two interpolations.
 *
 * @param met from {@link filmMet}
 */
export function filmFriction(met: Float64Array, contact: Contact): FrictionField {
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
  table[0] = frictionCoefficient(contact, 0);
  // Powers of an even row of films, by logarithms that are worked out once: an exponential costs a third of a power.
  const logs = logarithms(table.length);
  const half = Math.log(contact.halfFilmUm / TABLE_STEP_UM);
  for (let i = 1; i < table.length; i++) {
    table[i] = blended(contact, shareAtRatio(contact, Math.exp(contact.exponent * (logs[i] - half))));
  }
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
