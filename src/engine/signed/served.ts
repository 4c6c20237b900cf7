import { MOST_GRAIN_RATIO } from "../surface/stages.ts";
import { grainOf, isAlike, isCut } from "./abrasives.ts";
import type { PlannedStage, WorkEntry } from "./entries.ts";

/**
 * For each planned stage the signature that does what the stage would do though it was made for another plan, or with another abrasive; null where none does.
 *
 * - *Cuts* count as far as the surface has come: where the last cut that was signed is one of the plan's, it and those before it, if what was signed went the
 *   same way or in finer steps (the trade's step rules; common practice). A cut beside the plan, or one coarser or finer after it, leaves another surface.
 * - *Cleaning, drawing oil out, drying off* count wherever they were signed.
 *   Under a polish that the plan has not, the plan's last cut is to be made again.
 * - *Polish* counts where nothing was cut since and the plan has nothing left to cut; *checking* where nothing at all was done since.
 *
 * @param signed whole stages, in order
 * @param isOfPlan whether an entry signs a stage of the plan itself, with what that asks for
 */
export function served<Entry extends WorkEntry>(
  stages: readonly PlannedStage[],
  signed: readonly Entry[],
  isOfPlan: (entry: Entry) => boolean,
): readonly (Entry | null)[] {
  const others = signed.filter((entry) => !isOfPlan(entry));
  const found: (Entry | null)[] = stages.map(() => null);
  if (others.length === 0) return found;
  const path = signed.filter(({ kind }) => isCut(kind));
  const cuts = stages.flatMap(({ kind }, i) => (isCut(kind) ? [i] : []));
  const through = reachedOf(
    cuts.map((i) => stages[i]),
    path,
  );
  const isCovered = through === cuts.length && stages.every(({ kind }) => kind !== "polish") && isPolished(signed);
  const reached = isCovered ? Math.max(0, through - 1) : through;
  for (const i of cuts.slice(0, reached))
    found[i] = path.findLast(({ abrasive }) => isAlike(abrasive, stages[i].abrasive)) ?? path[path.length - 1];
  const isAllCut = cuts.length === reached;
  for (const [i, { kind, abrasive }] of stages.entries()) {
    if (kind === "clean" || kind === "extract" || kind === "dryOff") found[i] = others.find((entry) => entry.kind === kind) ?? null;
    const last = signed.findLastIndex((entry) => isCut(entry.kind));
    if (kind === "polish" && isAllCut)
      found[i] = signed.find((entry, at) => at > last && entry.kind === "polish" && isAlike(entry.abrasive, abrasive)) ?? null;
    const worked = signed.findLastIndex((entry) => isCut(entry.kind) || entry.kind === "polish");
    const isPolishDone = stages.every((stage, at) => stage.kind !== "polish" || found[at] !== null);
    if (kind === "check" && isAllCut && isPolishDone) found[i] = signed.find((entry, at) => at > worked && entry.kind === "check") ?? null;
  }
  return found;
}

/** Whether a polish lies over the last cut. */
function isPolished(signed: readonly WorkEntry[]): boolean {
  return signed.findLastIndex(({ kind }) => kind === "polish") > signed.findLastIndex(({ kind }) => isCut(kind));
}

/** How many of the planned cuts have been gone through. */
function reachedOf(planned: readonly PlannedStage[], path: readonly WorkEntry[]): number {
  const last = path.at(-1)?.abrasive;
  if (last === undefined || last === null) return 0;
  const end = planned.findLastIndex(({ abrasive }) => isAlike(abrasive, last));
  // Where the way begins: behind the last cut that was finer than the one after it, which undid what came before.
  const begin = path.findLastIndex(({ abrasive }, i) => i > 0 && grainOf(path[i - 1].abrasive) < grainOf(abrasive));
  const way = path.slice(Math.max(0, begin));
  return end !== -1 && goesThrough(planned.slice(0, end + 1), way) ? end + 1 : 0;
}

/** Whether a way from coarse to fine does all that the planned cuts would: each of them is in it, or a step over it that is no larger than the rules allow. */
function goesThrough(planned: readonly PlannedStage[], way: readonly WorkEntry[]): boolean {
  return planned.every(({ abrasive }) => {
    if (way.some((entry) => isAlike(entry.abrasive, abrasive))) return true;
    const grain = grainOf(abrasive);
    const coarser = way.findLast((entry) => grainOf(entry.abrasive) > grain);
    const finer = way.find((entry) => grainOf(entry.abrasive) < grain);
    return coarser !== undefined && finer !== undefined && grainOf(coarser.abrasive) / grainOf(finer.abrasive) <= MOST_GRAIN_RATIO;
  });
}
