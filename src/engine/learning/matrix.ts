/** Small dense matrices, rows of numbers: what the estimates need and no more. */
export type Matrix = readonly (readonly number[])[];

/**
 * Lower triangle L with L Lᵀ = A.
 *
 * @param a symmetric, positive definite
 * @throws RangeError where it is not
 */
export function cholesky(a: Matrix): number[][] {
  const size = a.length;
  const lower = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = a[i][j];
      for (let k = 0; k < j; k++) sum -= lower[i][k] * lower[j][k];
      if (i === j) {
        if (!(sum > 0)) throw new RangeError(`matrix is not positive definite at ${i}`);
        lower[i][i] = Math.sqrt(sum);
      } else lower[i][j] = sum / lower[j][j];
    }
  }
  return lower;
}

/** y with L y = b. */
export function forward(lower: Matrix, b: readonly number[]): number[] {
  const y: number[] = [];
  for (let i = 0; i < lower.length; i++) {
    let sum = b[i];
    for (let k = 0; k < i; k++) sum -= lower[i][k] * y[k];
    y.push(sum / lower[i][i]);
  }
  return y;
}

/** x with L Lᵀ x = b. */
export function solveCholesky(lower: Matrix, b: readonly number[]): number[] {
  const x = forward(lower, b);
  for (let i = lower.length - 1; i >= 0; i--) {
    for (let k = i + 1; k < lower.length; k++) x[i] -= lower[k][i] * x[k];
    x[i] /= lower[i][i];
  }
  return x;
}

/** L v. */
export function lowerTimes(lower: Matrix, v: readonly number[]): number[] {
  return lower.map((row, i) => {
    let sum = 0;
    for (let k = 0; k <= i; k++) sum += row[k] * v[k];
    return sum;
  });
}

/** log det A from its Cholesky factor. */
export function logDet(lower: Matrix): number {
  return 2 * lower.reduce((sum, row, i) => sum + Math.log(row[i]), 0);
}

/** Mean and covariance of rows, each by its weight. @param weights 0 or more, not all 0 */
export function weightedCovariance(
  rows: readonly (readonly number[])[],
  weights: readonly number[],
): { mean: number[]; covariance: number[][] } {
  const size = rows[0].length;
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = Array.from({ length: size }, (_, i) => rows.reduce((sum, row, r) => sum + weights[r] * row[i], 0) / total);
  const covariance = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  rows.forEach((row, r) => {
    for (let i = 0; i < size; i++)
      for (let j = 0; j <= i; j++) covariance[i][j] += (weights[r] / total) * (row[i] - mean[i]) * (row[j] - mean[j]);
  });
  for (let i = 0; i < size; i++) for (let j = 0; j < i; j++) covariance[j][i] = covariance[i][j];
  return { mean, covariance };
}

export function dotProduct(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}

const SWEEPS = 20;

/** A symmetric matrix with every eigenvalue below `least` lifted to it (Jacobi's rotations; Golub & Van Loan, Matrix Computations, 8.5). */
export function withEigenvaluesFrom(symmetric: Matrix, least: number): number[][] {
  const size = symmetric.length;
  const a = symmetric.map((row) => [...row]);
  const v = Array.from({ length: size }, (_, i) => Array.from({ length: size }, (_one, k) => (i === k ? 1 : 0)));
  for (let sweep = 0; sweep < SWEEPS; sweep++) for (let p = 0; p < size; p++) for (let q = p + 1; q < size; q++) rotate(a, v, p, q);
  const values = a.map((row, i) => Math.max(least, row[i]));
  return v.map((left) => v.map((right) => values.reduce((sum, value, k) => sum + left[k] * value * right[k], 0)));
}

/** Turns the plane of p and q until nothing ties them. */
function rotate(a: number[][], v: number[][], p: number, q: number): void {
  if (Math.abs(a[p][q]) < 1e-14) return;
  const theta = (a[q][q] - a[p][p]) / (2 * a[p][q]);
  const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.hypot(theta, 1));
  const c = 1 / Math.hypot(t, 1);
  const s = t * c;
  for (let k = 0; k < a.length; k++) [a[k][p], a[k][q]] = [c * a[k][p] - s * a[k][q], s * a[k][p] + c * a[k][q]];
  for (let k = 0; k < a.length; k++) [a[p][k], a[q][k]] = [c * a[p][k] - s * a[q][k], s * a[p][k] + c * a[q][k]];
  for (let k = 0; k < a.length; k++) [v[k][p], v[k][q]] = [c * v[k][p] - s * v[k][q], s * v[k][p] + c * v[k][q]];
}
