import { FOOT, MICROMETRE, MILLILITRE } from "../units.ts";
import type { FilmSheet } from "./filmSheet.ts";
import { BOARD, BOARDS } from "./geometry.ts";

/**
 * Film thickness of oil on the lane, µm, on a grid of half boards by quarter feet: `um[row * COLUMNS + column]`.
 * Column c stands at x = (c/2 − 20)·board (c = 0 is the left edge's outer half board), row r at r/4 ft from the foul line.
 * 1 mL/m² = 1 µm exactly, so a sum over the grid times its cell is a volume.
 *
 * Half a board resolves the narrowest track (standard deviation 0.55 board), a quarter of a foot the machine's ramps.
 */
export interface FilmMap {
  readonly um: Float64Array;
  readonly lengthFt: number;
}

export const COLUMNS = 2 * BOARDS + 3;
export const ROWS = 4 * 61 + 1;
export const CELL_X = BOARD / 2;
export const CELL_Y = FOOT / 4;
/** x of column 0. */
export const FIRST_X = -((COLUMNS - 1) / 2) * CELL_X;

/** Board from the right edge at which a column stands: 40, 39.5 … 0. */
export function columnBoard(column: number): number {
  return 20 - (FIRST_X + column * CELL_X) / BOARD;
}

export function rowFt(row: number): number {
  return row / 4;
}

/** Fills a map from a function of board (from the right edge) and ft. Negative film is taken as none. */
export function filmFrom(lengthFt: number, filmUm: (board: number, ft: number) => number): FilmMap {
  const um = new Float64Array(COLUMNS * ROWS);
  for (let row = 0; row < ROWS; row++) {
    for (let column = 0; column < COLUMNS; column++) {
      const board = columnBoard(column);
      um[row * COLUMNS + column] = Math.max(0, filmUm(Math.min(39.5, Math.max(0.5, board)), rowFt(row)));
    }
  }
  return { um, lengthFt };
}

/** The same film under other hands: left and right exchanged. */
export function mirrored(film: FilmMap): FilmMap {
  const um = new Float64Array(film.um.length);
  for (let row = 0; row < ROWS; row++) {
    for (let column = 0; column < COLUMNS; column++) um[row * COLUMNS + column] = film.um[row * COLUMNS + COLUMNS - 1 - column];
  }
  return { um, lengthFt: film.lengthFt };
}

/** Film at a place by bilinear interpolation; beyond the grid the nearest value. */
export function filmAt(grid: Float64Array, x: number, y: number): number {
  const across = Math.min(COLUMNS - 1.000001, Math.max(0, (x - FIRST_X) / CELL_X));
  const along = Math.min(ROWS - 1.000001, Math.max(0, y / CELL_Y));
  const column = across | 0;
  const row = along | 0;
  const right = across - column;
  const ahead = along - row;
  const at = row * COLUMNS + column;
  const near = grid[at] + (grid[at + 1] - grid[at]) * right;
  const far = grid[at + COLUMNS] + (grid[at + COLUMNS + 1] - grid[at + COLUMNS]) * right;
  return near + (far - near) * ahead;
}

/** How much of a column's width lies on the lane, in cells: the lane's edges run through the middle of the second and last but one. */
export function columnShare(column: number): number {
  if (column === 0 || column === COLUMNS - 1) return 0;
  return column === 1 || column === COLUMNS - 2 ? 0.5 : 1;
}

/** How much of a row's length counts, in cells: trapezoids along the lane. */
export function rowShare(row: number): number {
  return row === 0 || row === ROWS - 1 ? 0.5 : 1;
}

/** Volume of a cell filled one micrometre deep, mL. */
export const CELL_ML_PER_UM = (CELL_X * CELL_Y * MICROMETRE) / MILLILITRE;

/** Volume on the 39 boards of the lane, mL. */
export function volumeMl(film: FilmMap): number {
  let sum = 0;
  for (let row = 0; row < ROWS; row++) {
    let across = 0;
    for (let column = 0; column < COLUMNS; column++) across += columnShare(column) * film.um[row * COLUMNS + column];
    sum += rowShare(row) * across;
  }
  return sum * CELL_ML_PER_UM;
}

/** Mean over the middle boards (between the second arrows, 10–30) and over the outside boards (gutter to 10), from the foul line to the pattern's end; at the boards' centres. */
export function middleToOutside(film: FilmMap): { middleUm: number; outsideUm: number; ratio: number } {
  const middleUm = meanOver(film, (board) => board >= 10 && board <= 30);
  const outsideUm = meanOver(film, (board) => board < 10 || board > 30);
  return { middleUm, outsideUm, ratio: outsideUm > 0 ? middleUm / outsideUm : Number.POSITIVE_INFINITY };
}

function meanOver(film: FilmMap, wanted: (board: number) => boolean): number {
  let sum = 0;
  let count = 0;
  const last = Math.min(ROWS - 1, Math.floor(film.lengthFt * 4));
  for (let row = 0; row < last; row++) {
    for (let column = 2; column < COLUMNS - 2; column += 2) {
      if (!wanted(columnBoard(column))) continue;
      sum += film.um[row * COLUMNS + column];
      count++;
    }
  }
  return count > 0 ? sum / count : 0;
}

/** The film as a table by whole boards and half feet, for charts and files. The ratio is 0 where the outside is dry. */
export function toFilmSheet(film: FilmMap): FilmSheet {
  const stepFt = 0.5;
  const rows = 121;
  const um: number[] = [];
  for (let row = 0; row < rows; row++) {
    for (let board = 1; board <= BOARDS; board++) um.push(filmAt(film.um, (20 - board) * BOARD, row * stepFt * FOOT));
  }
  const { middleUm, outsideUm, ratio } = middleToOutside(film);
  const area = BOARDS * BOARD * film.lengthFt * FOOT;
  const volume = volumeMl(film);
  return {
    columns: 39,
    rows,
    firstFt: 0,
    stepFt,
    um,
    lengthFt: film.lengthFt,
    volumeMl: volume,
    ratio: outsideUm > 0 ? ratio : middleUm > 0 ? 0 : 1,
    meanUm: area > 0 ? (volume * MILLILITRE) / area / MICROMETRE : 0,
  };
}
