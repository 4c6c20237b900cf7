import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { entryFindings, MOMENTS, SURFACE_ACTS, surfaceRules } from "#engine/rules/events";
import { limitsOf } from "#engine/rules/limits";
import { type MeasuredBall, NOTHING_MEASURED } from "#engine/rules/measuredBall";
import { BOOK_IDS, RULE_BOOKS } from "#engine/rules/ruleBooks";
import { EXAMPLES, fileWith, inProcess } from "../cli/commandLine.ts";

const answer = (topic: string, ball: Partial<MeasuredBall>, on = "2026-05-31") =>
  limitsOf({ ...NOTHING_MEASURED, ...ball }, "usbc", on).find((one) => one.topic === topic);

describe("limits", () => {
  it("states value, margin and source; on the limit is within, a hair beyond is not (USBC, published: 16 lb)", () => {
    expect(answer("mass", { massLb: 15.25 })).toMatchObject({ verdict: "within", value: 15.25, margin: 0.75 });
    expect(answer("mass", { massLb: 16 })?.verdict).toBe("within");
    expect(answer("mass", { massLb: 16.01 })?.verdict).toBe("outside");
  });

  it("old dates give old answers (USBC, published: 0.080 in to 31 January 2005, 0.060 after)", () => {
    expect(answer("differential", { differentialIn: 0.07 }, "2005-01-31")?.verdict).toBe("within");
    expect(answer("differential", { differentialIn: 0.07, approvedOn: "2005-01-31" })?.verdict).toBe("within");
    expect(answer("differential", { differentialIn: 0.07, approvedOn: "2005-02-01" })?.verdict).toBe("outside");
    expect(answer("balanceHoles", { balanceHoles: 1 }, "2020-07-31")).toMatchObject({ verdict: "notChecked", reason: "noRecord" });
    expect(answer("balanceHoles", { balanceHoles: 1 }, "2020-08-01")?.verdict).toBe("outside");
  });

  it("asks for the day of approval only where it decides", () => {
    expect(answer("differential", { differentialIn: 0.07 })).toMatchObject({ verdict: "notChecked", needs: ["approvedOn"] });
    expect(answer("differential", { differentialIn: 0.05 })?.verdict).toBe("within");
    expect(answer("differential", { differentialIn: 0.09 })?.verdict).toBe("outside");
    expect(answer("hardnessMade", { hardnessD: 72.5, temperatureC: 23 })).toMatchObject({ verdict: "notChecked", needs: ["madeOn"] });
  });

  it("does not judge hardness that was read warm, cold, or at no stated temperature", () => {
    for (const temperatureC of [18, 27, null])
      expect(answer("hardness", { hardnessD: 60, temperatureC })).toMatchObject({ verdict: "notChecked", reason: "temperature" });
    expect(answer("hardness", { hardnessD: 60, temperatureC: 23 })?.verdict).toBe("outside");
  });

  it("warns of roughness and never fails a ball for it; weak numbers warn too, and an event may set its own", () => {
    expect(answer("meanRoughness", { massLb: 15, raMicroinch: [70] })?.verdict).toBe("warning");
    const light = { ...NOTHING_MEASURED, massLb: 9, topBottomOz: 2.5 };
    expect(answer("topBottomOz", light)?.verdict).toBe("warning");
    const own = limitsOf(light, "usbc", "2026-05-31", [{ quantity: "topBottomOz", least: -3, most: 3, why: "the event" }]);
    expect(own.filter(({ quantity }) => quantity === "topBottomOz").map(({ verdict, mark }) => [verdict, mark])).toEqual([
      ["within", "event"],
    ]);
  });

  it("says that it knows no balance rule for a ball without a hole before August 2018, nor for one with a hole after July 2020", () => {
    const without = { sideOz: 0.2, massLb: 15, balanceHoles: 0 };
    expect(answer("sideOz", without, "2018-07-31")).toMatchObject({ verdict: "notChecked", reason: "noRecord" });
    expect(answer("sideOz", without, "2018-08-01")?.verdict).toBe("within");
    expect(answer("sideOz", { ...without, balanceHoles: 1 }, "2020-07-31")?.verdict).toBe("within");
    expect(answer("sideOz", { ...without, balanceHoles: 1 }, "2020-08-01")).toMatchObject({ verdict: "notChecked", reason: "noRecord" });
  });

  it("does not say which balance rule holds without the mass and the holes", () => {
    expect(answer("sideOz", { sideOz: 2 })).toMatchObject({ verdict: "notChecked", reason: "needs" });
    expect(answer("sideOz", { sideOz: 2, massLb: 15, balanceHoles: 0 })?.verdict).toBe("within");
    expect(answer("sideOz", { sideOz: 2, massLb: 15, balanceHoles: 1 }, "2019-01-01")?.verdict).toBe("outside");
  });

  it.each(BOOK_IDS)("every record of %s is dated in order, has an end and a source, and keeps to its topic", (book) => {
    for (const record of RULE_BOOKS[book]) {
      expect(record.least !== null || record.most !== null).toBe(true);
      expect((record.from ?? "") <= (record.until ?? "9999")).toBe(true);
      expect(record.source.length).toBeGreaterThan(10);
    }
    for (const { topic, quantity, dated } of RULE_BOOKS[book]) {
      const first = RULE_BOOKS[book].find((record) => record.topic === topic);
      expect([quantity, dated]).toEqual([first?.quantity, first?.dated]);
    }
  });
});

