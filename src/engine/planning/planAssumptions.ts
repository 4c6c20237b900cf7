import { ASSUMPTION_IDS, type Assumed, type AssumptionId } from "../assumptions.ts";
import { type Ball, COVER_IDS, type CoverId } from "../ball/ball.ts";
import { coversOf } from "../ball/covers.ts";

/** Families of assumptions that a plan rests on; the others speak to bench work. */
const FAMILIES: readonly string[] = ["friction", "filmReach", "carriedOil", "roll", "roughness", "film", "wear", "carry"];

/** Of these families, but for something else: slip polish, units, and another law to try plans on. */
const NOT_IN_PLANS: readonly AssumptionId[] = ["roughness.slipPolishKeeps", "film.unit", "friction.exponentialShare"];

/** The assumptions that a plan for this cover rests on: those that name no cover, or this one. */
export function planAssumptions(cover: CoverId): readonly AssumptionId[] {
  const kind = kindOf(cover);
  const named: readonly string[] = [...COVER_IDS, "reactive"];
  return ASSUMPTION_IDS.filter((id) => {
    const parts = id.split(".");
    const last = parts[parts.length - 1];
    return FAMILIES.includes(parts[0]) && (!named.includes(last) || last === cover || last === kind) && !NOT_IN_PLANS.includes(id);
  });
}

function kindOf(cover: CoverId): string {
  return cover === "polyester" || cover === "urethane" ? cover : "reactive";
}

/** The assumptions that a plan for this ball rests on: where nobody knows its cover, those of every cover that it may be. */
export function assumptionsOfBall(ball: Pick<Ball, "cover" | "unknown" | "job">): readonly AssumptionId[] {
  return [...new Set(coversOf(ball).flatMap(planAssumptions))];
}

/** Assumptions under which a ball of one cover behaves as if it were of another: what is assumed of that one stands where this one's is read. */
export function behavingAs(assumed: Assumed, of: CoverId, as: CoverId): Assumed {
  if (of === as) return assumed;
  const values: Record<AssumptionId, number> = { ...assumed };
  for (const id of planAssumptions(of)) {
    const [last, ...head] = id.split(".").toReversed();
    const other = last === of ? as : last === kindOf(of) ? kindOf(as) : last;
    values[id] = assumed[[...head.toReversed(), other].join(".") as AssumptionId];
  }
  return values;
}
