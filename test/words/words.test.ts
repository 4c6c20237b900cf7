import { describe, expect, it } from "vitest";
import { PROBLEM_IDS } from "#contract/problem";
import type { Candidate, FinishPlan } from "#engine/planning/plan";
import { customerLines } from "#words/customerLines";
import { ASSUMPTION_TEXTS } from "#words/en/assumptions";
import { CAUTION_SENTENCES } from "#words/en/cautions";
import { PROBLEM_SENTENCES } from "#words/en/problems";
import { chance, fixed, signed } from "#words/figures";
import { messageText } from "#words/messageText";
import { problemText } from "#words/problemText";

describe("figures", () => {
  it("have a true minus, and no minus at all for nothing", () => {
    expect(fixed(-1.25, 1)).toBe("−1.3");
    expect(fixed(-0.04, 1)).toBe("0.0");
    expect(signed(-0.04, 1)).toBe("0.0");
    expect(signed(0.06, 1)).toBe("+0.1");
    expect(signed(-2, 1)).toBe("−2.0");
  });

  it("give a chance in whole per cent with its interval", () => {
    expect(chance(0.543, 0.46, 0.614)).toBe("54 % (46–61)");
  });
});

describe("sentences", () => {
  it("are there for every problem of an input", () => {
    expect(Object.keys(PROBLEM_SENTENCES).toSorted()).toEqual([...PROBLEM_IDS].toSorted());
  });

  it("carry the figures of the message", () => {
    const message = {
      id: "reason.entryRises",
      params: { dullFinish: "500", dullEntryDeg: 3.31, smoothFinish: "4000 + polish", smoothEntryDeg: 4.4 },
    };
    expect(messageText(message)).toBe("Smoother comes in steeper: 3.3° with 500, 4.4° with 4000 + polish.");
  });

  it("refuse to be printed without a figure they need", () => {
    expect(() => messageText({ id: "reason.dullLoses", params: { finish: "500" } })).toThrow(TypeError);
    expect(() => messageText({ id: "reason.dullLoses", params: { finish: "500", points: Number.NaN } })).toThrow(TypeError);
    expect(() => messageText({ id: "reason.unheardOf", params: {} })).toThrow(/unheardOf/);
  });

  it("name place, value and what is allowed of a problem", () => {
    const problem = { path: "bowler.speedMph", value: 0, allowed: "0 < x ≤ 40 mph", reason: { id: "notAllowed", params: {} } };
    expect(problemText(problem)).toBe("bowler.speedMph: 0 is not allowed here. Allowed: 0 < x ≤ 40 mph.");
  });

  it("quote no more of a wrong value than fits a line", () => {
    const problem = { path: "ball.name", value: "x".repeat(5000), allowed: "less", reason: { id: "notAllowed", params: {} } };
    expect(problemText(problem).length).toBeLessThan(140);
  });

  it("never say that something is legal: the rule books decide, and not all is measured", () => {
    const all = [...Object.values(CAUTION_SENTENCES).map(String), ...Object.values(ASSUMPTION_TEXTS)];
    for (const text of all) expect(text).not.toMatch(/\blegal/i);
  });
});

describe("what the customer hears", () => {
  const candidate = (finish: string, entryAngleDeg: number, boardChange: number): Candidate => ({
    finish,
    effectiveRaUm: 0.4,
    line: { laydownBoard: 20, launchAngleDeg: 1 },
    boardAtPins: 17.5,
    entryAngleDeg,
    hookStartFt: 36,
    rollStartFt: 50,
    slipAtPinsMps: 0,
    speedAtPinsMph: 14,
    chance: { value: 0.5, low: 0.4, high: 0.6 },
    expectedPins: null,
    missLoss: { board: 0.01, halfDegree: 0.1, mph: 0.08 },
    pins: null,
    keepsGames: null,
    onTodaysLine: { boardAtPins: 17.5 + boardChange, boardChange, entryAngleDeg, hookStartChangeFt: null, chance: null, move: null },
  });
  const plan: FinishPlan = {
    metric: "strikeChance",
    ensemble: "worlds-0",
    worlds: 64,
    today: { finish: "1000", line: { laydownBoard: 18, launchAngleDeg: 1.9 } },
    candidates: [candidate("1000", 3.6, 0), candidate("3000", 4, -1.9)],
    pick: { finish: "3000", plateau: ["3000"], cliff: "duller", sure: "sure", sureShare: 0.95 },
    messages: [],
    reasons: [{ id: "reason.hookLater", params: { today: "1000", finish: "3000", feet: 3.1 } }],
    rules: [],
    assumptions: [],
    cautions: [],
  };

  it("is feet and words", () => {
    expect(customerLines(plan)).toEqual([
      "The ball is finished at 1000 today; we would put it at 3000.",
      "It will turn about a yard later and a little sharper.",
      "On the line you play now it would hit about two boards lighter, so move before the first game.",
    ]);
  });

  it("is to leave the surface alone where today's finish is the pick", () => {
    const lines = customerLines({ ...plan, today: { ...plan.today, finish: "3000" } });
    expect(lines).toEqual(["The surface is right for this lane as it is; we would only clean it and even it out."]);
  });

  it("is another ball where no finish has a line", () => {
    const messages = [{ id: "message.noLine.hooksTooMuch", params: { chancePercent: 1, laydownBoard: 36, launchAngleDeg: 4.5 } }];
    expect(customerLines({ ...plan, pick: null, messages })[0]).toMatch(/weaker ball/);
  });

  it("has no percentage and no angle in it: those would be taken for promises", () => {
    for (const line of customerLines(plan)) expect(line).not.toMatch(/[%°]/);
  });
});
