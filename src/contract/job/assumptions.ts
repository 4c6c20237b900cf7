import type { z } from "zod";
import { ASSUMPTION_IDS, ASSUMPTIONS, type AssumptionId } from "#engine/assumptions";
import { mapping, quantity } from "./fields.ts";

/** How far outside its own range an assumption may be tried. */
const WIDER = 10;

const shape = Object.fromEntries(
  ASSUMPTION_IDS.map((id) => {
    const { low, high, unit } = ASSUMPTIONS[id];
    return [id, quantity(unit === "1" ? "" : unit, { from: round(low / WIDER), to: round(high * WIDER) }, id).optional()];
  }),
) as Record<AssumptionId, z.ZodOptional<z.ZodNumber>>;

export const assumptionsField = mapping(shape, "Assumptions of the model set otherwise than it has them, by their names; see docs/model");

function round(value: number): number {
  return Number(value.toPrecision(6));
}
