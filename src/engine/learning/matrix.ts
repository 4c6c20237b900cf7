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
