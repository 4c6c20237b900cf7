import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { EXAMPLES, fileWith, inProcess } from "./commandLine.ts";

const json = async (text: string) => JSON.parse((await inProcess("padwork", fileWith(text), "--json")).stdout);
const SIX = "gritwright: 1\ncells: 1000\nstages: [{ abrasive: pad-1000, sides: 6, secondsPerSide: 30 }]\n";

describe("gritwright padwork", () => {
  it("six sides are more even than four and two, and skipping any is worse (common practice)", async () => {
    const { compared, sides, evenness } = await json(SIX);
    const [two, four, six] = compared.map((one: { evenness: { cv: number } }) => one.evenness.cv);
    expect(six).toBeLessThan(four);
    expect(four).toBeLessThan(two);
    expect(evenness.cv).toBeCloseTo(six, 12);
    for (const { without } of sides) expect(without.cv).toBeGreaterThan(evenness.cv);
  });

  it("says what it took as usual, and does not where the file says it", async () => {
    expect((await json(SIX)).takenAsUsual).toEqual(["diameterIn", "hardnessD", "padDiameterIn", "spinnerRpm", "sweepDeg", "force"]);
    const { stdout } = await inProcess("padwork", join(EXAMPLES, "pad-work.yaml"), "--json");
    expect(JSON.parse(stdout).takenAsUsual).toEqual([]);
  });

  it("draws the same ball that it describes", async () => {
    const path = fileWith("", "ball.svg");
    const { code, stdout } = await inProcess("padwork", join(EXAMPLES, "pad-work.yaml"), "--svg", path);
    expect(code).toBe(0);
    const varies = /Varies by (\d+) %/.exec(stdout)?.[1];
    expect(readFileSync(path, "utf8")).toContain(`varies by ${varies} %`);
  });

  it("warns where standing still takes the ball out of round (0.010 in; USBC, from memory)", async () => {
    const held = (seconds: number) =>
      fileWith(
        `gritwright: 1\ncells: 1000\nstages: [{ abrasive: paper-P240, force: hard, each: [{ side: grip, seconds: 10, held: { atDeg: 60, seconds: ${seconds} } }] }]\n`,
      );
    expect((await inProcess("padwork", held(5))).stdout).not.toContain("Caution");
    expect((await inProcess("padwork", held(600))).stdout).toContain("out of round by more than is allowed");
  });

  it.each([
    ["neither a count of sides nor each", "{ abrasive: pad-500 }", /stages\[0\]/],
    ["both", "{ abrasive: pad-500, sides: 6, secondsPerSide: 5, each: [{ side: grip, seconds: 3 }] }", /stages\[0\]/],
    ["a side that is none", "{ abrasive: pad-500, each: [{ side: grpi, seconds: 3 }] }", /did you mean grip/],
    ["a sweep backwards", "{ abrasive: pad-500, sides: 6, secondsPerSide: 5, sweepDeg: [80, 5] }", /sweepDeg/],
    ["a sweep to nowhere", "{ abrasive: pad-500, sides: 6, secondsPerSide: 5, sweepDeg: [0, 170] }", /sweepDeg\[1\]/],
    ["three sides", "{ abrasive: pad-500, sides: 3, secondsPerSide: 5 }", /2, 4 or 6/],
  ])("refuses %s, naming the place", async (_name, stage, expected) => {
    const { code, stderr } = await inProcess("padwork", fileWith(`gritwright: 1\nstages: [${stage}]\n`));
    expect(code).toBe(2);
    expect(stderr).toMatch(expected);
  });
});
