/**
 * Principal components of surfaces of chance, in log odds: the two ways in which they differ most, scaled so that one unit is one standard deviation.
 * Cells weigh by p(1 − p), which is how much a change of log odds there changes the chance. Power iteration.
 */
export function twoMainWays(chances: readonly (readonly number[])[]): { readonly level: Float64Array; readonly shape: Float64Array } {
  const cells = chances[0].length;
  const average = (values: (surface: number) => number) => chances.reduce((sum, _, s) => sum + values(s), 0) / chances.length;
  const meanChance = Array.from({ length: cells }, (_, cell) => average((s) => chances[s][cell]));
  const weight = meanChance.map((p) => Math.sqrt(p * (1 - p)));
  const logOdds = chances.map((surface) => surface.map((p) => Math.log(p / (1 - p))));
  const meanLogOdds = meanChance.map((_, cell) => average((s) => logOdds[s][cell]));
  const rows = logOdds.map((surface) => Float64Array.from(surface, (value, cell) => (value - meanLogOdds[cell]) * weight[cell]));
  const ways: Float64Array[] = [];
  for (let way = 0; way < 2; way++) {
    const { direction, scores } = mainDirection(rows);
    const sd = Math.sqrt(scores.reduce((sum, score) => sum + score * score, 0) / scores.length);
    const loading = direction.map((value, cell) => (value * sd) / weight[cell]);
    ways.push(loading);
    rows.forEach((row, r) => {
      for (let cell = 0; cell < cells; cell++) row[cell] -= scores[r] * direction[cell];
    });
  }
  return { level: towardsMore(ways[0], weight), shape: towardsMore(ways[1], weight) };
}

const ITERATIONS = 200;

function mainDirection(rows: readonly Float64Array[]): { direction: Float64Array; scores: readonly number[] } {
  const cells = rows[0].length;
  let direction = new Float64Array(cells).fill(1 / Math.sqrt(cells));
  let scores: number[] = [];
  for (let i = 0; i < ITERATIONS; i++) {
    scores = rows.map((row) => row.reduce((sum, value, cell) => sum + value * direction[cell], 0));
    const next = new Float64Array(cells);
    rows.forEach((row, r) => {
      for (let cell = 0; cell < cells; cell++) next[cell] += scores[r] * row[cell];
    });
    const length = Math.sqrt(next.reduce((sum, value) => sum + value * value, 0));
    direction = next.map((value) => value / length);
  }
  return { direction, scores: rows.map((row) => row.reduce((sum, value, cell) => sum + value * direction[cell], 0)) };
}

/** The sign in which the way means more strikes. */
function towardsMore(way: Float64Array, weight: readonly number[]): Float64Array {
  const gain = way.reduce((sum, value, cell) => sum + value * weight[cell] * weight[cell], 0);
  return gain < 0 ? way.map((value) => -value) : way;
}