describe("surfaces in competition (USBC playing rule 18)", () => {
  const said = (on: string, act: string, moment: string) =>
    surfaceRules("usbc", on, null).find((rule) => rule.act === act && rule.moment === moment)?.answer;

  it.each([
    ["2019-07-31", "liquid", "listed"],
    ["2019-08-01", "liquid", "consent"],
    ["2020-07-31", "isopropyl", "consent"],
    ["2020-12-01", "isopropyl", "yes"],
    ["2021-08-01", "isopropyl", "consent"],
    ["2015-01-01", "abrasive", "no"],
    ["2026-01-01", "abrasive", "no"],
    ["2026-01-01", "dryTowel", "yes"],
  ])("on %s, %s once scoring has begun: %s", (on, act, expected) => {
    expect(said(on, act, "scoring")).toBe(expected);
    expect(said(on, act, "betweenGames")).toBe(expected);
  });

  it("allows an abrasive in practice, asks where no rule was read, and takes the event's word first", () => {
    expect(said("2026-01-01", "abrasive", "practice")).toBe("yes");
    expect(said("2026-01-01", "abrasive", "betweenSquads")).toBe("ask");
    for (const rule of surfaceRules("world-bowling", "2026-01-01", null)) expect(rule.answer).toBe("ask");
    const event = { name: "E", limits: [], approved: null, withdrawn: [], ballsMost: null } as const;
    const own = surfaceRules("usbc", "2026-01-01", { ...event, surface: [{ act: "abrasive", moment: "practice", answer: "no" }] });
    expect(own).toHaveLength(MOMENTS.length * SURFACE_ACTS.length);
    expect(own.find(({ act, moment }) => act === "abrasive" && moment === "practice")).toMatchObject({ answer: "no", mark: "event" });
  });
});

describe("an event's lists", () => {
  const event = { name: "E", limits: [], approved: ["Tideline"], withdrawn: ["Old Ferry"], ballsMost: 2, surface: [] };

  it.each([
    [" tideline ", 2, ["onList", "ballsWithin"]],
    ["Old Ferry", 3, ["withdrawn", "notOnList", "tooManyBalls"]],
    [null, null, ["noName", "ballsNotCounted"]],
  ] as const)("%j with %j balls", (name, balls, expected) => {
    expect(entryFindings(event, name, balls)).toEqual(expected);
  });
});

describe("gritwright limits", () => {
  const example = join(EXAMPLES, "limits.yaml");

  it("says what was not checked, sends the reader to the rule book, and never says the word that only officials may", async () => {
    const { code, stdout } = await inProcess("limits", example);
    expect(code).toBe(0);
    expect(stdout).toContain("Within the limits measured; not checked: circumference (not measured)");
    expect(stdout).toContain("check the current rule book");
    expect(`${stdout}${(await inProcess("limits", example, "--json")).stdout}`).not.toMatch(/legal/i);
  });

  it("takes the day and the book from the command line, and refuses a day that is none", async () => {
    const { stdout } = await inProcess("limits", example, "--json", "--on", "2004-06-01", "--book", "world-bowling");
    expect(JSON.parse(stdout)).toMatchObject({ kind: "limits", on: "2004-06-01", book: "world-bowling" });
    expect((await inProcess("limits", example, "--on", "2026-02-30")).code).toBe(2);
    expect((await inProcess("limits", example, "--book", "mine")).code).toBe(2);
  });

  it("ends with 3 where something lies outside, with 2 and the field where the file cannot be used", async () => {
    const outside = await inProcess("limits", fileWith("gritwright: 1\nball: { massLb: 16.2 }\n"), "--on", "2026-01-01");
    expect(outside.code).toBe(3);
    expect(outside.stdout).toContain("Outside: mass; not checked:");
    const bad = await inProcess("limits", fileWith("gritwright: 1\nball: { massLB: 15, sideOz: 99 }\n"));
    expect(bad.code).toBe(2);
    expect(bad.stderr).toMatch(/massLb/);
    expect(bad.stderr).toMatch(/ball\.sideOz/);
  });
});
