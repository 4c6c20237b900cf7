import type { AssumptionUse } from "#engine/planning/plan";
import { assumptionFigures, assumptionName } from "#words/assumptionText";
import { textColumns } from "./textTable.ts";

/** Every assumption with its value, its range and where it comes from. */
export function assumptionTable(assumptions: readonly AssumptionUse[]): string[] {
  return textColumns([
    { cells: assumptions.map(({ id }) => `  ${assumptionName(id)}`), align: "left" },
    { cells: assumptions.map((use) => assumptionFigures(use).value), align: "right" },
    { cells: assumptions.map((use) => assumptionFigures(use).range), align: "left" },
    { cells: assumptions.map(({ mark }) => mark), align: "left" },
  ]);
}
