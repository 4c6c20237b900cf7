import type { Profile } from "./profile.ts";

export const FORMS = ["none", "line", "arc"] as const;
export type Form = (typeof FORMS)[number];

/** Takes the nominal form out of a profile by least squares over the points that are there: nothing, a line, or an arc (a parabola: the ball's curve over a few millimetres). */
export function withoutForm({ um }: Profile, form: Form): Float64Array {
  if (form === "none") return um.slice();
  const coefficients = polynomial(um, form === "line" ? 1 : 2);
  const middle = (um.length - 1) / 2;
  const half = Math.max(1, middle);
  return um.map((z, i) => {
    const x = (i - middle) / half;
    return z - (coefficients[0] + x * (coefficients[1] + x * (coefficients[2] ?? 0)));
  });
}

/** Least-squares polynomial in x from −1 to 1, by the normal equations: at most three unknowns, well conditioned on that interval. */
function polynomial(um: Float64Array, degree: 1 | 2): readonly number[] {
  const size = degree + 1;
  const moments = new Float64Array(2 * degree + 1);
  const right = new Float64Array(size);
  const middle = (um.length - 1) / 2;
  const half = Math.max(1, middle);
  for (let i = 0; i < um.length; i++) {
    if (Number.isNaN(um[i])) continue;
    const x = (i - middle) / half;
    let power = 1;
    for (let k = 0; k <= 2 * degree; k++) {
      moments[k] += power;
      if (k < size) right[k] += power * um[i];
      power *= x;
    }
  }
  return solved(
    Array.from({ length: size }, (_, row) => Array.from({ length: size }, (_, column) => moments[row + column])),
    [...right],
  );
}

/** Gaussian elimination with pivoting; a singular system (too few points) leaves its unknowns at 0. */
function solved(matrix: number[][], right: number[]): readonly number[] {
  const size = right.length;
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let row = column + 1; row < size; row++) if (Math.abs(matrix[row][column]) > Math.abs(matrix[pivot][column])) pivot = row;
    [matrix[column], matrix[pivot]] = [matrix[pivot], matrix[column]];
    [right[column], right[pivot]] = [right[pivot], right[column]];
    if (Math.abs(matrix[column][column]) < 1e-12) continue;
    for (let row = column + 1; row < size; row++) {
      const factor = matrix[row][column] / matrix[column][column];
      for (let k = column; k < size; k++) matrix[row][k] -= factor * matrix[column][k];
      right[row] -= factor * right[column];
    }
  }
  const unknowns = new Array<number>(size).fill(0);
  for (let row = size - 1; row >= 0; row--) {
    if (Math.abs(matrix[row][row]) < 1e-12) continue;
    unknowns[row] =
      (right[row] - matrix[row].slice(row + 1).reduce((sum, value, k) => sum + value * unknowns[row + 1 + k], 0)) / matrix[row][row];
  }
  return unknowns;
}
