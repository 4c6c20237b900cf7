import { type Assumed, assume } from "../../assumptions.ts";
import type { Ball } from "../../ball/ball.ts";
import type { Bowler, Line } from "../../delivery/bowler.ts";
import { release } from "../../delivery/release.ts";
import { refuse } from "../../fault.ts";
import { filmOfPattern, handed } from "../../lane/film.ts";
import type { PatternSource } from "../../lane/lane.ts";
import { emptyRun, runAveraged } from "../../motion/averaged.ts";
import { averagedBall, frictionOnLane } from "../../motion/ground.ts";
import { effectiveRaUm } from "../../surface/finish.ts";
import { FOOT, MPH } from "../../units.ts";
import { type Measured, measuredFrom } from "./measured.ts";

/** How the ball's speed was seen: timed between two distances from the foul line, or read off the centre's display, which measures near the pins. */
export type SpeedSeen =
  | { readonly kind: "timed"; readonly fromFt: number; readonly toFt: number; readonly seconds: number; readonly withinSeconds: number }
  | { readonly kind: "display"; readonly speedMph: number; readonly atFt: number; readonly withinMph: number };

/** What slows the ball: the ball, the lane it was thrown on (null: not known) and the rest of the delivery. */
export interface SpeedGround {
  readonly bowler: Bowler;
  readonly ball: Ball;
  readonly pattern: PatternSource | null;
}

/** Launch speeds that are thinkable, mph. */
const SLOWEST = 3;
const FASTEST = 40;
/** An ordinary line: by how much a ball slows hardly depends on it. */
const LINE: Line = { laydownBoard: 22, launchAngleDeg: 1.5 };
/** Where the lane is not known it is one of these. */
const UNKNOWN: readonly PatternSource[] = ["medium-41", "light-38", "heavy-44"].map((id) => ({ kind: "named", id }));

/**
 * Launch speed at the foul line, mph. The ball slows on its way; by how much is the model's, so the speed is the launch speed of that ball on that lane whose
 * time between the two distances, or whose speed at the display, is what was seen. Where the lane is not known the ends also hold what the named patterns give.
 *
 * @throws EngineFault where no launch speed from 3 to 40 mph fits
 */
export function launchSpeed(seen: SpeedSeen, ground: SpeedGround, assumed: Assumed = assume()): Measured {
  const reading =
    seen.kind === "timed" ? { value: seen.seconds, within: seen.withinSeconds } : { value: seen.speedMph, within: seen.withinMph };
  const patterns = ground.pattern === null ? UNKNOWN : [ground.pattern];
  const speeds = patterns.map((pattern) => {
    const read = reader(seen, ground, pattern, assumed);
    return measuredFrom([reading], ([value]) => solve(seen, read, value));
  });
  return { value: speeds[0].value, low: Math.min(...speeds.map(({ low }) => low)), high: Math.max(...speeds.map(({ high }) => high)) };
}

/** What the timer or the display would have read at a launch speed; null where the ball does not get there. */
function reader(
  seen: SpeedSeen,
  { bowler, ball }: SpeedGround,
  pattern: PatternSource,
  assumed: Assumed,
): (speedMph: number) => number | null {
  const friction = frictionOnLane(handed(filmOfPattern(pattern), bowler.hand), ball, effectiveRaUm(ball.finish, assumed), assumed);
  const body = averagedBall(ball, assumed["roll.resistance"]);
  const run = emptyRun();
  const to = (speedMph: number, ft: number) => runAveraged(body, friction, release({ ...bowler, speedMph }, LINE), 0, run, null, ft * FOOT);
  return (speedMph) => {
    if (seen.kind === "display") {
      to(speedMph, seen.atFt);
      return run.reached === 1 ? Math.hypot(run.vx, run.vy) / MPH : null;
    }
    to(speedMph, seen.toFt);
    if (run.reached === 0) return null;
    const whole = run.t;
    if (seen.fromFt <= 0) return whole;
    to(speedMph, seen.fromFt);
    return whole - run.t;
  };
}

/** Halves the range until the launch speed is known to a millionth. The time falls with the launch speed, the display rises. */
function solve(seen: SpeedSeen, read: (speedMph: number) => number | null, value: number): number {
  const isTooSlow = (speedMph: number): boolean => {
    const would = read(speedMph);
    return would === null || (seen.kind === "timed" ? would > value : would < value);
  };
  if (isTooSlow(FASTEST) || !isTooSlow(SLOWEST)) {
    const allowed = `what a launch speed of ${SLOWEST} to ${FASTEST} mph gives`;
    refuse(seen.kind === "timed" ? "timed" : "display.speedMph", value, allowed);
  }
  let [low, high] = [SLOWEST, FASTEST];
  while (high - low > 1e-6) {
    const middle = (low + high) / 2;
    if (isTooSlow(middle)) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
