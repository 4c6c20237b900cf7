import type { CautionId } from "../rules/cautions.ts";
import { type Abrasive, isPolish, knownAbrasive } from "./abrasives.ts";

interface Handling {
  readonly by: "spinner" | "hand";
  readonly wet: boolean;
}

/** Hazards of working a surface with what is really used, however the plan has it. */
export function hazardsOf({ kind }: Pick<Abrasive, "kind">, { by, wet }: Handling): readonly CautionId[] {
  if (isPolish(kind)) return by === "hand" ? ["polish"] : ["spinner", "polish"];
  const around: readonly CautionId[] = by === "hand" ? [wet ? "floor" : "dust"] : wet ? ["spinner", "water", "floor"] : ["spinner", "dust"];
  return [...around, ...(kind === "wetPaper" ? (["wetPaper"] as const) : [])];
}

/** The same of an abrasive by its name; none of one that is not known. */
export function hazardsOfUsing(abrasive: string | null, handling: Handling): readonly CautionId[] {
  const known = knownAbrasive(abrasive);
  return known === null ? [] : hazardsOf(known, handling);
}

/** Whether something must not be used dry. */
export function isForWetUse(abrasive: string | null): boolean {
  return knownAbrasive(abrasive)?.dryAllowed === false;
}
