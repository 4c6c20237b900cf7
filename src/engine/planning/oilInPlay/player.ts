import type { Assumed } from "../../assumptions.ts";
import type { Ball } from "../../ball/ball.ts";
import type { Bowler, Line } from "../../delivery/bowler.ts";
import type { PatternSource } from "../../lane/lane.ts";
import { type Ground, groundOf } from "../ground.ts";
import type { Limits } from "../question.ts";

/** One who bowls on the lane, with the ball that is thrown. */
export interface Player {
  readonly bowler: Bowler;
  readonly ball: Ball;
  readonly limits: Limits;
  /** Held throughout; null: the best line, found anew again and again. */
  readonly line: Line | null;
  /** Shots of a game that fall on this lane, > 0: on a pair each lane gets half of them. */
  readonly shotsAGame: number;
}

/** What never changes about a player's shots. A player's chances do not depend on the pattern named here, only on the film handed in. */
export function groundOfPlayer(
  player: Player,
  {
    pattern,
    seed,
    assumptions,
  }: { readonly pattern: PatternSource; readonly seed: number; readonly assumptions: Readonly<Partial<Assumed>> },
): Ground {
  return groundOf({
    seed,
    bowler: player.bowler,
    ball: player.ball,
    lane: { pattern, playedShots: 0 },
    line: player.line,
    limits: player.limits,
    candidates: [player.ball.finish],
    outsideRangeReason: null,
    trial: [],
    readings: [],
    assumptions,
    house: null,
  });
}
