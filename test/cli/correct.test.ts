import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { EXAMPLES, fileWith, inProcess } from "./commandLine.ts";

const EXAMPLE = join(EXAMPLES, "correct.yaml");

describe("gritwright correct", () => {
  it("tells what was learned, what was not, and which look would tell most; a plan takes its block over and says so", {
    timeout: 120_000,
  }, async () => {
    const { code, stdout } = await inProcess("correct", EXAMPLE, "--json");
    expect(code).toBe(0);
    expect(stdout).not.toContain("NaN");
    const { parameters, untold, nextShots, plans, house } = JSON.parse(stdout);
    // The example was made in a house whose dry boards grip 1.12 times as much, by a bowler of 17.2 mph.
    const of = (id: string) => parameters.find((one: { id: string }) => one.id === id);
    expect(of("house.dry").low).toBeLessThan(1.12);
    expect(of("house.dry").high).toBeGreaterThan(1.12);
    expect(of("speedMph").left).toBeLessThan(0.6);
    // Oil at the front against the back changes a path by less than a note can say.
    expect(untold).toContain("house.frontOil");
    expect(nextShots).toHaveLength(3);
    expect(plans.map(({ ball }: { ball: string }) => ball)).toEqual(["Breakwater", "Tideline", "Ebb"]);
    const job = { gritwright: 1, ball: { cover: "hybrid", finish: 2000 }, lane: { pattern: "medium-41" }, candidates: [2000, 4000], house };
    const planned = await inProcess("plan", fileWith(JSON.stringify(job)), "--json", "--workers", "1");
    expect(planned.code).toBe(0);
    const plan = JSON.parse(planned.stdout);
    expect(plan.messages).toContainEqual(expect.objectContaining({ id: "message.houseLearned", params: { shots: 21 } }));
    const dry = plan.assumptions.find((one: { id: string }) => one.id === "house.dry");
    expect(dry.mark).toBe("learned");
    // The middle world's own mean stands in the middle; the ends are those of what was learned over all worlds.
    expect(Math.abs(dry.low - of("house.dry").low)).toBeLessThan(0.04);
    expect(Math.abs(dry.high - of("house.dry").high)).toBeLessThan(0.04);
    expect(dry.value).toBeGreaterThan(dry.low);
    expect(dry.value).toBeLessThan(dry.high);
    const { house: _, ...without } = job;
    const before = JSON.parse((await inProcess("plan", fileWith(JSON.stringify(without)), "--json", "--workers", "1")).stdout);
    expect(plan.candidates[0].hookStartFt).not.toBeCloseTo(before.candidates[0].hookStartFt, 2);
  });

  it.each([
    [
      "a shot of a ball that is not there",
      (file: Record<string, unknown[]>) => file.shots.push({ ball: "Jetty" }),
      /shots\[21\]\.ball.*one of Breakwater, Tideline, Ebb/,
    ],
    [
      "a word that is none",
      (file: Record<string, unknown[]>) => file.shots.push({ ball: "Ebb", turned: "soon" }),
      /shots\[21\]\.turned.*one of early, right, late/,
    ],
    ["no shots", (file: Record<string, unknown[]>) => file.shots.splice(0), /shots.*1 to 500 shots/],
  ])("refuses %s by its field", async (_, spoil, says) => {
    const file = parse(readFileSync(EXAMPLE, "utf8"));
    spoil(file);
    const { code, stderr } = await inProcess("correct", fileWith(JSON.stringify(file)));
    expect(code).toBe(2);
    expect(stderr).toMatch(says);
  });

  it("a block that does not fit is refused by its place; one of other worlds is taken by its middle, and said", {
    timeout: 120_000,
  }, async () => {
    const job = { gritwright: 1, ball: { cover: "hybrid", finish: 2000 }, lane: { pattern: "medium-41" } };
    const house = (draws: number[][]) => fileWith(JSON.stringify({ ...job, house: { shots: 3, ids: ["house.dry"], draws } }));
    expect((await inProcess("plan", house([[1, 2]]))).stderr).toMatch(/house\.draws\[0\].*1 numbers, one for every id/);
    const { house: learned } = JSON.parse((await inProcess("correct", EXAMPLE, "--json")).stdout);
    const spoilt = (over: object) => {
      const { inWorlds } = learned;
      const worlds = [{ ...inWorlds.worlds[0], ...over }, ...inWorlds.worlds.slice(1)];
      return fileWith(JSON.stringify({ ...job, house: { ...learned, inWorlds: { ...inWorlds, worlds } } }));
    };
    const refused = async (over: object) => (await inProcess("plan", spoilt(over))).stderr;
    expect(await refused({ world: 900 })).toMatch(/house\.inWorlds\.worlds\[0\]\.world.*0 to \d+ of this ensemble/);
    expect(await refused({ lane: [3, 1, 1] })).toMatch(/worlds\[0\]\.lane\[0\].*house\.dry: 0\.85 to 1\.15/);
    expect(await refused({ delivery: [17, 300] })).toMatch(/worlds\[0\]\.delivery/);
    const other = fileWith(
      JSON.stringify({ ...job, house: { ...learned, inWorlds: { ...learned.inWorlds, ensemble: "worlds-of-yore" } } }),
    );
    const plan = JSON.parse((await inProcess("plan", other, "--json", "--workers", "1")).stdout);
    expect(plan.messages).toContainEqual(expect.objectContaining({ id: "message.houseOtherWorlds" }));
    expect((await inProcess("plan", house([[3]]))).stderr).toMatch(/house\.draws\[0\]\[0\].*0\.8 ≤ x ≤ 1\.2, the range of house\.dry/);
  });
});
