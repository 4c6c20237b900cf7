import { ASSUMPTIONS, type Assumed, type AssumptionId } from "#engine/assumptions";
import { CALIBRATED } from "#engine/calibrated";
import { band } from "#engine/planning/comparison";
import { type ParameterId, worldAt } from "#engine/worlds/parameters";

/** What is moved to the middle of the worlds: the friction law. Everything else stands at the registry's own values there. */
export const MIDDLE_IDS = Object.keys(CALIBRATED) as readonly (ParameterId & keyof typeof CALIBRATED)[];

/** The friction law of a world, all else as the registry has it. */
export function frictionOf(unit: ArrayLike<number>): Partial<Assumed> {
  const world = worldAt(unit);
  return Object.fromEntries(MIDDLE_IDS.map((id) => [id, Number((world[id] ?? ASSUMPTIONS[id].value).toPrecision(4))]));
}

/** Of some sets of constants the one whose words are nearest to the mean of all worlds: what is drawn, and told where one number is wanted. */
export function nearestTo(mean: readonly number[], tried: readonly (readonly number[])[]): number {
  const misses = tried.map((row) => row.reduce((sum, value, k) => sum + (value - mean[k]) ** 2, 0));
  return misses.indexOf(Math.min(...misses));
}

/** src/engine/calibrated.ts: the middle's values, and where nine worlds of ten lie. */
export function calibratedSource(middle: Partial<Assumed>, units: readonly ArrayLike<number>[], weights: readonly number[]): string {
  const worlds = units.map((unit) => worldAt(unit));
  const rows = MIDDLE_IDS.map((id: AssumptionId) => {
    const value = middle[id] ?? ASSUMPTIONS[id].value;
    const { low, high } = band(
      worlds.map((world) => world[id] ?? value),
      value,
      weights,
    );
    return `  "${id}": { value: ${value}, low: ${Number(low.toPrecision(3))}, high: ${Number(high.toPrecision(3))} },`;
  });
  return `/**\n * Written by \`npm run calibrate\`; do not edit: the friction law in the middle of the ensemble, and where nine of ten worlds lie. See docs/model/calibration.md.\n */\nexport const CALIBRATED = {\n${rows.join("\n")}\n} as const;\n`;
}
