import { expect, it } from "vitest";
import { readingKept } from "#contract/records/reading";
import { raOf, readByPlace } from "../../src/web/rooms/print/measures.ts";

const reading = (place: string, when: "before" | "after", fields: object) =>
  readingKept.parse({
    id: "01890000-0000-7000-8000-000000000001",
    shopId: "01890000-0000-7000-8000-000000000000",
    version: 1,
    createdAt: "2026-01-01T00:00:00.000Z",
    changedAt: "2026-01-01T00:00:00.000Z",
    ballId: "01890000-0000-7000-8000-000000000002",
    at: "2026-01-01T00:00:00.000Z",
    when,
    place,
    how: "tester",
    ...fields,
  });

it("the sheet has the sides in their order, other places behind them, and no readings that are none of the surface", () => {
  const read = readByPlace([
    reading("track", "before", { raUm: 0.3 }),
    reading("thumb", "after", { comparison: "duller" }),
    reading("grip", "before", { raUm: 0.4 }),
    reading("grip", "after", { raUm: 0.5 }),
    reading("grip", "after", { raUm: 0.6 }),
    reading("scale pan", "after", { massLb: 15 }),
  ]);
  expect(read.map(({ place, before, after }) => [place, raOf(before), raOf(after)])).toEqual([
    ["grip", [0.4], [0.5, 0.6]],
    ["thumb", [], []],
    ["track", [0.3], []],
  ]);
});
