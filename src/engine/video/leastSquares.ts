import { cholesky, solveCholesky } from "../learning/matrix.ts";

/** Least squares with priors; the numbers looked for are fitted in steps of their own scale. */
export interface FitAsked {
  /**
   * Residuals in units of their own standard deviation: first those that were seen, then those of the priors.
   */
  readonly residuals: (numbers: readonly number[]) => Float64Array;
  /** How many of the first residuals were seen. Among them some may be wrong, and count less the larger they are. */
  readonly seen: number;
  readonly start: readonly number[];
  /** About how far each number is uncertain. */
  readonly scales: readonly number[];
}

export interface Fitted {
  readonly numbers: number[];
  readonly residuals: Float64Array;
  /** Weight of each residual, 1 where it is believed. */
  readonly weights: Float64Array;
  /** Columns of derivatives of the residuals, one a number. */
  readonly jacobian: Float64Array[];
  readonly cost: number;
}

const MOST_ROUNDS = 60;
/** A round that gains less than this share has arrived. */
const ENOUGH = 1e-6;
/** Residuals of more standard deviations than this count less (pseudo-Huber: Charbonnier et al. 1997). */
const BELIEVED = 2.5;
/** Derivatives are taken over this share of a number's scale either way. */
const DERIVATIVE_STEP = 0.02;

/** Levenberg–Marquardt (Marquardt 1963) with reweighting. */
export function leastSquares(asked: FitAsked): Fitted {
  let at = evaluated(asked, [...asked.start]);
  let damping = 1e-3;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const { normal, slope } = normalEquations(at, jacobianAt(asked, at.numbers));
    let better: Evaluated | null = null;
    while (better === null && damping < 1e8) {
      const step = stepOf(normal, slope, damping);
      const tried =
        step === null
          ? null
          : evaluated(
              asked,
              at.numbers.map((number, i) => number - step[i]),
            );
      if (tried !== null && tried.cost < at.cost) better = tried;
      else damping *= 8;
    }
    if (better === null) break;
    const gained = at.cost - better.cost;
    at = better;
    damping = Math.max(1e-9, damping / 8);
    if (gained < ENOUGH * (1 + at.cost)) break;
  }
  return { ...at, jacobian: jacobianAt(asked, at.numbers) };
}

type Evaluated = Omit<Fitted, "jacobian">;

function evaluated({ residuals: of, seen }: FitAsked, numbers: number[]): Evaluated {
  const residuals = of(numbers);
  const weights = new Float64Array(residuals.length).fill(1);
  let cost = 0;
  for (let i = 0; i < residuals.length; i++) {
    const square = residuals[i] ** 2;
    if (i >= seen) cost += square;
    else {
      const bent = Math.sqrt(1 + square / BELIEVED ** 2);
      weights[i] = 1 / bent;
      cost += 2 * BELIEVED ** 2 * (bent - 1);
    }
  }
  return { numbers, residuals, weights, cost: Number.isFinite(cost) ? cost : Number.MAX_VALUE };
}

/** Central differences. */
export function jacobianAt({ residuals, scales }: Pick<FitAsked, "residuals" | "scales">, numbers: readonly number[]): Float64Array[] {
  return scales.map((scale, i) => {
    const step = DERIVATIVE_STEP * scale;
    const moved = (by: number) => residuals(numbers.map((number, j) => (j === i ? number + by : number)));
    const [more, less] = [moved(step), moved(-step)];
    return more.map((value, row) => (value - less[row]) / (2 * step));
  });
}

function normalEquations({ residuals, weights }: Evaluated, jacobian: readonly Float64Array[]) {
  const normal = weightedProducts(jacobian, jacobian, weights);
  const slope = jacobian.map((column) => column.reduce((sum, value, row) => sum + value * weights[row] * residuals[row], 0));
  return { normal, slope };
}

function stepOf(normal: readonly (readonly number[])[], slope: readonly number[], damping: number): number[] | null {
  const damped = normal.map((row, i) => row.map((value, j) => (i === j ? value * (1 + damping) + 1e-12 : value)));
  try {
    return solveCholesky(cholesky(damped), slope);
  } catch (fault) {
    if (fault instanceof RangeError) return null;
    throw fault;
  }
}

/** Aᵀ W B for columns A and B. */
export function weightedProducts(a: readonly Float64Array[], b: readonly Float64Array[], weights: Float64Array): number[][] {
  return a.map((left) =>
    b.map((right) => {
      let sum = 0;
      for (let row = 0; row < weights.length; row++) sum += left[row] * weights[row] * right[row];
      return sum;
    }),
  );
}

/** Covariance of what was fitted, (JᵀWJ)⁻¹. */
export function covarianceOf({ jacobian, weights }: Fitted): number[][] {
  const lower = cholesky(weightedProducts(jacobian, jacobian, weights));
  return lower.map((_, i) =>
    solveCholesky(
      lower,
      lower.map((__, j) => (i === j ? 1 : 0)),
    ),
  );
}
