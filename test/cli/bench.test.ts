import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { smdFile } from "../exchange/measuredFiles.ts";
import { EXAMPLES, fileWith, inProcess, scratchFolder } from "./commandLine.ts";

const example = (name: string) => join(EXAMPLES, name);

async function data(...args: string[]) {
  const { code, stdout } = await inProcess(...args, "--json");
  expect(code).toBe(0);
  expect(stdout).not.toContain("NaN");
  return JSON.parse(stdout);
}

describe("gritwright stages", () => {
  it("plans a batch: a cracked ball has a stop and no stage, the others share their stops", async () => {
    const { balls, batch, ownCut } = await data("stages", example("bench-batch.yaml"));
    expect(balls.map((ball: { name: string }) => ball.name)).toEqual(["Tideline", "Slackwater", "Breakwater"]);
    expect(balls[2].stops).toEqual([{ id: "crack", hard: true }]);
    expect(balls[2].stages).toEqual([]);
    expect(batch[0].balls).toHaveLength(2);
    expect(ownCut.low).toBeLessThan(ownCut.value);
  });

  it("checks a recipe in words, and says what would do", async () => {
    const { stdout } = await inProcess("stages", example("bench-recipe.yaml"));
    expect(stdout).toMatch(/wet paper dry ruins the ball/);
    expect(stdout).toMatch(/about \d+ s a side would do/);
  });

  it("takes a surface's history and the shop's own abrasives, and refuses a bare number", async () => {
    const { balls } = await data("stages", example("bench-history.yaml"));
    const named = await data(
      "stages",
      fileWith('gritwright: 1\nballs: [{ ball: { cover: pearl, finish: "1000 + polish", gamesSince: 9 }, wanted: "3000" }]\n'),
    );
    expect(balls[0].now.value).not.toBeCloseTo(named.balls[0].now.value, 3);
    expect(balls[0].recipe.afterUm).toHaveLength(2);
    const { code, stderr } = await inProcess(
      "stages",
      fileWith(
        'gritwright: 1\nballs: [{ ball: { cover: pearl, finish: "3000", history: [{ abrasive: { kind: foamPad, number: 1000 } }] } }]\n',
      ),
    );
    expect(code).toBe(2);
    expect(stderr).toMatch(/abrasive/);
  });

  it("fits a hundred and twenty columns", async () => {
    const { stdout } = await inProcess("stages", example("bench-batch.yaml"));
    for (const line of stdout.split("\n")) expect(line.length, line).toBeLessThanOrEqual(120);
  });
});

describe("gritwright fade", () => {
  it("gives the curve and what is due, with a date where weeks are known, and draws it", async () => {
    const svg = join(scratchFolder(), "fade.svg");
    const { stdout } = await inProcess("fade", example("fade.yaml"), "--svg", svg);
    expect(stdout).toMatch(/Draw the oil out: in about 4 games \(0–9\), about 2026-11-07/);
    expect(readFileSync(svg, "utf8")).toContain("<svg");
    const { balls } = await data("fade", example("fade.yaml"));
    expect(balls[0].care.track[0].value).toBeGreaterThan(balls[0].care.track[10].value);
  });
});

describe("gritwright readings and gauge", () => {
  it("names the side that was cut short", async () => {
    const found = await data("readings", example("readings-by-side.yaml"));
    expect(found.verdict).toBe("uneven");
    expect(found.backTo).toBe("back");
  });

  it("gives both methods, the share of the tolerance, and the reference piece's limits", async () => {
    const found = await data("gauge", example("gauge-study.yaml"));
    expect(found.range.percent.grr).toBeGreaterThan(0);
    expect(found.percentOfTolerance).toBeCloseTo((600 * found.anova.grr) / 20, 9);
    expect(found.referencePiece.upper).toBeGreaterThan(found.referencePiece.lower);
  });
});

describe("gritwright profile", () => {
  const KEYS = "raUm rqUm rzUm rtUm rpUm rvUm rsk rku rsmMm rdq rkUm rpkUm rvkUm mr1Pct mr2Pct cutoffMm evaluationMm points missing".split(
    " ",
  );

  it("is one document for one file, a list for several, with every figure and the older set", async () => {
    const file = example("profile-1000-pad.csv");
    const one = await data("profile", file, "--form", "arc");
    expect(Object.keys(one)).toEqual(expect.arrayContaining([...KEYS, "iso4287"]));
    expect(one.cutoffMm).toBe(0.8);
    expect(await data("profile", file, file, "--form", "arc")).toEqual([one, one]);
  });

  it("says which byte sum an SMD file was closed with", async () => {
    const heights = Array.from({ length: 4000 }, (_, i) => (Math.sin(i / 20) / 2).toFixed(4));
    const path = fileWith(smdFile({ heights, spacingMm: 0.001, modulo: 65535 }), "invented.smd");
    expect((await data("profile", path)).checksumModulo).toBe(65535);
    expect((await inProcess("profile", path)).stdout).toContain("modulo 65535 where ISO 5436-2 has 65536");
  });

  it("takes the cut-off asked for, and refuses one that the profile cannot hold", async () => {
    const file = example("profile-1000-pad.csv");
    expect((await data("profile", file, "--form", "arc", "--cutoff", "0.25")).cutoffMm).toBe(0.25);
    const { code, stdout } = await inProcess("profile", file, "--cutoff", "8", "--json");
    expect(code).toBe(2);
    expect(JSON.parse(stdout).error.problems[0].path).toBe("cutoff");
  });
});

describe("bad input ends with 2 and a sentence, never a stack trace", () => {
  it.each([
    ["stages", "gritwright: 1\nballs: []\n", /at least one ball/],
    ["stages", 'gritwright: 1\nballs: [{ ball: { cover: wood, finish: "2000" } }]\n', /balls\[0\]\.ball\.cover/],
    ["fade", "gritwright: 2\nballs: []\n", /version 2/],
    ["readings", 'gritwright: 1\nball: { cover: pearl }\nwanted: "2000"\nlastPad: pad-9\nsides: []\n', /lastPad/],
    ["gauge", "gritwright: 1\n", /readings or referencePiece/],
    ["gauge", "gritwright: 1\nreadings: [{ part: a, person: b, trial: 1, value: 1 }]\n", /at least 8 readings/],
  ] as const)("%s: %s", async (command, text, message) => {
    const { code, stderr, stdout } = await inProcess(command, fileWith(text));
    expect(code).toBe(2);
    expect(stderr).toMatch(message);
    expect(stdout + stderr).not.toMatch(/\bat .*\.ts:\d+/);
  });

  it("a gauge study in which somebody left out a part", async () => {
    const rows = ["a", "b", "c"].flatMap((part) =>
      ["x", "y"].flatMap((person) => [1, 2].map((trial) => `{ part: ${part}, person: ${person}, trial: ${trial}, value: ${trial} }`)),
    );
    const { code, stderr } = await inProcess("gauge", fileWith(`gritwright: 1\nreadings: [${rows.slice(1).join(", ")}]\n`));
    expect(code).toBe(2);
    expect(stderr).toMatch(/every person measures every part/);
  });
});
