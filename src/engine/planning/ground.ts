import { type Assumed, assume } from "../assumptions.ts";
import type { Bowler, DeliveryKnown } from "../delivery/bowler.ts";
import type { FilmMap } from "../lane/filmMap.ts";
import type { AveragedBall } from "../motion/averaged.ts";
import { averagedBall, frictionOnLane, gripOnLane } from "../motion/ground.ts";
import type { Thrower } from "../motion/track.ts";
import { type StrikeMap, strikeMap, TYPICAL_QUALITY, trusted } from "../pins/carry.ts";
import type { HitQuality } from "../pins/carryGrid.ts";
import { effectiveRaOfReadingUm, effectiveRaUm, type Finish, sameFinish } from "../surface/finish.ts";
import { coverIn, type World } from "../worlds/ensemble.ts";
import { MEASURED_DELIVERY } from "../worlds/parameters.ts";
import { behavingAs } from "./planAssumptions.ts";
import { type HouseLearned, houseMeans, type PlanQuestion } from "./question.ts";
import { bowlerLearned, isTaughtInWorlds } from "./worldsAsked.ts";

/** What stays the same for every finish of a plan, in one world. */
export interface Ground {
  readonly question: PlanQuestion;
  readonly assumed: Assumed;
  /** Strike chance over board and entry angle, as far as it can be trusted. */
  readonly carry: StrikeMap;
}

/** The ground of the middle world: what is drawn and told in words. */
export function groundOf(question: PlanQuestion): Ground {
  return standingOn({ ...question, bowler: bowlerLearned(question) }, assume({ ...question.assumptions, ...houseMeans(question.house) }));
}

/**
 * The same question in one world: its constants, its house and night, a delivery that is off by what is not known of it, and a cover where nobody knows it. What was set otherwise or learned of the house goes before what the world says.
 */
export function groundIn(world: World, question: PlanQuestion): Ground {
  const { bowler } = question;
  const { delivery } = world.night;
  const by = (id: keyof DeliveryKnown) => bowler[id] + delivery[id] * (bowler.known?.[id] ?? MEASURED_DELIVERY[id]);
  const off: Bowler = {
    ...bowler,
    speedMph: Math.max(SLOWEST_MPH, by("speedMph")),
    revRateRpm: Math.max(0, by("revRateRpm")),
    axisRotationDeg: by("axisRotationDeg"),
    axisTiltDeg: by("axisTiltDeg"),
    ...world.night.thrown,
  };
  return standingOn({ ...question, bowler: off }, assumedIn(world, question));
}

/** What is assumed in a world: its own constants and night, what was set otherwise, what the house has taught, and the cover it says where nobody knows it. */
export function assumedIn(world: World, { ball, house, assumptions }: Pick<PlanQuestion, "ball" | "house" | "assumptions">): Assumed {
  const learned = house === null ? {} : isTaughtInWorlds(house) ? world.night.lane : learnedBy(house, world.id);
  const all = assume({ ...world.values, ...world.night.lane, ...assumptions, ...learned });
  return behavingAs(all, ball.cover, coverIn(world, ball));
}

/** Nobody's delivery is drawn slower than this, mph. */
const SLOWEST_MPH = 3;

function standingOn(question: PlanQuestion, assumed: Assumed): Ground {
  return { question, assumed, carry: trusted(strikeMap(assumed, usualQuality(question))) };
}

/** One row of what a house has taught, with what it ties together left tied. */
function learnedBy({ ids, draws }: HouseLearned, world: number): Partial<Assumed> {
  const row = draws[world % draws.length];
  return Object.fromEntries(ids.map((id, i) => [id, row[i]]));
}

/** A ball loses so much from release to pins, mph (published: display speed is 2 to 2.5 below release). */
const USUAL_LOSS_MPH = 2.5;

/** The quality of hit that the strike map of a question is made for; what a line differs from it by is added line by line. */
export function usualQuality({ bowler, ball }: PlanQuestion): HitQuality {
  return { speedMph: bowler.speedMph - USUAL_LOSS_MPH, slipMps: TYPICAL_QUALITY.slipMps, massLb: ball.massLb };
}

/** Effective roughness of the ball with a finish: a reading speaks for the finish that is on it today, and for no other. */
export function roughnessOf(question: PlanQuestion, finish: Finish, assumed: Assumed): number {
  const { ball } = question;
  if (ball.raMicroinch !== null && sameFinish(finish, ball.finish)) return effectiveRaOfReadingUm(ball.raMicroinch, assumed);
  return effectiveRaUm(finish, assumed);
}

export function throwerOn(film: FilmMap, question: PlanQuestion, finish: Finish, assumed: Assumed): Thrower {
  const friction = frictionOnLane(film, question.ball, roughnessOf(question, finish, assumed), assumed);
  return { bowler: question.bowler, ball: averagedBall(question.ball, assumed["roll.resistance"]), friction };
}

/** One bowler with one ball on one film, for very many shots that are only scored. */
export interface Volley {
  readonly bowler: Bowler;
  readonly ball: AveragedBall;
  /** Lays the friction of ball and film into a kernel. */
  readonly layGrip: (into: Float32Array) => void;
}

export function volleyOn(film: FilmMap, question: PlanQuestion, finish: Finish, assumed: Assumed): Volley {
  const { bowler, ball } = question;
  return {
    bowler,
    ball: averagedBall(ball, assumed["roll.resistance"]),
    layGrip: (into) => gripOnLane(film, ball, roughnessOf(question, finish, assumed), assumed, into),
  };
}
