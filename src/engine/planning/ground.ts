import { type Assumed, assume } from "../assumptions.ts";
import type { Line } from "../delivery/bowler.ts";
import { filmOfPattern, handed } from "../lane/film.ts";
import type { FilmMap } from "../lane/filmMap.ts";
import { wearLaw } from "../lane/wear.ts";
import { averagedBall, frictionOnLane } from "../motion/ground.ts";
import { filmPlayed, type Thrower } from "../motion/track.ts";
import { type StrikeMap, strikeMap, TYPICAL_QUALITY } from "../pins/carry.ts";
import type { HitQuality } from "../pins/carryGrid.ts";
import { deriveSeed } from "../random.ts";
import { effectiveRaOfReadingUm, effectiveRaUm, type Finish, sameFinish } from "../surface/finish.ts";
import { bestLine } from "./lineSearch.ts";
import { COARSE, outcomeMap } from "./outcomeMap.ts";
import { houseMeans, type PlanQuestion } from "./question.ts";
import { spreadSample } from "./spreadSample.ts";

/** What stays the same for every finish of a plan. */
export interface PlanGround {
  readonly question: PlanQuestion;
  readonly assumed: Assumed;
  readonly carry: StrikeMap;
  /** Lines are chosen on one sample and scored on the other, or the best line would flatter itself. */
  readonly searchSample: Float64Array;
  readonly scoreSample: Float64Array;
  /** A smaller sample for scoring under each of the many draws of the assumptions. */
  readonly drawSample: Float64Array;
}

const SEARCH_POINTS = 160;
const SCORE_POINTS = 768;
const DRAW_POINTS = 256;
/** The bowler aims anew after so many of the shots already played. */
const SHOTS_BEFORE_AIMING_ANEW = 20;

export function groundOf(question: PlanQuestion): PlanGround {
  const assumed = assume({ ...question.assumptions, ...houseMeans(question.house) });
  return {
    question,
    assumed,
    carry: strikeMap(assumed, usualQuality(question)),
    searchSample: spreadSample(SEARCH_POINTS, deriveSeed(question.seed, 2)),
    scoreSample: spreadSample(SCORE_POINTS, deriveSeed(question.seed, 3)),
    drawSample: spreadSample(DRAW_POINTS, deriveSeed(question.seed, 5)),
  };
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

/** The film as the bowler finds it: the pattern, worn by the shots already played with today's finish. Right-hander's frame. */
export function filmFound(ground: PlanGround): FilmMap {
  const { question } = ground;
  let film = handed(filmOfPattern(question.lane.pattern), question.bowler.hand);
  for (let left = question.lane.playedShots; left > 0; left -= SHOTS_BEFORE_AIMING_ANEW) {
    film = playedOn(
      ground,
      film,
      question.ball.finish,
      question.line ?? lineNow(ground, film, question.ball.finish),
      Math.min(left, SHOTS_BEFORE_AIMING_ANEW),
    );
  }
  return film;
}

/** The film after so many shots; unchanged if there is no line to play. */
export function playedOn(ground: PlanGround, film: FilmMap, finish: Finish, line: Line | null, shots: number): FilmMap {
  if (line === null) return film;
  const { question, assumed } = ground;
  return filmPlayed(
    film,
    throwerOn(film, question, finish, assumed),
    line,
    shots,
    wearLaw(question.ball.cover, roughnessOf(question, finish, assumed), assumed),
  );
}

/** The best line on a film with a finish, on a coarse map; null where there is none. */
export function lineNow(ground: PlanGround, film: FilmMap, finish: Finish): Line | null {
  const { question, assumed, carry, searchSample } = ground;
  const map = outcomeMap(throwerOn(film, question, finish, assumed), usualQuality(question), question.limits, COARSE);
  return bestLine([map], question.bowler, carry, question.limits, searchSample)?.line ?? null;
}
