import type { AssumptionUse } from "#engine/planning/plan";
import { ASSUMPTION_TEXTS } from "./en/assumptions.ts";

/** What an assumption stands for. */
export function assumptionName(id: string): string {
  return Object.entries(ASSUMPTION_TEXTS).find(([known]) => known === id)?.[1] ?? id;
}

/** Value and range of an assumption as text, three significant figures, with the unit. */
export function assumptionFigures({ value, low, high, unit }: AssumptionUse): { readonly value: string; readonly range: string } {
  const unitText = unit === "1" ? "" : ` ${unit}`;
  return { value: `${figure(value)}${unitText}`, range: `${figure(low)}–${figure(high)}` };
}

/** An assumption in a sentence, with its mark: never to be mistaken for a measurement. */
export function assumptionText(use: AssumptionUse): string {
  const { value, range } = assumptionFigures(use);
  return `${assumptionName(use.id)}: ${value}, assumed within ${range} (${use.mark})`;
}

function figure(value: number): string {
  return String(Number(value.toPrecision(3)));
}
