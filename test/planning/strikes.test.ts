import { describe, expect, it } from "vitest";
import { assume } from "#engine/assumptions";
import { EngineFault } from "#engine/fault";
import { carryOf, strikeMap, TYPICAL_QUALITY } from "#engine/pins/carry";
import { explain, hitsAbout, TYPICAL_SCATTER } from "#engine/pins/explain";
import { leaveOf, STRIKE } from "#engine/pins/leave";

describe("leaves explained", () => {
  const map = strikeMap(assume());

  /** Leaves in the shares in which the table itself makes them about a mean hit, as a hundred balls. */
  const madeBy = (board: number, entryDeg: number) => {
    const { strike, leaves } = carryOf(hitsAbout({ board, entryDeg, quality: TYPICAL_QUALITY }, TYPICAL_SCATTER), 30);
    return [{ leave: STRIKE, share: strike }, ...leaves]
      .map(({ leave, share }) => ({ leave, count: Math.round(100 * share) }))
      .filter(({ count }) => count > 0);
  };

  it.each([
    [15.5, 4, "light"],
    [18.5, 4, "high"],
  ] as const)("a hundred balls about board %f at %f° are found again, and said to be %s", (board, entryDeg, side) => {
    const found = explain(madeBy(board, entryDeg), map);
    expect(found.board.low).toBeLessThanOrEqual(board);
    expect(found.board.high).toBeGreaterThanOrEqual(board);
    expect(found.lies).toBe(side);
    expect(found.changes[0].change).toBe(side === "light" ? "boardHigher" : "boardLighter");
    expect(found.changes[0].gain).toBeGreaterThan(0.02);
  });

  it("more balls say it more exactly", () => {
    const few = explain([{ leave: leaveOf([10]), count: 1 }], map);
    const many = explain(madeBy(15.5, 4), map);
    expect(many.board.high - many.board.low).toBeLessThan(few.board.high - few.board.low);
  });

  it("refuses nothing seen, a part of a ball, and a scatter of nothing, each by name", () => {
    expect(() => explain([], map)).toThrow(EngineFault);
    expect(() => explain([{ leave: leaveOf([7]), count: 0.5 }], map)).toThrow(/leaves\.7/);
    expect(() => explain([{ leave: STRIKE, count: 1 }], map, { boards: 0, entryDeg: 0.5 })).toThrow(/scatter\.boards/);
  });
});
