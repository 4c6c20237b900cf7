import { decideBag } from "#engine/planning/bag/decideBag";
import { bowlerWith, laneAfterPractice, stageLane } from "#engine/planning/bag/films";
import { referenceStates } from "#engine/planning/bag/references";
import { statesOf } from "#engine/planning/bag/states";
import { drawsOn, worthOn } from "#engine/planning/bag/worth";
import { ratingsWanted } from "#engine/planning/candidates";
import { DRAWS } from "#engine/planning/draws";
import { laneAsLaid, playPiece } from "#engine/planning/oilInPlay/session";
import { decide, drawChances, rate, sketch } from "#engine/planning/steps";
import type { ResultOf, Unit } from "./unit.ts";

/** Computes one unit, here and now. @throws {EngineFault} as the engine does */
export function runUnit<U extends Unit>(unit: U): ResultOf<U> {
  return compute(unit) as ResultOf<U>;
}

function compute(unit: Unit): ResultOf<Unit> {
  switch (unit.kind) {
    case "wanted":
      return { finishes: ratingsWanted(unit.question), draws: DRAWS };
    case "sketch":
      return sketch(unit.question, unit.finish);
    case "rate":
      return rate(unit.question, unit.finish);
    case "draws":
      return drawChances(unit.question, unit.rating, unit.from, unit.to);
    case "decide":
      return decide(unit.question, unit.ratings, unit.draws);
    case "bagStates":
      return {
        states: unit.question.balls.flatMap((_, ball) => statesOf(unit.question, ball)),
        references: referenceStates(unit.question),
      };
    case "bagStart":
      return laneAfterPractice(unit.question, bowlerWith(unit.question, unit.thrown));
    case "bagLane":
      return stageLane(unit.question, unit.from, bowlerWith(unit.question, unit.thrown));
    case "bagWorth":
      return worthOn(unit.question, unit.state, unit.films);
    case "bagDraws":
      return drawsOn(unit.question, unit.state, unit.films, unit.lines);
    case "bagDecide":
      return decideBag(unit.question, unit.found);
    case "laneAsLaid":
      return laneAsLaid(unit.question);
    case "playPiece":
      return playPiece(unit.question, unit.now);
  }
}
