import type { AssumptionUse } from "#engine/planning/plan";
import { ASSUMPTION_TEXTS } from "./en/assumptions.ts";

/** What an assumption stands for, with value, range, unit and mark: never to be mistaken for a measurement. */
export function assumptionText({ id, value, low, high, unit, mark }: AssumptionUse): string {
  const name = Object.entries(ASSUMPTION_TEXTS).find(([known]) => known === id)?.[1] ?? id;
  const unitText = unit === "1" ? "" : ` ${unit}`;
  return `${name}: ${figure(value)}${unitText}, assumed between ${figure(low)} and ${figure(high)} (${mark})`;
}

/** Three significant figures, without an exponent. */
function figure(value: number): string {
  return String(Number(value.toPrecision(3)));
}
