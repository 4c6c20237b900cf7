import { describe, expect, it } from "vitest";
import { type Signed, workOfTicket } from "#contract/records/ticketWork";
import { SIDE_IDS } from "#engine/surface/padWork/sides";
import { targetFinish } from "../../src/web/measured/targetFinish.ts";
import { readingsOfNow } from "../../src/web/rooms/print/agreement.ts";
import { stepsDone } from "../../src/web/rooms/print/stepsDone.ts";

const PLAN = [
  ["cut", "pad-500"],
  ["cut", "pad-1000"],
  ["polish", "cutting-polish"],
  ["check", null],
] as const;
const stages = PLAN.map(([kind, abrasive], i) => ({
  id: `0-${i}`,
  kind,
  abrasive,
  what: null,
  way: null,
  sides: 6,
  sideIds: [...SIDE_IDS],
  secondsPerSide: 20,
  force: "medium" as const,
  cautions: [],
}));
const at = (minute: number) => `2026-03-01T10:${String(minute).padStart(2, "0")}:00.000Z`;
const signed = (i: number): Signed => ({
  id: `s${i}`,
  stageId: `0-${i}`,
  revision: 0,
  kind: PLAN[i][0],
  what: null,
  abrasive: PLAN[i][1],
  way: null,
  signs: true,
  sidesDone: [...SIDE_IDS],
  sidesAgain: [],
  againSeconds: null,
  began: null,
  cautionsRead: [],
  personId: "p",
  takesBack: null,
  doneAt: at(i),
  createdAt: at(i),
  initials: "WU",
});
const again: Signed = {
  ...signed(1),
  id: "again",
  signs: false,
  sidesDone: [],
  sidesAgain: ["opposite"],
  doneAt: at(9),
  createdAt: at(9),
};
const workAfter = (count: number, more: readonly Signed[] = []) =>
  workOfTicket({ stages, been: [] }, [...PLAN.keys()].slice(0, count).map(signed).concat(more));
const ticket = { finishAfter: "1000 + polish" };
const heldAfter = (count: number, more: readonly Signed[] = []) => targetFinish("after", ticket, workAfter(count, more));

describe("what measured sides are held against", () => {
  it("is the last cut that was signed while work on the surface is left, then what was asked for", () => {
    expect([0, 1, 2, 3, 4].map((count) => heldAfter(count))).toEqual([null, "500", "1000", "1000 + polish", "1000 + polish"]);
  });

  it("a side that was opened again leaves it at what the ball was given", () => {
    expect(heldAfter(2, [again])).toBe("1000");
  });

  it("is nothing before the work, nor of a ball that is in for no work", () => {
    expect(targetFinish("before", ticket, workAfter(1))).toBeNull();
    expect(targetFinish("between", null, null)).toBeNull();
  });
});

describe("what papers say was done", () => {
  const said = (...of: Parameters<typeof workAfter>) =>
    stepsDone(workAfter(...of)).map(({ entry, sides, isOpen }) => [entry.abrasive, sides.length, isOpen]);

  it("is every side that was signed for", () => {
    expect(said(2)).toEqual([
      ["pad-500", 6, false],
      ["pad-1000", 6, false],
    ]);
  });

  it("leaves out a side that was opened again, until somebody signs for it", () => {
    expect(said(2, [again])).toEqual([
      ["pad-500", 6, false],
      ["pad-1000", 5, true],
    ]);
    const anew: Signed = { ...signed(1), id: "anew", sidesDone: ["opposite"], doneAt: at(12), createdAt: at(12) };
    expect(said(2, [again, anew])).toEqual([
      ["pad-500", 6, false],
      ["pad-1000", 6, false],
      ["pad-1000", 1, false],
    ]);
  });

  it("lists no reading of a surface that is gone, so that the table and the sentence count the same", () => {
    const reading = (place: string, minute: number) => ({
      id: `${place} ${minute}`,
      ticketId: "t",
      when: "after",
      how: "tester",
      place,
      raUm: 0.3,
      at: at(minute),
    });
    const readings = [...SIDE_IDS.map((side) => reading(side, 8)), { ...reading("grip", 8), id: "hardness", how: "durometer", raUm: null }];
    const read = { ticket: { id: "t" }, ball: {}, readings, work: workAfter(2), again: [{ at: at(9), sides: ["opposite"] }] };
    const now = readingsOfNow(read as unknown as Parameters<typeof readingsOfNow>[0]).map(({ id }) => id);
    expect(now.toSorted()).toEqual(["fingers 8", "grip 8", "hardness", "left 8", "right 8", "thumb 8"]);
  });
});
