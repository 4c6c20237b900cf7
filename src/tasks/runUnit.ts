import { decideBag } from "#engine/planning/bag/decideBag";
import { bowlerWith, laneAfterPractice, stageLane } from "#engine/planning/bag/films";
import { referenceStates } from "#engine/planning/bag/references";
import { statesOf } from "#engine/planning/bag/states";
import { drawsOn, worthOn } from "#engine/planning/bag/worth";
import { playedInWorld } from "#engine/planning/oilInPlay/inWorlds";
import { laneAsLaid, playPiece } from "#engine/planning/oilInPlay/session";
import { decide, rate, scoreWorlds, wantedOf } from "#engine/planning/steps";
import type { ResultOf, Unit } from "./unit.ts";

/** Computes one unit, here and now. @throws {EngineFault} as the engine does */
export function runUnit<U extends Unit>(unit: U): ResultOf<U> {
  return compute(unit) as ResultOf<U>;
}

function compute(unit: Unit): ResultOf<Unit> {
  switch (unit.kind) {
    case "wanted":
      return wantedOf(unit.question);
    case "rate":
      return rate(unit.question, unit.finish, unit.asked);
    case "worlds":
      return scoreWorlds(unit.question, unit.wanted, unit.span, unit.from, unit.to);
    case "decide":
      return decide(unit.question, unit.wanted, unit.ratings, unit.blocks);
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
    case "playedInWorld":
      return playedInWorld(unit.question, unit.world);
  }
}
