import { describe, expect, it } from "vitest";
import { crc32, fromBase64, toBase64 } from "#engine/bytes";
import { EngineFault } from "#engine/fault";
import { CARRY } from "#engine/pins/carryData";
import { effectiveNumber } from "#engine/worlds/effectiveNumber";
import { digestOf, ensemble, packUnits, readEnsemble } from "#engine/worlds/ensemble";
import { ENSEMBLE_DATA } from "#engine/worlds/ensembleData";
import { NIGHT, PARAMETER_IDS, PRIORS, worldAt } from "#engine/worlds/parameters";
import { weightedMean } from "#engine/worlds/weightedMean";

const problemOf = (change: Partial<typeof ENSEMBLE_DATA>) => {
  try {
    readEnsemble({ ...ENSEMBLE_DATA, ...change });
  } catch (fault) {
    if (fault instanceof EngineFault) return fault.problems[0];
    throw fault;
  }
  return null;
};

describe("the ensemble that ships", () => {
  const { worlds } = ensemble();

  it("has shares that sum to one, and counts as at least 200 worlds", () => {
    expect(worlds.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 9);
    expect(effectiveNumber(worlds.map(({ weight }) => weight))).toBeGreaterThanOrEqual(200);
  });

  it("keeps every value within its prior, and every night within what a night may be", () => {
    for (const { values, night } of worlds) {
      for (const id of PARAMETER_IDS) {
        const { low, high, of } = { of: undefined, ...PRIORS[id] };
        const value = (values[id] ?? Number.NaN) / (of === undefined ? 1 : (values[of] ?? Number.NaN));
        expect(value).toBeGreaterThanOrEqual(low * (1 - 1e-9) - 1e-12);
        expect(value).toBeLessThanOrEqual(high * (1 + 1e-9) + 1e-12);
      }
      for (const [id, { low, high }] of Object.entries(NIGHT)) {
        expect(night.lane[id as keyof typeof NIGHT]).toBeGreaterThanOrEqual(low);
        expect(night.lane[id as keyof typeof NIGHT]).toBeLessThanOrEqual(high);
      }
    }
  });

  it("gives the priors back where only they are believed: even between their ends (mean 1/2, variance 1/12), within what so many worlds allow", () => {
    const shares = worlds.map(({ priorWeight }) => priorWeight);
    const error = 1 / Math.sqrt(effectiveNumber(shares));
    const units = PARAMETER_IDS.map((_, i) => worlds.map(({ unit }) => unit[i]));
    const misses = units.flatMap((unit) => {
      const mean = weightedMean(unit, shares);
      const variance = weightedMean(
        unit.map((one) => (one - mean) ** 2),
        shares,
      );
      // The standard deviation of one number, and of its square about the mean: 1/√12 and 1/√180.
      return [(mean - 0.5) / (error / Math.sqrt(12)), (variance - 1 / 12) / (error / Math.sqrt(180))];
    });
    expect(effectiveNumber(shares)).toBeGreaterThan(60);
    expect(Math.max(...misses.map(Math.abs))).toBeLessThan(4);
    expect(Math.sqrt(misses.reduce((sum, miss) => sum + miss ** 2, 0) / misses.length)).toBeLessThan(1.4);
  });

  it("has further nights of the same constants, each another one, and the first are its own", () => {
    const { draws, drawn } = ensemble();
    expect(draws).toBeGreaterThanOrEqual(2 * worlds.length);
    expect(drawn(3)).toBe(worlds[3]);
    const again = drawn(worlds.length + 3);
    expect(again.values).toBe(worlds[3].values);
    expect(again.weight).toBe(worlds[3].weight);
    const nights = Array.from({ length: draws / worlds.length }, (_, k) => drawn(3 + k * worlds.length).night.lane["house.dry"]);
    expect(new Set(nights).size).toBe(nights.length);
    // Over all draws a night's factor on dry boards lies evenly between its ends.
    const all = Array.from({ length: draws }, (_, i) => drawn(i).night.lane["house.dry"] ?? 0).sort((a, b) => a - b);
    for (const share of [0.1, 0.5, 0.9]) expect(all[Math.round(share * draws)]).toBeCloseTo(0.85 + 0.3 * share, 2);
  });

  it("was weighed with the carry table that is in use", () => {
    expect(ENSEMBLE_DATA.carry).toBe(CARRY.provenance.design);
  });

  it("is read back as it was stored: 16 bits a number", () => {
    const [world] = worlds;
    const bytes = fromBase64(toBase64(packUnits([world.unit])));
    expect(worldAt(Float64Array.from(world.unit, (_, i) => ((bytes[2 * i] << 8) | bytes[2 * i + 1]) / 65535))).toEqual(world.values);
  });
});

describe("an ensemble that cannot be used is refused, with what to do", () => {
  it.each([
    ["another version", { version: 1 }, "ensemble.version"],
    ["another carry table", { carry: "table-1-0" }, "ensemble.carry"],
    ["other parameters", { parameters: ["friction.oil"] }, "ensemble.parameters"],
    ["a text that is cut short", { units: ENSEMBLE_DATA.units.slice(0, -8) }, "ensemble.units"],
    ["a damaged letter", { units: ENSEMBLE_DATA.units.replace(/[B-Y]/, "A") }, "ensemble.digest"],
    ["another weight", { weights: ENSEMBLE_DATA.weights.map((weight, i) => (i === 0 ? weight + 1 : weight)) }, "ensemble.digest"],
    ["another likeliness", { likeliness: ENSEMBLE_DATA.likeliness.map((one, i) => (i === 0 ? one + 1 : one)) }, "ensemble.digest"],
    ["likeliness of too few worlds", { likeliness: [1] }, "ensemble.likeliness"],
  ] as const)("%s", (_, change, path) => {
    const problem = problemOf(change as Partial<typeof ENSEMBLE_DATA>);
    expect(problem?.path).toBe(path);
    expect(problem?.allowed).toContain("npm run calibrate");
  });

  it("worlds that all weigh nothing", () => {
    const weights = ENSEMBLE_DATA.weights.map(() => 0);
    const digest = digestOf(fromBase64(ENSEMBLE_DATA.units), [...weights, ...ENSEMBLE_DATA.likeliness, ENSEMBLE_DATA.unfitted]);
    expect(problemOf({ weights, digest })?.path).toBe("ensemble.weights");
  });
});

it("CRC-32 is the one of ISO 3309: its published check value", () => {
  expect(crc32(Uint8Array.from("123456789", (one) => one.charCodeAt(0))).toString(16)).toBe("cbf43926");
});

it("base 64 is the one of RFC 4648: its published examples", () => {
  for (const [text, coded] of [
    ["", ""],
    ["f", "Zg=="],
    ["fo", "Zm8="],
    ["foo", "Zm9v"],
    ["foobar", "Zm9vYmFy"],
  ] as const) {
    const bytes = Uint8Array.from(text, (one) => one.charCodeAt(0));
    expect(toBase64(bytes)).toBe(coded);
    expect(fromBase64(coded)).toEqual(bytes);
  }
});
