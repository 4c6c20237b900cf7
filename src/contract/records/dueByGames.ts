import { assume } from "#engine/assumptions";
import { freshRoughness } from "#engine/surface/benchBall";
import { usualRefreshGames } from "#engine/surface/care";
import type { Ball } from "./ball.ts";
import { benchBallOf, knownFinish } from "./benchBall.ts";

export interface DueBall {
  readonly ball: Ball;
  readonly games: number;
  /** After how many games such a finish is usually put on again. */
  readonly dueAt: number;
}

/** A bowler with balls that have seen more games than their finish usually keeps. */
export interface DueBowler {
  readonly bowlerId: string;
  readonly balls: readonly DueBall[];
}

/**
 * Whose balls are due, the most overdue first. Balls that are in the shop already are left out, and those of which nobody knows the finish.
 *
 * @param inShop ids of balls with an open ticket
 */
export function dueByGames(balls: readonly Ball[], inShop: ReadonlySet<string>): readonly DueBowler[] {
  const a = assume();
  const due = new Map<string, DueBall[]>();
  for (const ball of balls) {
    if (ball.state !== "in use" || ball.bowlerId === null || inShop.has(ball.id) || knownFinish(ball) === null) continue;
    const bench = benchBallOf(ball);
    const dueAt = usualRefreshGames(ball.cover, freshRoughness(bench, a), a);
    if (dueAt === null || bench.gamesSince < dueAt) continue;
    due.set(ball.bowlerId, [...(due.get(ball.bowlerId) ?? []), { ball, games: bench.gamesSince, dueAt }]);
  }
  const over = (mine: readonly DueBall[]) => Math.max(...mine.map(({ games, dueAt }) => games / dueAt));
  return [...due].map(([bowlerId, mine]) => ({ bowlerId, balls: mine })).toSorted((one, other) => over(other.balls) - over(one.balls));
}
