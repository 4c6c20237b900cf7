import { type Assumed, type AssumptionId, assume } from "../../assumptions.ts";
import type { Ball } from "../../ball/ball.ts";
import type { Line } from "../../delivery/bowler.ts";
import type { FilmMap } from "../../lane/filmMap.ts";
import { strikeMap, trusted } from "../../pins/carry.ts";
import { ensemble } from "../../worlds/ensemble.ts";
import { assumedIn, type Ground, throwerOn, usualQuality } from "../ground.ts";
import { bestNearby, neighbourhood } from "../localChance.ts";
import { groundOfPlayer } from "../oilInPlay/player.ts";
import { assumptionsOfBall } from "../planAssumptions.ts";
import { type MeanShot, meanShot } from "../rating.ts";
import { chosen, mapOf, mean } from "../session.ts";
import type { BagQuestion } from "./question.ts";
import type { BallState } from "./states.ts";

/** A ball in a state on one film, on its own best line there. */
export interface StageWorth {
  readonly line: Line | null;
  readonly shot: MeanShot | null;
  /** 0 where there is no line. */
  readonly chance: number;
}

/** A state in the worlds: chance at each rated stage, world by world, and in worlds close about the middle one. */
export interface StateDraws {
  readonly centre: readonly number[];
  readonly drawn: readonly (readonly number[])[];
}

/** How many worlds a bag plan rests on, and how many close ones make the centre that they are compared with. */
const BAG_WORLDS = 40;
const CENTRE_WORLDS = 8;
/** How close: so much of the way out from the middle world. */
const CLOSE_SHARE = 0.25;

/** The near-best lines of a ball in a state on each of some films: some ten milliseconds a film. */
export function worthOn(question: BagQuestion, state: BallState, films: readonly FilmMap[]): readonly StageWorth[] {
  const ground = groundFor(question, state.as);
  return films.map((film): StageWorth => {
    const map = mapOf(ground, state.as.finish, film, "strikeChance");
    const { best, score } = chosen(map, question.limits, "strikeChance");
    if (best === null) return { line: null, shot: null, chance: 0 };
    const thrower = throwerOn(film, ground.question, state.as.finish, ground.assumed);
    return { line: best.line, shot: meanShot(thrower, best.line), chance: score };
  });
}

/** The same lines in the worlds, the bowler re-aiming: about a millisecond a film and world. */
export function drawsOn(question: BagQuestion, state: BallState, films: readonly FilmMap[], lines: readonly (Line | null)[]): StateDraws {
  const ground = groundFor(question, state.as);
  const worlds = ensemble()
    .worlds.slice(0, BAG_WORLDS)
    .map((world) => assumedIn(world, { ball: state.as, house: null, assumptions: question.assumptions }));
  const close = worlds.slice(0, CENTRE_WORLDS).map((world) => closerTo(ground.assumed, world));
  const byStage = (assumed: Assumed) => chances(ground, films, lines, assumed);
  const centred = close.map(byStage);
  return {
    centre: films.map((_, stage) => mean(centred.map((chance) => chance[stage]))),
    drawn: worlds.map(byStage),
  };
}

/** A world brought close to the middle one. */
function closerTo(centre: Assumed, world: Assumed): Assumed {
  const values: Record<AssumptionId, number> = { ...centre };
  for (const id of Object.keys(values) as AssumptionId[]) values[id] += CLOSE_SHARE * (world[id] - centre[id]);
  return values;
}

function chances(ground: Ground, films: readonly FilmMap[], lines: readonly (Line | null)[], assumed: Assumed): readonly number[] {
  const { question } = ground;
  const usual = usualQuality(question);
  const carry = trusted(strikeMap(assumed, usual));
  return films.map((film, stage) => {
    const line = lines[stage];
    if (line === null) return 0;
    const thrower = throwerOn(film, question, question.ball.finish, assumed);
    const near = neighbourhood(thrower, usual, line, question.limits);
    return bestNearby([{ thrower, near }], carry, question.limits);
  });
}

/** Everything that the chances of any ball of the bag rest on. */
export function bagAssumptions({ balls }: BagQuestion): readonly AssumptionId[] {
  return [...new Set(balls.flatMap(({ ball }) => assumptionsOfBall(ball)))];
}

function groundFor(question: BagQuestion, ball: Ball): Ground {
  const { bowler, limits, pattern, seed, assumptions } = question;
  return groundOfPlayer({ bowler, ball, limits, line: null, shotsAGame: 1 }, { pattern, seed, assumptions });
}

export function ballChangeCost({ assumptions }: BagQuestion): number {
  return assume(assumptions)["play.ballChange"];
}
