import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { TransitionDocument } from "#contract/transitionDocument";
import type { BowlerMeasured } from "#engine/learning/delivery/measureBowler";
import type { BagPlan } from "#engine/planning/bag/bagPlan";
import { built, EXAMPLES, fileWith, inProcess, scratchFolder } from "./commandLine.ts";

/**
 * What the worked examples of delivery, transition and bag came to when they were last approved. Approve with
 * APPROVE=1 npx vitest run test/cli/worked.test.ts, and say in the commit why they moved.
 */
const APPROVED = join(import.meta.dirname, "approved");

/** By how much a figure may differ, by the name it goes by: above what other machines' last bits do to a choice between near-equals. */
const WITHIN: Readonly<Record<string, number>> = {
  volumeMl: 0.3,
  takenMl: 0.3,
  oilMl: 0.3,
  strikes: 0.35,
  share: 0.05,
  figure: 1e-6,
};

type Essence = Record<string, unknown>;

const ESSENCES: Readonly<Record<string, (document: unknown) => Essence>> = {
  delivery: (document) => {
    const { speedMph, revRateRpm, axisRotationDeg, axisTiltDeg, pap, speedClass, bowler } = document as BowlerMeasured & {
      bowler: unknown;
    };
    const numbers = [speedMph, revRateRpm, axisRotationDeg, axisTiltDeg, ...(pap === null ? [] : [pap.overIn, pap.upIn])];
    return { figure: numbers.flatMap(({ mean: { value, low, high } }) => [value, low, high]), speedClass, bowler: JSON.stringify(bowler) };
  },
  transition: (document) => {
    const { games } = document as TransitionDocument;
    const middle = games.flatMap(({ change }) => change.left.filter(({ along }) => along === "middle"));
    return {
      volumeMl: games.map(({ volumeMl }) => volumeMl),
      takenMl: games.map(({ takenMl }) => takenMl),
      share: middle.map(({ share }) => share),
    };
  },
  bag: (document) => {
    const { frames, strikes, stages, balls, surfaceWord } = document as BagPlan;
    return {
      frames,
      strikes: [strikes?.value],
      oilMl: stages.map(({ oilMl }) => oilMl),
      places: stages.map(({ game, part }) => `${game}.${part}`).join(),
      aside: balls
        .filter(({ role }) => role === "aside")
        .map(({ name }) => name)
        .join(),
      surfaceWord: JSON.stringify(surfaceWord),
    };
  },
};

describe("the worked example of", () => {
  it.each(Object.keys(ESSENCES))("gritwright %s comes to what was approved", { timeout: 180_000 }, async (command) => {
    const workers = command === "bag" ? ["--workers", "2"] : [];
    const { code, stdout } = await built(command, join(EXAMPLES, `${command}.yaml`), "--json", ...workers);
    expect(code).toBe(0);
    expect(stdout).not.toContain("NaN");
    const found = ESSENCES[command](JSON.parse(stdout));
    const file = join(APPROVED, `${command}.json`);
    if (process.env.APPROVE === "1") writeFileSync(file, `${JSON.stringify(found, null, 2)}\n`);
    expect(existsSync(file), `${file} is not there; see the head of this test`).toBe(true);
    const approved: Essence = JSON.parse(readFileSync(file, "utf8"));
    for (const [name, wanted] of Object.entries(approved)) {
      if (!Array.isArray(wanted)) expect(found[name], name).toEqual(wanted);
      else expectNear(name, found[name] as number[], wanted);
    }
  });
});

function expectNear(name: string, found: readonly number[], wanted: readonly number[]): void {
  expect(found, name).toHaveLength(wanted.length);
  for (const [i, figure] of found.entries()) {
    expect(Math.abs(figure - wanted[i]), `${name}[${i}]: ${figure}, was ${wanted[i]}`).toBeLessThanOrEqual(WITHIN[name]);
  }
}

describe("gritwright bag", () => {
  const SMALL = `gritwright: 1
balls:
  - { ball: { name: Breakwater, cover: solid, finish: 2000 }, finishes: [] }
  - { ball: { name: Jetty, cover: polyester, finish: "4000 + polish", job: spare } }
lane: { pattern: medium-41 }
session: { games: 1, stagesAGame: 1, others: { bowlers: 1 } }
`;

  it("tells what to do beforehand, which ball when, and draws the bag", async () => {
    const svg = join(scratchFolder(), "bag.svg");
    const { code, stdout } = await inProcess("bag", fileWith(SMALL), "--svg", svg, "--workers", "1");
    expect(code).toBe(0);
    expect(stdout).toMatch(/Nothing: every ball goes as it lies\./);
    expect(stdout).toMatch(/Left out, not meant to strike: Jetty\./);
    expect(stdout).toMatch(/game 1: Breakwater, 2000 as it lies/);
    for (const line of stdout.split("\n")) expect(line.length, line).toBeLessThanOrEqual(120);
    expect(readFileSync(svg, "utf8").match(/class="gw-bag-ball"/g)).toHaveLength(1);
  });

  it.each([
    ["balls: []\nlane: { pattern: medium-41 }\nsession: { games: 1 }", /balls.*1 to 8 balls/],
    [SMALL.slice(14).replace("games: 1, stagesAGame: 1", "games: 4, stagesAGame: 4"), /session\.stagesAGame.*at most 12 stages/],
    [SMALL.slice(14).replace("Jetty", "Breakwater"), /balls\[1\]\.ball\.name.*a name that no other ball/],
    [`${SMALL.slice(14)}work: { numbers: [999] }`, /work\.numbers\[0\].*numbers of pads: 360/],
  ])("refuses %s by its field", async (text, says) => {
    const { code, stderr } = await inProcess("bag", fileWith(`gritwright: 1\n${text}\n`));
    expect(code).toBe(2);
    expect(stderr).toMatch(says);
  });
});
