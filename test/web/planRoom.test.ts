import { describe, expect, test } from "vitest";
import { COVER_IDS } from "#engine/ball/ball";
import { PATTERN_IDS } from "#engine/lane/patterns";
import type { Candidate, FinishPlan } from "#engine/planning/plan";
import { COVER_WORDS, CUSTOMER, DIFFERENCE, PATTERN_WORDS } from "#words/en/screens";
import { isJobDraft, readNumber, valueAt, withValue } from "../../src/web/jobFile/jobDraft.ts";
import { tableCsv } from "../../src/web/rooms/plan/tableColumns.ts";

describe("a typed number", () => {
  test.each([
    ["17.5", 17.5],
    [" 17,5 ", 17.5],
    ["−1.5", -1.5],
    ["17.", 17],
    [".5", 0.5],
    ["", undefined],
    ["fast", "fast"],
    ["1e3", "1e3"],
    ["0x10", "0x10"],
    ["Infinity", "Infinity"],
  ])("%j is read as %j", (typed, read) => {
    expect(readNumber(typed)).toBe(read);
  });
});

describe("a job being written", () => {
  const job = { gritwright: 1, bowler: { speedMph: 17.5 }, lane: { pattern: "medium-41" } };

  test("a value is put where it belongs, the rest untouched and in its order", () => {
    const changed = withValue(job, "bowler.speedMph", 19);
    expect(JSON.stringify(changed)).toBe('{"gritwright":1,"bowler":{"speedMph":19},"lane":{"pattern":"medium-41"}}');
    expect(job.bowler.speedMph).toBe(17.5);
    expect(valueAt(withValue(job, "limits.laydownBoard[1]", 30), "limits.laydownBoard[1]")).toBe(30);
    expect(withValue(job, "line.laydownBoard", 19)).toEqual({ ...job, line: { laydownBoard: 19 } });
  });

  test("a field taken out leaves no empty mapping behind, because an empty mapping may not be allowed there", () => {
    expect(withValue(withValue(job, "line.laydownBoard", 19), "line.laydownBoard", undefined)).toEqual(job);
    expect(withValue(job, "bowler.speedMph", undefined)).toEqual({ gritwright: 1, lane: { pattern: "medium-41" } });
    expect(withValue(job, "line.laydownBoard", undefined)).toEqual(job);
  });

  test("only a mapping can stand in the form", () => {
    expect([{}, [], null, "x", 3].map(isJobDraft)).toEqual([true, false, false, false, false]);
  });
});

const candidate: Candidate = {
  finish: "2000 + polish",
  effectiveRaUm: 0.3,
  line: { laydownBoard: 18, launchAngleDeg: 1.4 },
  boardAtPins: 17.4,
  entryAngleDeg: 4.1,
  hookStartFt: 37,
  rollStartFt: null,
  slipAtPinsMps: 0.4,
  speedAtPinsMph: 15,
  chance: { value: 0.5, low: 0.4, high: 0.6 },
  expectedPins: null,
  missLoss: null,
  pins: null,
  keepsGames: null,
  onTodaysLine: null,
};

describe("the table as a file", () => {
  test("has one row a finish, bare figures, nothing where there is nothing", () => {
    const plan = { metric: "strikeChance", candidates: [candidate] } as unknown as FinishPlan;
    const [head, row] = tableCsv(plan)
      .split("\r\n")
      .map((line) => line.split(","));
    const field = (name: string) => row[head.indexOf(name)];
    expect(row).toHaveLength(head.length);
    expect([field("finish"), field("chanceLow"), field("launchAngleDeg"), field("rollStartFt"), field("missLossBoard")]).toEqual([
      "2000 + polish",
      "0.4",
      "1.4",
      "",
      "",
    ]);
  });
});

describe("words of the form", () => {
  test("every named pattern and every cover of the engine can be chosen", () => {
    expect(Object.keys(PATTERN_WORDS).toSorted()).toEqual([...PATTERN_IDS].toSorted());
    expect(Object.keys(COVER_WORDS).toSorted()).toEqual([...COVER_IDS].toSorted());
  });
});

describe("what the customer is told", () => {
  test("a right-hander who lays the ball down further in stands further left, a left-hander further right", () => {
    expect(CUSTOMER.move(2, "right")).toBe("Stand about two boards further left.");
    expect(CUSTOMER.move(2, "left")).toBe("Stand about two boards further right.");
    expect(CUSTOMER.move(-1, "right")).toBe("Stand about one board further right.");
  });

  test("feet in words, later and earlier the right way round, small changes as no change", () => {
    expect(CUSTOMER.hook(2.9)).toBe("It starts to hook about three feet later.");
    expect(CUSTOMER.hook(-1.1)).toBe("It starts to hook about a foot earlier.");
    expect(CUSTOMER.hook(0.3)).toBe("It starts to hook where it does now.");
    expect(CUSTOMER.turn(-0.6)).toBe("It comes into the pins smoother.");
  });

  test("never a percentage, a chance or a decimal", () => {
    for (const x of [-7.3, -0.6, 0, 0.4, 12.7]) {
      const told = [CUSTOMER.hook(x), CUSTOMER.turn(x), CUSTOMER.move(x, "right"), CUSTOMER.firstShot(x)].join(" ");
      expect(told).not.toMatch(/%|chance|\d\.\d/);
    }
  });
});

test("differences from today's line say which way", () => {
  expect(DIFFERENCE.hook(-1.25, 36)).toBe("hook starts 1.3 ft earlier (36.0 ft)");
  expect(DIFFERENCE.entry(0.5, 4.2)).toBe("entry 0.5° steeper (4.2°)");
  expect(DIFFERENCE.laydown(-3, 16)).toBe("laid down 3.0 boards further out (board 16.0)");
});
