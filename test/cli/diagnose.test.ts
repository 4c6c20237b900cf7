import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { EXAMPLES, fileWith, inProcess } from "./commandLine.ts";

const FILE = "gritwright: 1\nball: { cover: solid, finish: 2000 }\nlane: { pattern: medium-41 }\n";

describe("gritwright diagnose", () => {
  it("tells causes with their evidence, marks what is computed, and the next step", async () => {
    const { code, stdout } = await inProcess("diagnose", join(EXAMPLES, "diagnose.yaml"));
    expect(code).toBe(0);
    expect(stdout).toMatch(/\d+ in 100 {2}The finish has faded in the track/);
    expect(stdout).toMatch(/hooks \d\.\d ft later.*\[computed\]/s);
    expect(stdout).toMatch(/The next step/);
    for (const line of stdout.split("\n")) expect(line.length, line).toBeLessThanOrEqual(100);
    const { causes, steps } = JSON.parse((await inProcess("diagnose", join(EXAMPLES, "diagnose.yaml"), "--json")).stdout);
    expect(causes.reduce((sum: number, { probability }: { probability: number }) => sum + probability, 0)).toBeCloseTo(1, 9);
    expect(steps.length).toBeGreaterThan(5);
  });

  it("never advises sanding when all balls changed, and says so", async () => {
    const { stdout } = await inProcess("diagnose", fileWith(`${FILE}symptoms: [hooksLess]\nchanged: all\n`));
    expect(stdout).toMatch(/All balls changed: no ball is sanded for it\./);
    expect(stdout).not.toMatch(/Put a pad on/);
  });

  it.each([
    ["symptoms: []", /symptoms.*at least one symptom/],
    ["symptoms: [itIsSad]", /symptoms\[0\].*one of hooksEarlyHitsWeak/],
    ["symptoms: [hooksLess]\nchanged: both", /changed.*one of all, one, unknown/],
  ])("refuses %s by its field", async (text, says) => {
    const { code, stderr } = await inProcess("diagnose", fileWith(`${FILE}${text}\n`));
    expect(code).toBe(2);
    expect(stderr).toMatch(says);
  });
});
