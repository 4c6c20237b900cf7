import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { shotDocumentSchema } from "#contract/shotDocument";
import { built, EXAMPLES, fileWith, inProcess } from "./commandLine.ts";

/**
 * One constant friction, by hand: an isotropic ball of κ = 0.4 and R = 0.10795 m at 8 m/s, 300 rpm, rotation 45°, tilt 0, µ = 0.2, g = 9.80665
 * comes to roll after 6.391078 m and 0.304101 m to the side, at an angle of 6.111091° (closed form of the uniform law).
 */
const CLOSED_FORM = {
  gritwright: 1,
  bowler: { speedMph: 8 / 0.44704, revRateRpm: 300, axisRotationDeg: 45, axisTiltDeg: 0 },
  ball: {
    cover: "solid",
    finish: 2000,
    diameterIn: (2 * 0.10795) / 0.0254,
    principalRgIn: Array(3).fill((Math.sqrt(0.4) * 0.10795) / 0.0254),
  },
  line: { laydownBoard: 20, launchAngleDeg: 0 },
  lane: { friction: { constant: 0.2 } },
  model: { motion: "full", slipRegularisationMps: 0.0001, rollingResistance: 0, startFt: 0 },
};

describe("one shot", () => {
  it("comes out of the built program as the closed form says", async () => {
    const rollsAtFt = 6.391078 / 0.3048;
    const { code, stdout } = await built("shot", fileWith(JSON.stringify(CLOSED_FORM), "job.json"), "--json", "--at", `${rollsAtFt},59.5`);
    expect(code).toBe(0);
    const { samples, reachedPins } = shotDocumentSchema.parse(JSON.parse(stdout));
    expect(samples[0].xM).toBeCloseTo(-0.304101, 5);
    expect(samples[0].tS).toBeCloseTo(0.887684, 5);
    expect(samples[1].entryAngleDeg).toBeCloseTo(6.111091, 3);
    expect(reachedPins).toBe(false);
  });

  it("samples where it is told to, in that order along the lane", async () => {
    const { stdout } = await inProcess("shot", join(EXAMPLES, "one-shot.yaml"), "--json", "--at", "10,20.5,59.5");
    expect(shotDocumentSchema.parse(JSON.parse(stdout)).samples.map(({ yFt }) => Number(yFt.toFixed(9)))).toEqual([10, 20.5, 59.5]);
  });

  it("is mirrored for a left-hander: the same boards, the other side of the lane", async () => {
    const job = (hand: string) => fileWith(JSON.stringify({ ...CLOSED_FORM, bowler: { ...CLOSED_FORM.bowler, hand } }), "job.json");
    const read = async (hand: string) =>
      shotDocumentSchema.parse(JSON.parse((await inProcess("shot", job(hand), "--json")).stdout)).samples;
    const [right, left] = [await read("right"), await read("left")];
    expect(left.map(({ board }) => board)).toEqual(right.map(({ board }) => board));
    for (const [i, sample] of left.entries()) expect(sample.xM).toBeCloseTo(-right[i].xM, 12);
  });

  it("without a line is played on the best line of today's finish", { timeout: 60_000 }, async () => {
    const { code, stdout } = await inProcess("shot", join(EXAMPLES, "league-night.yaml"), "--json");
    const document = shotDocumentSchema.parse(JSON.parse(stdout));
    expect(code).toBe(0);
    expect(document.defaults).toContain("line");
    expect(document.inputs.line?.laydownBoard).toBeGreaterThanOrEqual(9);
    expect(document.inputs.line?.laydownBoard).toBeLessThanOrEqual(36);
    expect(document.reachedPins).toBe(true);
  });

  it("hits higher where shots have worn the oil, and hardly where one has (common practice: the line moves inside as a lane is played)", {
    timeout: 60_000,
  }, async () => {
    const job = (playedShots: number) => ({
      gritwright: 1,
      ball: { cover: "hybrid", finish: 2000 },
      line: { laydownBoard: 18, launchAngleDeg: 1.8 },
      lane: { pattern: "medium-41", playedShots },
    });
    const boardAtPins = async (playedShots: number) => {
      const { stdout } = await inProcess("shot", fileWith(JSON.stringify(job(playedShots)), "job.json"), "--json", "--at", "59.5");
      return shotDocumentSchema.parse(JSON.parse(stdout)).samples[0].board;
    };
    const fresh = await boardAtPins(0);
    expect(Math.abs((await boardAtPins(1)) - fresh)).toBeLessThan(0.15);
    expect(await boardAtPins(60)).toBeGreaterThan(fresh + 0.5);
  });

  it("is told in text of at most a hundred columns", async () => {
    const { code, stdout } = await inProcess("shot", join(EXAMPLES, "one-shot.yaml"));
    expect(code).toBe(0);
    expect(stdout).toMatch(/Hook starts at \d+\.\d ft\./);
    for (const line of stdout.split("\n")) expect(line.length).toBeLessThanOrEqual(100);
    expect(stdout).not.toMatch(/NaN|undefined/);
  });
});

describe("help and version", () => {
  it("are answers", async () => {
    for (const option of ["--help", "-h"]) {
      const { code, stdout } = await inProcess(option);
      expect(code).toBe(0);
      for (const said of ["plan FILE", "shot FILE", "--json", "--svg", "--seed", "--workers", "--at"]) expect(stdout).toContain(said);
    }
    const { code, stdout } = await built("--version");
    expect(code).toBe(0);
    expect(stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
  });
});
