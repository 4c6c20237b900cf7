import type { Ball } from "#contract/records/ball";
import type { BenchBall } from "#engine/surface/benchBall";
import { type Finish, parseFinish } from "#engine/surface/finish";

/** A ball sold today is about this large (USBC allows 8.500 to 8.595 in, published). */
const USUAL_DIAMETER_IN = 8.55;
/** What a ball of unknown history is taken to have had on it: the commonest box finish (common practice). */
const USUAL_FINISH: Finish = { number: 2000, polished: false };

/** The last work that may have changed the finish; its finish is null where others worked on it and nobody knows to what. The shop's own cleaning changes none. */
export function lastWork({ surface }: Ball): Ball["surface"][number] | null {
  const counts = surface.filter(({ who, finish }) => finish !== null || (who !== "shop" && who !== "maker"));
  return counts.toSorted((a, b) => b.at.localeCompare(a.at))[0] ?? null;
}

/** The finish that the ball is known to have, or was sold with; null where nobody knows. */
export function knownFinish(ball: Ball): string | null {
  const last = lastWork(ball);
  return last === null ? ball.boxFinish : last.finish;
}

/** Games bowled since the last work on the surface that is known; all of them where none is. */
export function gamesSinceWork(ball: Ball): number {
  const since = lastWork(ball)?.at ?? "";
  return ball.games.filter(({ at }) => at > since).reduce((sum, { games }) => sum + games, 0);
}

/** The ball as the bench's arithmetic takes it; what nobody knows is the usual. */
export function benchBallOf(ball: Ball): BenchBall {
  const finish = knownFinish(ball);
  const found = (what: Ball["found"][number]["what"]) => ball.found.some((one) => one.what === what);
  return {
    cover: ball.cover,
    hardnessD: null,
    diameterIn: ball.core?.diameterIn ?? USUAL_DIAMETER_IN,
    finish: finish === null ? USUAL_FINISH : parseFinish(finish),
    history: [],
    gamesSince: gamesSinceWork(ball),
    raMicroinch: null,
    compared: null,
    trackWear: found("track wear") ? "deep" : "none",
    plug: found("plug") ? "flush" : "none",
    oil: "clean",
  };
}
