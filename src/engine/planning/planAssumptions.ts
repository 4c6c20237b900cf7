import { ASSUMPTION_IDS, type Assumed, type AssumptionId } from "../assumptions.ts";
import { type Ball, COVER_IDS, type CoverId, coverOf, coversOf } from "../ball/ball.ts";

/** Families of assumptions that a plan rests on; the others speak to bench work. */
const FAMILIES: readonly string[] = ["friction", "filmReach", "carriedOil", "roll", "roughness", "film", "wear", "carry"];

/** Of these families, but for something else: slip polish, units, and another law to try plans on. */
const NOT_IN_PLANS: readonly AssumptionId[] = ["roughness.slipPolishKeeps", "film.unit", "friction.exponentialShare"];

/** What plans read for one cover and may read otherwise for another: always in the same order. */
function lawsInPlans(cover: CoverId): readonly AssumptionId[] {
  const { dryFriction, filmReach, carriedOil, laidDown } = coverOf(cover).laws;
  return [dryFriction, filmReach, carriedOil, laidDown];
}

const OF_SOME_COVER: ReadonlySet<AssumptionId> = new Set(COVER_IDS.flatMap(lawsInPlans));

/** The assumptions that a plan for this cover rests on: those that no cover names for itself, and those that this one names. */
export function planAssumptions(cover: CoverId): readonly AssumptionId[] {
  const own = lawsInPlans(cover);
  return ASSUMPTION_IDS.filter(
    (id) => FAMILIES.includes(id.split(".")[0]) && (!OF_SOME_COVER.has(id) || own.includes(id)) && !NOT_IN_PLANS.includes(id),
  );
}

/** The assumptions that a plan for this ball rests on: where nobody knows its cover, those of every cover that it may be. */
export function assumptionsOfBall(ball: Pick<Ball, "cover" | "unknown" | "job">): readonly AssumptionId[] {
  return [...new Set(coversOf(ball).flatMap(planAssumptions))];
}

/** Assumptions under which a ball of one cover behaves as if it were of another: what is assumed of that one stands where this one's is read. */
export function behavingAs(assumed: Assumed, of: CoverId, as: CoverId): Assumed {
  if (of === as) return assumed;
  const values: Record<AssumptionId, number> = { ...assumed };
  const others = lawsInPlans(as);
  lawsInPlans(of).forEach((id, law) => {
    values[id] = assumed[others[law]];
  });
  return values;
}
