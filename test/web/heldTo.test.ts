import { describe, expect, it } from "vitest";
import { type Signed, workOfTicket } from "#contract/records/ticketWork";
import { SIDE_IDS } from "#engine/surface/padWork/sides";
import { heldTo } from "../../src/web/rooms/measure/heldTo.ts";

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
  takesBack: null,
  doneAt: at(i),
  createdAt: at(i),
  initials: "WU",
});
const ticket = { finishAfter: "1000 + polish" };
const heldAfter = (count: number, more: readonly Signed[] = []) =>
  heldTo("after", ticket, workOfTicket({ stages, been: [] }, [...PLAN.keys()].slice(0, count).map(signed).concat(more)));

describe("what measured sides are held against", () => {
  it("is the last cut that was signed while work on the surface is left, then what was asked for", () => {
    expect([0, 1, 2, 3, 4].map((count) => heldAfter(count))).toEqual([null, "500", "1000", "1000 + polish", "1000 + polish"]);
  });

  it("a side that was opened again leaves it at what the ball was given", () => {
    const again: Signed = {
      ...signed(1),
      id: "again",
      signs: false,
      sidesDone: [],
      sidesAgain: ["opposite"],
      doneAt: at(9),
      createdAt: at(9),
    };
    expect(heldAfter(2, [again])).toBe("1000");
  });

  it("is nothing before the work, nor of a ball that is in for no work", () => {
    const work = workOfTicket({ stages, been: [] }, [signed(0)]);
    expect(heldTo("before", ticket, work)).toBeNull();
    expect(heldTo("between", null, null)).toBeNull();
  });
});
