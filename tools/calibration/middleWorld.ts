import { ASSUMPTIONS, type Assumed, type AssumptionId } from "#engine/assumptions";
import { CALIBRATED } from "#engine/calibrated";
import { band } from "#engine/planning/comparison";
import { PARAMETER_IDS, type ParameterId, worldAt } from "#engine/worlds/parameters";

/** What is moved to the middle of the worlds: the friction law. Everything else stands at the registry's own values there. */
export const MIDDLE_IDS = Object.keys(CALIBRATED) as readonly (ParameterId & keyof typeof CALIBRATED)[];

/** Of polyester no situation speaks: it stands in the middle of its prior. */
function isAsked(id: ParameterId): boolean {
  return !id.endsWith(".polyester");
}

/** The friction law of a world, all else as the registry has it. */
export function frictionOf(unit: ArrayLike<number>): Partial<Assumed> {
  const world = worldAt(PARAMETER_IDS.map((id, i) => (isAsked(id) ? unit[i] : 0.5)));
  return Object.fromEntries(MIDDLE_IDS.map((id) => [id, Number((world[id] ?? ASSUMPTIONS[id].value).toPrecision(4))]));
}

/** Published, second-hand: what a robot's measured deceleration implies of friction in oil. A law that is drawn lies within it. */
const OIL_SEEN = [0.005, 0.02] as const;

/** Ladders this far apart, and constants by the spread of an even prior, count alike. */
const LADDER_UNIT = 0.04;

/**
 * Of some worlds' friction laws the one that lies in the middle: its ladders near the mean of all worlds, its constants near the middle of theirs. It is what
 * is drawn, and told where one number is wanted.
 */
export function nearestTo(
  mean: readonly number[],
  middle: ArrayLike<number>,
  tried: readonly { readonly ladder: readonly number[]; readonly unit: ArrayLike<number> }[],
): number {
  const misses = tried.map(({ ladder, unit }) => {
    const oil = worldAt(unit)["friction.oil"] ?? Number.NaN;
    if (!(oil >= OIL_SEEN[0] && oil <= OIL_SEEN[1])) return Number.POSITIVE_INFINITY;
    const said = ladder.reduce((sum, value, k) => sum + ((value - mean[k]) / LADDER_UNIT) ** 2, 0) / ladder.length;
    const asked = MIDDLE_IDS.filter(isAsked).map((id) => PARAMETER_IDS.indexOf(id));
    return said + asked.reduce((sum, i) => sum + 12 * (unit[i] - middle[i]) ** 2, 0) / asked.length;
  });
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
