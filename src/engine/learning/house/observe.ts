import type { Assumed } from "../../assumptions.ts";
import type { Bowler, Line } from "../../delivery/bowler.ts";
import { release } from "../../delivery/release.ts";
import { PINS_PLANE, xToBoard } from "../../lane/geometry.ts";
import { type AveragedRun, emptyRun, runAveraged, SCORED_STEP, TRACE_WIDTH, type Trace } from "../../motion/averaged.ts";
import { averagedBall, frictionOnLane } from "../../motion/ground.ts";
import type { Thrower } from "../../motion/track.ts";
import { effectiveRaOfReadingUm, effectiveRaUm } from "../../surface/finish.ts";
import { DEGREE, FOOT, MPH } from "../../units.ts";
import type { SituationSeen } from "./notes.ts";

/** What can be seen of a shot, in this order, then a board for each distance asked for. */
export const LATENT = {
  hookFt: 0,
  breakpointBoard: 1,
  breakpointFt: 2,
  boardAtPins: 3,
  entryDeg: 4,
  launchMph: 5,
  pinsMph: 6,
  boards: 7,
} as const;

/** A ball that never turns, or never arrives, is said to turn at the pins and to lie where it was last. */
const PINS_FT = 60;

/** How one shot differs from what was meant, in standard deviations of the bowler's spread: launch, laydown, speed, revs, rotation. */
export type Off = readonly [number, number, number, number, number];
export const NOT_OFF: Off = [0, 0, 0, 0, 0];

/** Scatter of a line that nobody noted, standard deviations: wide enough to be found anywhere near it. */
export const UNKNOWN_LINE = { launchAngleDeg: 1.2, laydownBoards: 2.5 };

/** Effective roughness of a situation's ball in a world, µm: as it was read, or by its finish. */
export function roughnessSeen({ ball }: SituationSeen, assumed: Assumed): number {
  return ball.raMicroinch === null ? effectiveRaUm(ball.finish, assumed) : effectiveRaOfReadingUm(ball.raMicroinch, assumed);
}

export function throwerFor(situation: SituationSeen, bowler: Bowler, assumed: Assumed): Thrower {
  const { ball, film } = situation;
  const ra = roughnessSeen(situation, assumed);
  return { bowler, ball: averagedBall(ball, assumed["roll.resistance"]), friction: frictionOnLane(film, ball, ra, assumed) };
}

/** Distances of the situation's shots at which boards were seen, each once. */
export function distancesOf({ shots }: SituationSeen): readonly number[] {
  return [...new Set(shots.flatMap(({ boards }) => boards.map(({ atFt }) => atFt)))].sort((a, b) => a - b);
}

/** What would be seen of a shot by the averaged model. */
export function observe(thrower: Thrower, situation: SituationSeen, distances: readonly number[], off: Off = NOT_OFF): Float64Array {
  const { bowler } = thrower;
  const { spread } = bowler;
  const spreadOfLine = situation.isLineKnown ? spread : UNKNOWN_LINE;
  const line: Line = {
    launchAngleDeg: situation.line.launchAngleDeg + off[0] * spreadOfLine.launchAngleDeg,
    laydownBoard: situation.line.laydownBoard + off[1] * spreadOfLine.laydownBoards,
  };
  const delivery = {
    speedMph: Math.max(3, bowler.speedMph + off[2] * spread.speedMph),
    revRateRpm: Math.max(0, bowler.revRateRpm + off[3] * spread.revRateRpm),
    axisRotationDeg: bowler.axisRotationDeg + off[4] * spread.axisRotationDeg,
    axisTiltDeg: bowler.axisTiltDeg,
  };
  const run = emptyRun();
  const trace: Trace | null = distances.length > 0 ? [] : null;
  runAveraged(thrower.ball, thrower.friction, release(delivery, line), 0, run, trace, PINS_PLANE, SCORED_STEP);
  const seen = new Float64Array(LATENT.boards + distances.length);
  tell(run, delivery.speedMph, seen);
  distances.forEach((ft, i) => {
    seen[LATENT.boards + i] = trace === null ? 0 : boardAt(trace, ft * FOOT);
  });
  return seen;
}

function tell(run: AveragedRun, launchMph: number, into: Float64Array): void {
  into[LATENT.hookFt] = run.hookY < 0 ? PINS_FT : run.hookY / FOOT;
  into[LATENT.breakpointBoard] = xToBoard(run.breakX);
  into[LATENT.breakpointFt] = run.breakY / FOOT;
  into[LATENT.boardAtPins] = xToBoard(run.x);
  into[LATENT.entryDeg] = Math.atan2(-run.vx, Math.max(1e-6, run.vy)) / DEGREE;
  into[LATENT.launchMph] = launchMph;
  into[LATENT.pinsMph] = Math.hypot(run.vx, run.vy) / MPH;
}

function boardAt(trace: Trace, y: number): number {
  let at = 0;
  while (at + 2 * TRACE_WIDTH < trace.length && trace[at + TRACE_WIDTH] < y) at += TRACE_WIDTH;
  const next = Math.min(at + TRACE_WIDTH, trace.length - TRACE_WIDTH);
  const span = trace[next] - trace[at];
  const share = span > 0 ? Math.min(1, Math.max(0, (y - trace[at]) / span)) : 0;
  return xToBoard(trace[at + 1] + (trace[next + 1] - trace[at + 1]) * share);
}
