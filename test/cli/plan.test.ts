import { mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { type PlanDocument, planDocumentSchema } from "#contract/planDocument";
import { built, type Ended, EXAMPLES, fileWith, inProcess } from "./commandLine.ts";

const LEAGUE_NIGHT = join(EXAMPLES, "league-night.yaml");
const fixedTo = (decimals: number) => (value: number) => value.toFixed(decimals).replace("-", "−");

describe("plan of the league night", () => {
  let json: Ended;
  let text: Ended;
  let document: PlanDocument;
  const svg = join(mkdtempSync(join(tmpdir(), "gritwright-svg-")), "lane.svg");

  beforeAll(async () => {
    [json, text] = await Promise.all([
      built("plan", LEAGUE_NIGHT, "--json", "--workers", "2"),
      built("plan", LEAGUE_NIGHT, "--svg", svg, "--workers", "1"),
    ]);
    document = planDocumentSchema.parse(JSON.parse(json.stdout));
  }, 120_000);

  it("says in how many worlds it was computed: the usual 64, or as many as are asked for", async () => {
    expect(document.worlds).toBe(64);
    expect(text.stdout.replace(/\s+/g, " ")).toContain("; 64 were computed)");
    expect((await inProcess("plan", LEAGUE_NIGHT, "--worlds", "3")).stdout.replace(/\s+/g, " ")).toContain("; 3 were computed)");
  });

  it("is one document on stdout, with progress beside it", () => {
    expect(json.code).toBe(0);
    expect(json.stderr).not.toBe("");
    expect(document).toMatchObject({ gritwright: 1, kind: "plan", seed: 1 });
    expect(document.candidates.length).toBeGreaterThan(2);
  });

  it("brings a matched bowler's hybrid on a medium pattern into the trade's range (common practice: about 2000 to 3000)", () => {
    expect(document.pick).not.toBeNull();
    const numbers = document.pick?.plateau.filter((finish) => !finish.includes("polish")).map(Number) ?? [];
    expect(numbers.some((number) => number >= 2000 && number <= 3000)).toBe(true);
  });

  it("keeps within what was measured on lanes (entry 2–7°, loss of 1.9–3.8 mph from release to pins; published, second-hand)", () => {
    for (const { entryAngleDeg, speedAtPinsMph } of document.candidates) {
      expect(entryAngleDeg).toBeGreaterThan(2);
      expect(entryAngleDeg).toBeLessThan(7);
      expect(17.5 - (speedAtPinsMph ?? 0)).toBeGreaterThan(1.9);
      expect(17.5 - (speedAtPinsMph ?? 0)).toBeLessThan(3.8);
    }
  });

  it("holds the value of each chance inside its interval", () => {
    for (const { chance } of document.candidates) {
      if (chance === null) continue;
      expect(chance.low).toBeLessThanOrEqual(chance.value);
      expect(chance.value).toBeLessThanOrEqual(chance.high);
    }
  });

  it("says the same in text: every finish with its own figures", () => {
    expect(text.code).toBe(0);
    for (const { finish, line, entryAngleDeg, hookStartFt } of document.candidates) {
      const row = text.stdout.split("\n").find((candidate) => candidate.replace(/^[> ][* ]/, "").startsWith(`${finish} `));
      const cells = row?.slice(row.indexOf(finish) + finish.length).match(/−?\d+\.\d+/g);
      expect(cells?.slice(0, 3)).toEqual([
        fixedTo(1)(line?.laydownBoard ?? 0),
        fixedTo(2)(line?.launchAngleDeg ?? 0),
        fixedTo(1)(hookStartFt ?? 0),
      ]);
      expect(cells).toContain(fixedTo(1)(entryAngleDeg ?? 0));
    }
    for (const { text: sentence } of [...document.reasons, ...document.cautions]) expect(flat(text.stdout)).toContain(sentence);
  });

  it("fits a hundred columns", () => {
    for (const line of text.stdout.split("\n")) expect(line.length).toBeLessThanOrEqual(100);
  });

  it("tells the customer in feet and words, without percentages or angles", () => {
    const customer = text.stdout.slice(text.stdout.indexOf("For the customer:")).split("\n\n")[0];
    expect(customer.split("\n").length).toBeGreaterThan(1);
    expect(customer).not.toMatch(/[%°]/);
  });

  it("never prints a missing figure or a verdict", () => {
    expect(`${text.stdout}${json.stdout}`).not.toMatch(/NaN|undefined|Infinity|\[object|\blegal\b/);
  });

  it("draws the lane chart", () => {
    const picture = readFileSync(svg, "utf8");
    expect(picture).toMatch(/^<svg /);
    expect(picture).toContain("Tideline");
  });

  it("names every field that the file left out", () => {
    expect(document.defaults).toEqual([
      "ball.drillingAngleDeg",
      "line",
      "limits.laydownBoard",
      "limits.launchAngleDeg",
      "limits.breakpointBoard",
      "candidates",
    ]);
  });
});

/** Small plans, so that many can be made. */
const SMALL = `gritwright: 1
seed: 3
bowler: { speed: medium, hook: medium }
ball: { cover: solid, finish: "2000" }
lane: { pattern: medium-41 }
candidates: ["1000", "2000"]`;

describe("the same job", () => {
  it("gives the same plan in a new process, with one worker and with two", { timeout: 120_000 }, async () => {
    const file = fileWith(SMALL);
    const one = await built("plan", file, "--json", "--workers", "1");
    const two = await built("plan", file, "--json", "--workers", "2");
    const here = await inProcess("plan", file, "--json");
    expect(one.code).toBe(0);
    expect(two.stdout).toBe(one.stdout);
    expect(here.stdout).toBe(one.stdout);
  });

  it("gives the same plan again from the inputs that the plan itself states", { timeout: 120_000 }, async () => {
    const first = planDocumentSchema.parse(JSON.parse((await inProcess("plan", fileWith(SMALL), "--json")).stdout));
    const again = planDocumentSchema.parse(JSON.parse((await inProcess("plan", fileWith(JSON.stringify(first.inputs)), "--json")).stdout));
    expect(again).toEqual({ ...first, defaults: ["line"] });
  });

  it("takes another seed from the command line", { timeout: 60_000 }, async () => {
    const { stdout } = await inProcess("plan", fileWith(SMALL), "--json", "--seed", "99");
    expect(planDocumentSchema.parse(JSON.parse(stdout))).toMatchObject({ seed: 99, inputs: { seed: 99 } });
  });
});

it("a reason why no finish strikes is an answer: exit 0", { timeout: 120_000 }, async () => {
  // Speed 15 mph, 450 rpm, 55° on light oil: no sensible line with a reactive ball (prototype; the trade agrees).
  const file = fileWith(`gritwright: 1
bowler: { speedMph: 15, revRateRpm: 450, axisRotationDeg: 55 }
ball: { cover: solid, finish: "1000" }
lane: { pattern: light-38 }
candidates: ["1000", "2000"]`);
  const { code, stdout } = await inProcess("plan", file, "--json");
  expect(code).toBe(0);
  const document = planDocumentSchema.parse(JSON.parse(stdout));
  // No finish strikes often enough to be told apart by it: pins are counted, and why is said.
  expect(document.metric).toBe("expectedPins");
  expect(document.candidates.every(({ chance }) => chance === null)).toBe(true);
  expect(document.messages.map(({ id }) => id)).toContain("message.noLine.hooksTooMuch");
});
/** Text without its line breaks. */
function flat(text: string): string {
  return text.replaceAll(/\s+/g, " ");
}
