import { type Assumed, type AssumptionId, assume } from "../../assumptions.ts";
import type { Ball } from "../../ball/ball.ts";
import type { Line } from "../../delivery/bowler.ts";
import type { FilmMap } from "../../lane/filmMap.ts";
import { strikeMap } from "../../pins/carry.ts";
import { deriveSeed, evenPoints } from "../../random.ts";
import { closerTo, drawnFrom, ofAnyCover } from "../draws.ts";
import { type PlanGround, throwerOn, usualQuality } from "../ground.ts";
import { bestLine, meanChance } from "../lineSearch.ts";
import { bestNearby, neighbourhood } from "../localChance.ts";
import { groundOfPlayer } from "../oilInPlay/player.ts";
import { FINE, outcomeMap } from "../outcomeMap.ts";
import { assumptionsOfBall } from "../planAssumptions.ts";
import { type MeanShot, meanShot } from "../rating.ts";
import { mean } from "../score.ts";
import type { BagQuestion } from "./question.ts";
import type { BallState } from "./states.ts";

/** A ball in a state on one film, on its own best line there. */
export interface StageWorth {
  readonly line: Line | null;
  readonly shot: MeanShot | null;
  /** 0 where there is no line. */
  readonly chance: number;
}

/** A state under the draws of the assumptions: chance at each rated stage, draw by draw, and close about the registry's values. */
export interface StateDraws {
  readonly centre: readonly number[];
  readonly drawn: readonly (readonly number[])[];
}

/** How many draws of the assumptions a bag plan rests on, and how many close ones make the centre that they are compared with. */
const BAG_DRAWS = 40;
const CENTRE_DRAWS = 8;

/** The best line of a ball in a state on each of some films: some fifteen milliseconds a film. */
export function worthOn(question: BagQuestion, state: BallState, films: readonly FilmMap[]): readonly StageWorth[] {
  const ground = groundFor(question, state.as);
  const { carry, assumed, searchSample, scoreSample } = ground;
  const { limits, bowler } = question;
  return films.map((film): StageWorth => {
    const thrower = throwerOn(film, ground.question, state.as.finish, assumed);
    const map = outcomeMap(thrower, usualQuality(ground.question), limits, FINE);
    const best = bestLine([map], bowler, carry, limits, searchSample);
    if (best === null) return { line: null, shot: null, chance: 0 };
    return { line: best.line, shot: meanShot(thrower, best.line), chance: meanChance([map], bowler, carry, best.line, scoreSample) };
  });
}

/** The same lines under draws of the assumptions, the bowler re-aiming: about a millisecond a film and draw. */
export function drawsOn(question: BagQuestion, state: BallState, films: readonly FilmMap[], lines: readonly (Line | null)[]): StateDraws {
  const ground = groundFor(question, state.as);
  const draws = ofAnyCover(state.as, question.seed, bagDraws(question, ground.assumed));
  const close = draws.slice(0, CENTRE_DRAWS).map((drawn) => closerTo(ground.assumed, drawn));
  const byStage = (assumed: Assumed) => chances(ground, films, lines, assumed);
  const centred = close.map(byStage);
  return {
    centre: films.map((_, stage) => mean(centred.map((chance) => chance[stage]))),
    drawn: draws.map(byStage),
  };
}

function chances(ground: PlanGround, films: readonly FilmMap[], lines: readonly (Line | null)[], assumed: Assumed): readonly number[] {
  const { question, searchSample, drawSample } = ground;
  const usual = usualQuality(question);
  const carry = strikeMap(assumed, usual);
  return films.map((film, stage) => {
    const line = lines[stage];
    if (line === null) return 0;
    const thrower = throwerOn(film, question, question.ball.finish, assumed);
    const near = neighbourhood(thrower, usual, line, question.limits);
    return bestNearby([{ thrower, near }], carry, question.limits, searchSample, drawSample);
  });
}

/** The same draws for every ball and state: what differs between them is then not the draw. */
function bagDraws(question: BagQuestion, centre: Assumed): readonly Assumed[] {
  const ids = bagAssumptions(question);
  return drawnFrom(centre, ids, evenPoints(BAG_DRAWS, ids.length, deriveSeed(question.seed, 4)), BAG_DRAWS);
}

/** Everything that the chances of any ball of the bag rest on. */
export function bagAssumptions({ balls }: BagQuestion): readonly AssumptionId[] {
  return [...new Set(balls.flatMap(({ ball }) => assumptionsOfBall(ball)))];
}

function groundFor(question: BagQuestion, ball: Ball): PlanGround {
  const { bowler, limits, pattern, seed, assumptions } = question;
  return groundOfPlayer({ bowler, ball, limits, line: null, shotsAGame: 1 }, { pattern, seed, assumptions });
}

export function ballChangeCost({ assumptions }: BagQuestion): number {
  return assume(assumptions)["play.ballChange"];
}
