import { describe, expect, it } from "vitest";
import { ballKept } from "#contract/records/ball";
import { labelSizeOf } from "#contract/records/paper";
import { workOfTicket } from "#contract/records/ticketWork";
import { parseFinish } from "#engine/surface/finish";
import { CARE_CARD } from "#words/en/rooms/careCard";
import { comeBack, gamesPerWeek } from "../../src/web/rooms/print/comeBack.ts";

const NOW = Date.UTC(2026, 2, 1, 12);
const DAY_MS = 86_400_000;
const weeksAgo = (weeks: number): string => new Date(NOW - 7 * weeks * DAY_MS).toISOString();

const ball = (games: readonly (readonly [weeks: number, games: number])[], cover = "solid") =>
  ballKept.parse({
    id: "01890000-0000-7000-8000-000000000001",
    shopId: "01890000-0000-7000-8000-000000000000",
    version: 1,
    createdAt: weeksAgo(100),
    changedAt: weeksAgo(100),
    name: "Tideline",
    cover,
    games: games.map(([weeks, count]) => ({ at: weeksAgo(weeks), games: count })),
  });
const NO_WORK = workOfTicket({ stages: [], been: [] }, []);

describe("how often a ball is thrown", () => {
  it("is what was written down over the weeks between: an entry's games were bowled since the one before", () => {
    expect(
      gamesPerWeek(
        ball([
          [10, 40],
          [6, 12],
          [2, 12],
        ]),
      ),
    ).toBeCloseTo(3, 6);
  });

  it("is not known from one entry, nor from a fortnight", () => {
    expect(gamesPerWeek(ball([[3, 9]]))).toBeNull();
    expect(
      gamesPerWeek(
        ball([
          [2, 9],
          [0, 9],
        ]),
      ),
    ).toBeNull();
  });
});

describe("when a ball should come back", () => {
  const weekly = ball([
    [6, 0],
    [0, 18],
  ]);

  it("a dull reactive finish within about thirty games (published, second-hand), and on a day of that many games", () => {
    const due = comeBack(weekly, [], NO_WORK, parseFinish("1000"), NOW);
    expect(due).toMatchObject({ why: "refresh" });
    expect(due?.games).toBeGreaterThanOrEqual(5);
    expect(due?.games).toBeLessThanOrEqual(30);
    const days = (Date.parse(due?.at ?? "") - NOW) / DAY_MS;
    expect(days).toBeCloseTo((7 * (due?.games ?? 0)) / 3, 3);
  });

  it("a finish that the lanes hardly change comes back for its oil, at 40 to 50 games in all (common practice)", () => {
    const due = comeBack(weekly, [], NO_WORK, parseFinish("3000"), NOW);
    expect(due).toMatchObject({ why: "extraction" });
    expect((due?.games ?? 0) + 18).toBeGreaterThanOrEqual(40);
    expect((due?.games ?? 0) + 18).toBeLessThanOrEqual(50);
  });

  it("without knowing how often it is thrown there are games and no day", () => {
    expect(comeBack(ball([]), [], NO_WORK, parseFinish("1000"), NOW)?.at).toBeNull();
  });

  it("of a polyester ball, which takes no oil, nothing is due by oil", () => {
    expect(comeBack(ball([], "polyester"), [], NO_WORK, parseFinish("4000"), NOW)?.why).not.toBe("extraction");
  });
});

describe("what the card says", () => {
  it("in feet and words, the move by the bowler's hand", () => {
    expect(CARE_CARD.hooks(2.2)).toBe("Hooks about 2 feet later.");
    expect(CARE_CARD.hooks(-1.1)).toBe("Hooks about a foot earlier.");
    expect(CARE_CARD.move(-4.1, "right", 0.3)).toBe("Move 4 boards right: into the pocket a little sharper.");
    expect(CARE_CARD.move(-4.1, "left", 0.3)).toBe("Move 4 boards left: into the pocket a little sharper.");
    expect(CARE_CARD.move(0.4, "right", 0.9)).toBe("Stand where you stood.");
  });

  it("never a percentage, and never that it is legal", () => {
    const texts = JSON.stringify(CARE_CARD, (_, value) => (typeof value === "function" ? String(value) : value));
    expect(texts).not.toMatch(/%|percent|\blegal/i);
  });
});

describe("a label's size", () => {
  it.each([
    ["62 × 90 mm", 62, 90],
    ["62x29mm", 62, 29],
    ["2.25 x 1.25 in", 57.15, 31.75],
    ["4 × 6 in", 101.6, 152.4],
  ])("%s", (written, widthMm, heightMm) => {
    const size = labelSizeOf(written);
    expect(size?.widthMm).toBeCloseTo(widthMm, 6);
    expect(size?.heightMm).toBeCloseTo(heightMm, 6);
  });

  it.each(["62", "62 × 90", "5 × 90 mm", "62 × 90 cm", "400 × 90 mm", "a × b mm"])("%s is none", (written) => {
    expect(labelSizeOf(written)).toBeNull();
  });
});
