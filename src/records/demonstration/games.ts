import type { CustomerBall } from "./customers.ts";
import type { Making } from "./making.ts";
import { gamesOn } from "./surface.ts";

/** The bowler says how many games the ball has seen since the last time anybody asked. */
export async function countGames({ things, clock, by }: Making, ball: CustomerBall): Promise<void> {
  const games = Math.round(gamesOn(ball, ball.countedMs, clock.now()));
  if (games === 0) return;
  const kept = await things.balls.get(ball.id);
  const entry = { at: clock.text(), games };
  await things.balls.change(ball.id, { games: [...kept.games, entry] }, { by, expectedVersion: kept.version });
  ball.countedMs = clock.now();
}
