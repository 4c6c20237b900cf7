import { describe, expect, it } from "vitest";
import { ballKept } from "#contract/records/ball";
import { readingKept } from "#contract/records/reading";
import { ticketKept } from "#contract/records/ticket";
import { ballChange, ballTyped } from "../../src/web/rooms/ball/ballForm.ts";
import { ballUse, measuredBall } from "../../src/web/rooms/ball/ballUse.ts";

const KEPT = {
  version: 1,
  shopId: "01890000-0000-7000-8000-000000000000",
  createdAt: "2026-01-01T00:00:00.000Z",
  changedAt: "2026-01-01T00:00:00.000Z",
};
const id = (n: number) => `01890000-0000-7000-8000-00000000000${n}`;
const day = (n: number) => `2026-03-${String(n).padStart(2, "0")}T12:00:00.000Z`;

const ball = ballKept.parse({
  ...KEPT,
  id: id(1),
  name: "Invented ball",
  cover: "solid",
  core: { massLb: 15, rgIn: 2.5, differentialIn: 0.05 },
  surface: [
    { at: day(1), who: "maker", finish: "2000" },
    { at: day(10), who: "shop", finish: "2000", ticketId: id(2) },
  ],
  games: [
    { at: day(2), games: 10 },
    { at: day(12), games: 6 },
    { at: day(20), games: 4 },
  ],
});
const ticket = (n: number, readyAt: string | null, stages: object[]) =>
  ticketKept.parse({
    ...KEPT,
    id: id(n),
    visitId: id(9),
    ballId: ball.id,
    receivedAt: day(9),
    state: readyAt === null ? "in work" : "ready",
    been: [],
    readyAt,
    collectedAt: null,
    stages,
  });
const reading = (at: string, fields: object) =>
  readingKept.parse({ ...KEPT, id: id(5), ballId: ball.id, at, when: "between", place: "track", how: "tester", ...fields });

describe("a ball's use as its records tell it", () => {
  const extraction = ticket(2, day(10), [{ what: "Draw the oil out", kind: "extract" }]);
  const unfinished = ticket(3, null, [{ what: "Sand", kind: "cut", abrasive: "pad-360" }]);

  it("counts oil from the last extraction that was finished, and what nobody wrote down from the first game", () => {
    const { use, extractedAt, resurfacedAt } = ballUse(ball, [extraction, unfinished], []);
    expect([extractedAt, resurfacedAt]).toEqual([day(10), null]);
    expect([use.gamesSince, use.gamesSinceExtraction, use.gamesSinceResurfacing]).toEqual([10, 10, 20]);
  });

  it("takes sanding with 500 and below as resurfacing, and finer work not", () => {
    const cut = (n: number, abrasive: string) => ticket(n, day(n + 10), [{ what: "Sand", kind: "cut", abrasive }]);
    expect(ballUse(ball, [cut(3, "pad-500"), cut(4, "pad-1000")], []).resurfacedAt).toBe(day(13));
  });

  it("puts readings of the track at the games they were taken after, and leaves those of the finish before out", () => {
    const readings = [
      reading(day(9), { raUm: 0.3 }),
      reading(day(10).replace("12:", "11:"), { raUm: 0.7, when: "after", ticketId: id(2) }),
      reading(day(15), { raUm: 0.5 }),
      reading(day(15), { raUm: 0.6, place: "grip" }),
    ];
    expect(ballUse(ball, [], readings).use.readings.map(({ games }) => games)).toEqual([0, 6]);
    // A microinch is 0.0254 µm.
    expect(measuredBall(ball, readings).raMicroinch.map((value) => Number(value.toFixed(2)))).toEqual([27.56, 19.69, 23.62]);
  });

  it("takes the newest mass measured, else the one written down; diameters of one day only", () => {
    const readings = [
      reading(day(11), { how: "scale", massLb: 15.2 }),
      reading(day(12), { how: "scale", massLb: 15.1 }),
      reading(day(11), { how: "calliper", diameterIn: 8.56 }),
      reading(day(12), { how: "calliper", diameterIn: 8.55 }),
      reading(day(12), { how: "calliper", diameterIn: 8.552 }),
    ];
    expect(measuredBall(ball, []).massLb).toBe(15);
    expect(measuredBall(ball, readings)).toMatchObject({ massLb: 15.1, diametersIn: [8.55, 8.552], rgIn: 2.5, hardnessD: null });
  });
});

it("a change of a ball writes what was touched and nothing else; a group goes as a whole", () => {
  const typed = { ...ballTyped(ball), "core.massLb": "14,5", notes: "Invented." };
  expect(ballChange(typed, new Set(["core.massLb", "notes"]))).toEqual({
    core: { massLb: 14.5, diameterIn: null, rgIn: 2.5, differentialIn: 0.05, intermediateDifferentialIn: null },
    notes: "Invented.",
  });
});
