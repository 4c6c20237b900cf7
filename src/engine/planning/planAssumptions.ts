import { ASSUMPTION_IDS, type AssumptionId } from "../assumptions.ts";
import { COVER_IDS, type CoverId } from "../ball/ball.ts";

/** Families of assumptions that a plan rests on; the others speak to bench work. */
const FAMILIES: readonly string[] = ["friction", "filmReach", "carriedOil", "roll", "roughness", "film", "wear", "carry"];

/** The assumptions that a plan for this cover rests on: those that name no cover, or this one. */
export function planAssumptions(cover: CoverId): readonly AssumptionId[] {
  const kind = cover === "polyester" || cover === "urethane" ? cover : "reactive";
  const named: readonly string[] = [...COVER_IDS, "reactive"];
  return ASSUMPTION_IDS.filter((id) => {
    const parts = id.split(".");
    const last = parts[parts.length - 1];
    return (
      FAMILIES.includes(parts[0]) &&
      (!named.includes(last) || last === cover || last === kind) &&
      id !== "roughness.slipPolishKeeps" &&
      id !== "film.unit"
    );
  });
}
