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

  it("refuses a pad that does not fit the ball, naming it, and leaves no figure that is none at the ends of what is allowed", async () => {
    const stage = (more: string) => `[{ abrasive: pad-500, sides: 2, secondsPerSide: 9, ${more} }]`;
    const file = (ball: string, more: string) =>
      fileWith(`gritwright: 1\ncells: 500\nball: { name: Tideline, ${ball} }\nstages: ${stage(more)}\n`);
    const wide = await inProcess("padwork", file("diameterIn: 2", "padDiameterIn: 8"));
    expect(wide.code).toBe(2);
    expect(wide.stderr).toContain("stages[0].padDiameterIn");
    const ends = [
      "sweepDeg: [0, 0]",
      "sweepDeg: [110, 110], padDiameterIn: 8",
      "padDiameterIn: 0.5",
      "by: hand, patchDeg: 0, strokeDeg: 120",
    ];
    for (const more of ends) {
      const { code, stdout } = await inProcess("padwork", file("diameterIn: 8.5", more), "--json");
      expect(code).toBe(0);
      // JSON writes a number that is none as null; of all figures only timesToAllowed may be null.
      expect(stdout.replace('"timesToAllowed": null', "")).not.toContain("null");
    }
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
