import { describe, expect, it } from "vitest";
import { ASSUMPTION_IDS, ASSUMPTIONS } from "#engine/assumptions";
import { COVER_IDS } from "#engine/ball/ball";
import { COVERS } from "#engine/ball/covers";
import { planAssumptions } from "#engine/planning/planAssumptions";
import { cautionsFor } from "#engine/rules/cautions";
import { RULE_IDS, RULES_OF_THUMB, type RuleOfThumb } from "#engine/rules/rulesOfThumb";
import { finishText, parseFinish } from "#engine/surface/finish";

describe("every rule of thumb", () => {
  it.each(RULE_IDS)("%s speaks on its example and is silent on the other", (id) => {
    const rule: RuleOfThumb = RULES_OF_THUMB[id];
    expect(rule.applies(rule.example.speaks)).toBe(true);
    expect(rule.applies(rule.example.silent)).toBe(false);
    expect(rule.mark).toBe("common practice");
  });

  it.each(RULE_IDS.filter((id) => RULES_OF_THUMB[id].range !== null))(
    "%s agrees with a pick at either end of its range and with none beyond",
    (id) => {
      const rule: RuleOfThumb = RULES_OF_THUMB[id];
      const verdict = (text: string) =>
        rule.agrees({ pick: parseFinish(text), plateau: [parseFinish(text)], onOneLine: [], exitBoard: null }, rule.example.speaks);
      const [from, to] = rule.range ?? ["", ""];
      expect(verdict(from)).toBe(true);
      expect(verdict(to)).toBe(true);
      const beyond = ["360", "4000 + polish"].filter((text) => text !== from && text !== to);
      expect(beyond.some((text) => verdict(text) === false)).toBe(true);
      expect(rule.agrees({ pick: null, plateau: [], onOneLine: [], exitBoard: null }, rule.example.speaks)).toBeNull();
    },
  );
});

describe("every assumption", () => {
  it.each(ASSUMPTION_IDS)("%s lies within its range, which is a range, and names its source", (id) => {
    const { value, low, high, mark, source, unit } = ASSUMPTIONS[id];
    expect(low).toBeLessThan(high);
    expect(value).toBeGreaterThanOrEqual(low);
    expect(value).toBeLessThanOrEqual(high);
    expect(["calibrated", "chosen", "published", "memory", "common practice"]).toContain(mark);
    expect(source.length).toBeGreaterThan(10);
    expect(unit.length).toBeGreaterThan(0);
  });

  it.each(COVER_IDS)("a plan for %s rests on its own cover's constants and on no other's", (cover) => {
    const ids = planAssumptions(cover);
    expect(ids).toContain(`friction.dry.${cover}`);
    for (const other of COVER_IDS.filter((one) => one !== cover)) expect(ids.filter((id) => id.endsWith(`.${other}`))).toEqual([]);
  });
});

describe("every cover", () => {
  it.each(COVER_IDS)("%s: its usual finishes run from dull to smooth, none below what is never put on", (cover) => {
    const { usual, neverBelow } = COVERS[cover];
    expect(usual.length).toBeGreaterThan(2);
    for (const finish of usual) expect(parseFinish(finishText(finish))).toEqual(finish);
    if (neverBelow !== null) expect(Math.min(...usual.map(({ number }) => number))).toBeGreaterThanOrEqual(neverBelow);
  });
});

describe("cautions", () => {
  const work = { cover: "solid", number: 2000, polished: false, extracts: false, readingMicroinch: null } as const;

  it("polish, heat, wet paper and a rough reading are named only where they are", () => {
    const plain = cautionsFor(work);
    for (const id of ["polish", "heat", "wetPaper", "roughReading", "veryDull"] as const) expect(plain).not.toContain(id);
    expect(cautionsFor({ ...work, polished: true })).toContain("polish");
    expect(cautionsFor({ ...work, extracts: true })).toContain("heat");
    expect(cautionsFor({ ...work, cover: "urethane", number: 800 })).toContain("wetPaper");
    expect(cautionsFor({ ...work, readingMicroinch: 51 })).toContain("roughReading");
    expect(cautionsFor({ ...work, number: 360 })).toContain("veryDull");
    expect(plain).toEqual(expect.arrayContaining(["lookFirst", "spinner", "water", "dust", "floor", "cleaner"]));
  });
});
