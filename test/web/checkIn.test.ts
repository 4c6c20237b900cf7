import { describe, expect, it, vi } from "vitest";
import type { Ball } from "#contract/records/ball";
import { benchBallFor, countedSinceWork, gamesSinceWork, gamesWord } from "#contract/records/benchBall";
import type { Bowler } from "#contract/records/bowler";
import { ARROW_BOARDS } from "#engine/delivery/arrows";
import { hookWordOf, speedWordOf } from "#engine/delivery/words";
import { hitsOf, ticketOfCode } from "../../src/web/rooms/intake/hit.ts";
import {
  changedBall,
  currentBall,
  emptyVisit,
  missing,
  scratchesOf,
  withKnownBall,
  withNewBall,
  withNewBowler,
  withoutBall,
} from "../../src/web/rooms/intake/visitDraft.ts";

vi.hoisted(() => vi.stubGlobal("location", { origin: "http://shop.example" }));

const ballOf = (id: string, serial: string | null): Ball => ({ id, name: `Ball ${id}`, serial, cover: null }) as Ball;

describe("what is typed at the counter and found nowhere", () => {
  it("is a name; seven figures and more are a telephone number; fewer, or figures among letters, are the number of a ball", () => {
    const typed = (words: string) => {
      const { bowler, balls } = withNewBowler(emptyVisit(), words);
      return [bowler?.name, bowler?.phone, balls[0].serial];
    };
    expect(typed("Ottilie Sandgrouse")).toEqual(["Ottilie Sandgrouse", "", ""]);
    expect(typed(" (555) 010-1234 ")).toEqual(["", "(555) 010-1234", ""]);
    expect(typed("90412")).toEqual(["", "", "90412"]);
    expect(typed("QX-7731")).toEqual(["", "", "QX-7731"]);
    expect(typed("Ada 2nd")).toEqual(["Ada 2nd", "", ""]);
  });
});

describe("what is found at the counter", () => {
  it("is the ball of a whole serial number, whatever else ends in it; else everything, balls first", () => {
    const found = { balls: [ballOf("a", "QX-7731"), ballOf("b", "7731")], bowlers: [{ id: "c" } as Bowler] };
    expect(hitsOf(found, "7731")).toEqual([{ kind: "ball", ball: found.balls[1] }]);
    expect(hitsOf(found, "731").map(({ kind }) => kind)).toEqual(["ball", "ball", "bowler"]);
  });

  it("reads the code of one of the shop's tickets, and nothing else", () => {
    expect(ticketOfCode("http://shop.local:8080/tickets/0193755b-54a0-7029-bbf7-7234692e2120")).toBe(
      "0193755b-54a0-7029-bbf7-7234692e2120",
    );
    expect(ticketOfCode("https://elsewhere.example/0193755b")).toBeNull();
  });
});

describe("the balls of a visit", () => {
  it("come along once, are asked about in turn, and are left out again", () => {
    const two = withNewBall(withKnownBall(emptyVisit(), ballOf("a", null)));
    expect(currentBall(two)?.ballId).toBeNull();
    const back = withKnownBall(two, ballOf("a", null));
    expect(back.balls).toHaveLength(2);
    expect(currentBall(back)?.ballId).toBe("a");
    expect(currentBall(withoutBall(back, back.balls[0].key))).toBe(back.balls[1]);
  });

  it("need a name each, and nothing else", () => {
    const visit = withNewBall(emptyVisit());
    expect(missing(visit, new Set())).toBe("ball");
    expect(missing(changedBall(visit, visit.balls[0].key, { name: "Marl Fox" }), new Set())).toBeNull();
  });
});

describe("what was said in words", () => {
  it("is the nearest word to what was measured", () => {
    expect([14, 17.5, 21].map(speedWordOf)).toEqual(["slow", "medium", "fast"]);
    expect([150, 320, 500].map(hookWordOf)).toEqual(["little", "medium", "much"]);
  });

  it("arrows lie on every fifth board (published), and the words for them leave no board out", () => {
    const boards = Object.values(ARROW_BOARDS);
    expect(boards.slice(0, 4).map(([from, to]) => (from + to) / 2)).toEqual([5, 10, 15, 20]);
    for (const [i, [from]] of boards.entries()) if (i > 0) expect(from).toBe(boards[i - 1][1] + 1);
  });

  it("games in a word count for the bench where more were not counted, and are never shown as counted", () => {
    const at = "2026-05-04T10:00:00.000Z";
    const games = [
      { at, games: 12, word: null },
      { at, games: 0, word: "a season" as const },
    ];
    const ball = { surface: [], boxFinish: null, games } as unknown as Ball;
    expect([countedSinceWork(ball), gamesWord(ball)]).toEqual([12, "a season"]);
    expect(gamesSinceWork(ball)).toBeGreaterThan(12);
    expect(gamesSinceWork({ ...ball, games: [games[0]] })).toBe(12);
  });

  it("scratches are deep for the bench unless somebody looked and said that they are not", () => {
    const ball = { surface: [], boxFinish: "4000", games: [], found: [], core: null, cover: "pearl" } as unknown as Ball;
    const told = (scratches: "deep" | "none" | "") => {
      const visit = withNewBall(emptyVisit());
      const [draft] = changedBall(visit, visit.balls[0].key, { symptoms: ["scratched"], scratches }).balls;
      return benchBallFor(scratchesOf(draft), ball).scratches;
    };
    expect(["deep" as const, "" as const, "none" as const].map(told)).toEqual(["deep", "deep", undefined]);
  });
});
