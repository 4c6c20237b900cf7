import { ratingsWanted } from "#engine/planning/candidates";
import { DRAWS } from "#engine/planning/draws";
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
  }
}
