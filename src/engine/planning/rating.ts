import type { Line } from "../delivery/bowler.ts";
import type { FilmMap } from "../lane/filmMap.ts";
import { type AveragedRun, emptyRun } from "../motion/averaged.ts";
import type { Thrower } from "../motion/track.ts";
import { type CarryResult, carryOf } from "../pins/carry.ts";
import type { Finish } from "../surface/finish.ts";
import { FOOT, MPH } from "../units.ts";
import { centreScore } from "./draws.ts";
import { filmFound, type PlanGround, playedOn, roughnessOf, throwerOn, usualQuality } from "./ground.ts";
import { hitsOn } from "./hits.ts";
import { bestLine, meanChance, type RatedLine } from "./lineSearch.ts";
import { missRoom } from "./missRoom.ts";
import { boardAtPins, COARSE, entryDegOf, FINE, type MapGrain, type OutcomeMap, outcomeMap, throwBall } from "./outcomeMap.ts";
import type { MissRoom } from "./plan.ts";
import { mean, OBJECTIVES, type Objective, STRAIGHT } from "./score.ts";

/** The mean shot on a line, told in the trade's units. */
export interface MeanShot {
  readonly boardAtPins: number;
  readonly entryAngleDeg: number;
  readonly hookStartFt: number | null;
  readonly rollStartFt: number | null;
  readonly slipAtPinsMps: number;
  readonly speedAtPinsMph: number;
}

/** One moment of the session: the lane then, and the line played on it. */
export interface Stage {
  readonly film: FilmMap;
  readonly line: Line | null;
  /** Chance on the lane of the moment and ten shots on, on the score sample. */
  readonly chance: number;
}

/** One finish through the session, under the registry's values of the assumptions. */
export interface FinishRating {
  readonly finish: Finish;
  readonly effectiveRaUm: number;
  /** The lane as found, before the first shot. */
  readonly found: FilmMap;
  readonly stages: readonly Stage[];
  /** Mean over the stages: each with its own line. */
  readonly chance: number;
  /** Best single line held through the whole session: what a control ball is for. */
  readonly heldChance: number;
  readonly heldLine: Line | null;
  readonly line: Line | null;
  readonly shot: MeanShot | null;
  readonly missRoom: MissRoom | null;
  /** What the pins do on the line, on the lane as found; null in the first answer, for a spare or house ball, and where there is no line. */
  readonly carry: CarryResult | null;
  /** The score the plan compares, computed as the draws compute it: differences to it carry over to the map's value. */
  readonly localScore: number;
}

/** Shots between the stages, and how far ahead a line is held. */
const STAGES = 3;
const SHOTS_A_STAGE = 20;
const HELD_FOR = 10;

/** The first answer: the lane as found only, on a coarse map unless a finer one is asked for. */
export function sketchRating(ground: PlanGround, finish: Finish, film = filmFound(ground), grain: MapGrain = COARSE): FinishRating {
  const { question, assumed, carry, searchSample, scoreSample } = ground;
  const map = outcomeMap(throwerOn(film, question, finish, assumed), usualQuality(question), question.limits, grain);
  const rated = rescored([map], ground, bestLine([map], question.bowler, carry, question.limits, searchSample), scoreSample);
  const stages = [{ film, line: rated?.line ?? null, chance: rated?.chance ?? 0 }];
  return finished(ground, finish, film, stages, rated, null);
}

/** The whole session: fresh, after 20 and after 40 shots of this finish's own wear, each line held for the lane of the moment and ten shots on. */
export function sessionRating(ground: PlanGround, finish: Finish): FinishRating {
  const { question, assumed, carry: strikes, searchSample, scoreSample, drawSample } = ground;
  const found = filmFound(ground);
  const stages: Stage[] = [];
  const maps: OutcomeMap[] = [];
  let film = found;
  for (let stage = 0; stage < STAGES; stage++) {
    const now = outcomeMap(throwerOn(film, question, finish, assumed), usualQuality(question), question.limits, FINE);
    const guess = bestLine([now], question.bowler, strikes, question.limits, searchSample);
    const later = playedOn(ground, film, finish, guess?.line ?? null, HELD_FOR);
    const ahead = outcomeMap(throwerOn(later, question, finish, assumed), usualQuality(question), question.limits, FINE);
    const rated = rescored(
      [now, ahead],
      ground,
      bestLine([now, ahead], question.bowler, strikes, question.limits, searchSample) ?? guess,
      scoreSample,
    );
    stages.push({ film, line: rated?.line ?? null, chance: rated?.chance ?? 0 });
    maps.push(now, ahead);
    film = playedOn(ground, later, finish, rated?.line ?? null, SHOTS_A_STAGE - HELD_FOR);
  }
  const held = rescored(maps, ground, bestLine(maps, question.bowler, strikes, question.limits, searchSample), scoreSample);
  const line = lineFor(OBJECTIVES[question.ball.job], stages, held);
  const carry =
    line && line !== STRAIGHT ? carryOf(hitsOn(throwerOn(found, question, finish, assumed), question.ball.massLb, line, drawSample)) : null;
  return finished(ground, finish, found, stages, held, carry);
}

function rescored(
  maps: readonly OutcomeMap[],
  { question, carry }: PlanGround,
  found: RatedLine | null,
  sample: Float64Array,
): RatedLine | null {
  return found && { line: found.line, chance: meanChance(maps, question.bowler, carry, found.line, sample) };
}

function finished(
  ground: PlanGround,
  finish: Finish,
  found: FilmMap,
  stages: readonly Stage[],
  held: RatedLine | null,
  carried: CarryResult | null,
): FinishRating {
  const { question, assumed, carry } = ground;
  const thrower = throwerOn(found, question, finish, assumed);
  const line = lineFor(OBJECTIVES[question.ball.job], stages, held);
  const rating = {
    finish,
    effectiveRaUm: roughnessOf(question, finish, assumed),
    found,
    stages,
    chance: mean(stages.map((stage) => stage.chance)),
    heldChance: held?.chance ?? 0,
    heldLine: held?.line ?? null,
    line,
    shot: line && meanShot(thrower, line),
    carry: carried,
    missRoom: line && line !== STRAIGHT ? missRoom(thrower, carry, line) : null,
  };
  return { ...rating, localScore: centreScore(ground, rating) };
}

/** The line the plan names: the first stage's; for a control ball the one held throughout; for a spare ball straight down the middle, where hook is measured. */
function lineFor(objective: Objective, stages: readonly Stage[], held: RatedLine | null): Line | null {
  if (objective === "leastHook") return STRAIGHT;
  return objective === "heldChance" ? (held?.line ?? null) : stages[0].line;
}

export function meanShot(thrower: Thrower, line: Line): MeanShot {
  const run = emptyRun();
  throwBall(thrower, line.laydownBoard, line.launchAngleDeg, run);
  return told(run);
}

function told(run: AveragedRun): MeanShot {
  return {
    boardAtPins: boardAtPins(run),
    entryAngleDeg: entryDegOf(run),
    hookStartFt: run.hookY < 0 ? null : run.hookY / FOOT,
    rollStartFt: run.rollY < 0 ? null : run.rollY / FOOT,
    slipAtPinsMps: Math.hypot(run.ux, run.uy),
    speedAtPinsMph: Math.hypot(run.vx, run.vy) / MPH,
  };
}
