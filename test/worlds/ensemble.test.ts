import { describe, expect, it } from "vitest";
import { crc32, fromBase64, toBase64 } from "#engine/bytes";
import { EngineFault } from "#engine/fault";
import { CARRY } from "#engine/pins/carryData";
import { effectiveNumber } from "#engine/worlds/effectiveNumber";
import { ensemble, packUnits, readEnsemble } from "#engine/worlds/ensemble";
import { ENSEMBLE_DATA } from "#engine/worlds/ensembleData";
import { NIGHT, PARAMETER_IDS, PRIORS, worldAt } from "#engine/worlds/parameters";

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
    ["another version", { version: 2 }, "ensemble.version"],
    ["another carry table", { carry: "table-1-0" }, "ensemble.carry"],
    ["other parameters", { parameters: ["friction.oil"] }, "ensemble.parameters"],
    ["a text that is cut short", { units: ENSEMBLE_DATA.units.slice(0, -8) }, "ensemble.units"],
    ["a damaged letter", { units: ENSEMBLE_DATA.units.replace(/[B-Y]/, "A") }, "ensemble.digest"],
    ["another weight", { weights: ENSEMBLE_DATA.weights.map((weight, i) => (i === 0 ? weight + 1 : weight)) }, "ensemble.digest"],
  ] as const)("%s", (_, change, path) => {
    const problem = problemOf(change as Partial<typeof ENSEMBLE_DATA>);
    expect(problem?.path).toBe(path);
    expect(problem?.allowed).toContain("npm run calibrate");
  });

  it("worlds that all weigh nothing", () => {
    const weights = ENSEMBLE_DATA.weights.map(() => 0);
    const bytes = fromBase64(ENSEMBLE_DATA.units);
    const text = Uint8Array.from(weights.join(), (one) => one.charCodeAt(0));
    const digest = `worlds-${weights.length}-${crc32(bytes).toString(16).padStart(8, "0")}${crc32(text).toString(16).padStart(8, "0")}`;
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
