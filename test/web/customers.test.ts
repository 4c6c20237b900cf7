import { describe, expect, it } from "vitest";
import { ballKept } from "#contract/records/ball";
import { readingKept } from "#contract/records/reading";
import { ballTimeline } from "../../src/web/rooms/ball/ballTimeline.ts";

const KEPT = {
  version: 1,
  shopId: "01890000-0000-7000-8000-000000000000",
  createdAt: "2026-01-01T00:00:00.000Z",
  changedAt: "2026-01-01T00:00:00.000Z",
};
const BALL_ID = "01890000-0000-7000-8000-000000000001";
const ball = ballKept.parse({
  ...KEPT,
  id: BALL_ID,
  name: "Invented ball",
  cover: "solid",
  surface: [{ at: "2026-03-01T10:00:00.000Z", who: "owner", note: "" }],
  games: [
    { at: "2026-03-02T10:00:00.000Z", games: 3 },
    { at: "2026-02-01T10:00:00.000Z", games: 4 },
  ],
  found: [{ at: "2026-02-15T10:00:00.000Z", what: "track wear", note: "" }],
});

const reading = readingKept.parse({
  ...KEPT,
  id: "01890000-0000-7000-8000-000000000002",
  ballId: BALL_ID,
  at: "2026-03-01T12:00:00.000Z",
  when: "after",
  place: "track",
  how: "tester",
  raUm: 0.4,
});

describe("the log of a ball", () => {
  it("holds every entry once, latest first, however it was written down", () => {
    expect(
      ballTimeline(ball, { readings: [reading], tickets: [], photos: [], stages: [] }).map(({ kind, at }) => `${at.slice(0, 10)} ${kind}`),
    ).toEqual(["2026-03-02 games", "2026-03-01 reading", "2026-03-01 surface", "2026-02-15 found", "2026-02-01 games"]);
  });

  it("leaves the record as it was", () => {
    const before = structuredClone(ball);
    ballTimeline(ball, { readings: [], tickets: [], photos: [], stages: [] });
    expect(ball).toEqual(before);
  });
});
