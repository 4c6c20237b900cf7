import type { FinishPlan } from "#engine/planning/plan";
import { lossText } from "#words/en/planReport";

/** The finishes from dull to smooth in a row, the plateau bracketed, the pick between `>` and `<`, and what each loses under it. */
export function plateauLines({ candidates, pick }: FinishPlan): string[] {
  if (pick === null) return [];
  const chances = candidates.map((candidate) => candidate.chance?.value ?? null);
  const best = Math.max(...chances.map((chance) => chance ?? 0));
  const cells = candidates.map(({ finish }, index) => {
    const named = finish === pick.finish ? `>${finish}<` : finish;
    const opening = finish === pick.plateau[0] ? "[ " : "  ";
    const closing = finish === pick.plateau[pick.plateau.length - 1] ? " ]" : "  ";
    const chance = chances[index];
    return { top: `${opening}${named}${closing}`, below: chance === null ? "" : `  ${lossText(100 * (best - chance))}  ` };
  });
  const widths = cells.map(({ top, below }) => Math.max(top.length, below.length));
  const row = (part: "top" | "below") => cells.map((cell, index) => cell[part].padEnd(widths[index])).join(" ");
  return [row("top"), row("below")].map((line) => `  ${line}`.trimEnd()).filter((line) => line !== "");
}
