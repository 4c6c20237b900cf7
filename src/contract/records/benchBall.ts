import { TYPICAL_BALL } from "#engine/ball/typical";
import { grainOf, isCut } from "#engine/signed/abrasives";
import type { Work } from "#engine/signed/work";
import type { BenchBall } from "#engine/surface/benchBall";
import { type Finish, parseFinish } from "#engine/surface/finish";
import { GAMES_WORDS, type GamesWord } from "#engine/surface/gamesWords";
import { CUT_BACK_TO } from "#engine/surface/pads";
import type { Ball } from "./ball.ts";
import type { Ticket } from "./ticket.ts";

/** A ball sold today is about this large (USBC allows 8.500 to 8.595 in, published). */
const USUAL_DIAMETER_IN = 8.55;

/** What the bench looks at of a ball. */
export type OnTheBench = Pick<Ball, "cover" | "core" | "surface" | "boxFinish" | "games" | "found">;
type Bowled = Pick<Ball, "surface" | "games">;

/** The last work that may have changed the finish; its finish is null where others worked on it and nobody knows to what. The shop's own cleaning changes none. */
export function lastWork({ surface }: Pick<Ball, "surface">): Ball["surface"][number] | null {
  const counts = surface.filter(({ who, finish }) => finish !== null || (who !== "shop" && who !== "maker"));
  return counts.toSorted((a, b) => b.at.localeCompare(a.at))[0] ?? null;
}

/** The finish that the ball is known to have, or was sold with; null where nobody knows. */
export function knownFinish(ball: Pick<Ball, "surface" | "boxFinish">): string | null {
  const last = lastWork(ball);
  return last === null ? ball.boxFinish : last.finish;
}

/** The finish that the ball is known to have; else the commonest, to hold what is read against something. */
export function finishOrUsual(ball: Ball): Finish {
  const known = knownFinish(ball);
  return known === null ? TYPICAL_BALL.finish : parseFinish(known);
}

/** Games bowled since the last work on the surface that is known; all of them where none is. A word counts as what it stands for, where more were not counted. */
export function gamesSinceWork(ball: Bowled): number {
  const word = gamesWord(ball);
  return Math.max(countedSinceWork(ball), word === null ? 0 : GAMES_WORDS[word]);
}

/** Games that somebody counted since the last work. */
export function countedSinceWork(ball: Bowled): number {
  return sinceWork(ball).reduce((sum, { games }) => sum + games, 0);
}

/** How many games since the last work, in a word; null where nobody said one. */
export function gamesWord(ball: Bowled): GamesWord | null {
  return sinceWork(ball).findLast(({ word }) => word !== null)?.word ?? null;
}

function sinceWork(ball: Bowled): Ball["games"] {
  const since = lastWork(ball)?.at ?? "";
  return ball.games.filter(({ at }) => at > since);
}

/** The ball as the bench's arithmetic takes it; what nobody knows stays not known, and a diameter is the usual. */
export function benchBallOf(ball: OnTheBench): BenchBall {
  const finish = knownFinish(ball);
  const found = (what: Ball["found"][number]["what"]) => ball.found.some((one) => one.what === what);
  return {
    cover: ball.cover,
    hardnessD: null,
    diameterIn: ball.core?.diameterIn ?? USUAL_DIAMETER_IN,
    finish: finish === null ? null : parseFinish(finish),
    history: [],
    gamesSince: gamesSinceWork(ball),
    raMicroinch: null,
    compared: null,
    trackWear: found("track wear") ? "deep" : "none",
    plug: found("plug") ? "flush" : "none",
    oil: "clean",
  };
}

/** The ball as it lies on the bench for a ticket: scratches of which nobody has said that they are shallow are worked as deep ones. */
export function benchBallFor(ticket: Pick<Ticket, "symptoms" | "scratches">, ball: OnTheBench): BenchBall {
  const isDeep = ticket.scratches === "deep" || (ticket.symptoms.includes(SCRATCHED) && ticket.scratches !== "none");
  return { ...benchBallOf(ball), ...(isDeep ? { scratches: "deep" as const } : {}) };
}

/** The ball in the middle of its work: with what was really cut on it, and no more worn or scratched where that was cut back. */
export function benchBallNow(
  ticket: Parameters<typeof benchBallFor>[0],
  ball: Ball,
  { finish, surface }: Pick<Work, "finish" | "surface">,
): BenchBall {
  const before = benchBallFor(ticket, ball);
  if (finish === null) return before;
  const isCutBack = surface.some(({ kind, abrasive }) => isCut(kind) && grainOf(abrasive) >= grainOf(`pad-${CUT_BACK_TO}`));
  return {
    ...before,
    finish,
    gamesSince: isCutBack ? 0 : before.gamesSince,
    ...(isCutBack ? { scratches: "none", trackWear: "none" } : {}),
  };
}

/** As the counter keeps that complaint. */
const SCRATCHED = "scratched";
