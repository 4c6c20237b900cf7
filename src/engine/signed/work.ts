import { numberOf } from "../surface/abrasives.ts";
import type { Finish } from "../surface/finish.ts";
import { changesSurface } from "./abrasives.ts";
import type { PlannedStage, StageStanding, WorkEntry } from "./entries.ts";
import { served } from "./served.ts";
import { isInstead, standingOf } from "./standing.ts";

/** A ball's work: everything that may be said of it follows from this. */
export interface Work<Entry extends WorkEntry = WorkEntry> {
  readonly stages: readonly StageStanding<Entry>[];
  /** The first stage that is neither signed nor served; null where none is left. */
  readonly next: StageStanding<Entry> | null;
  /** Whole stages that were signed and not taken back, in order; of this plan and of plans before. */
  readonly signed: readonly Entry[];
  /** Sides that were worked and are not signed for yet, in order. */
  readonly sides: readonly Entry[];
  /** What the surface was worked with, in order: the signed ones that change it. */
  readonly surface: readonly Entry[];
  /** The last signed cut, polished where a polish was signed over it; null where no cut with a number was signed. */
  readonly finish: Finish | null;
}

/**
 * How a ball's work stands.
 *
 * @param stages the plan as it is now
 * @param entries everything written down at the bench for it, in any order
 */
export function workOf<Entry extends WorkEntry>(stages: readonly PlannedStage[], entries: readonly Entry[]): Work<Entry> {
  const standing = notTakenBack(entries);
  const own = matched(stages, standing);
  const signed = standing.filter(({ signs }) => signs);
  const serving = served(stages, signed, (entry) => {
    const stage = own.get(entry);
    return stage !== undefined && !isInstead(entry, stage);
  });
  const found = stages.map((stage, i) => standingOf({ stages, own }, stage, standing, serving[i]));
  const surface = signed.filter(({ kind }) => changesSurface(kind));
  return {
    stages: found,
    next: found.find(({ state }) => state === "open" || state === "begun") ?? null,
    signed,
    sides: standing.filter((entry) => !entry.signs && entry.sidesDone.length > 0),
    surface,
    finish: finishOf(surface),
  };
}

/** Whether nothing that is left of the plan changes the surface. */
export function isSurfaceDone({ stages }: Pick<Work, "stages">): boolean {
  return stages.every(({ stage: { kind }, by }) => by !== null || !changesSurface(kind));
}

function notTakenBack<Entry extends WorkEntry>(entries: readonly Entry[]): Entry[] {
  const gone = new Set(entries.flatMap(({ takesBack }) => takesBack ?? []));
  return entries
    .filter(({ id, takesBack }) => takesBack === null && !gone.has(id))
    .toSorted((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
}

/** Which stage of the plan each entry is of. One of before there were ids is of the next stage that was called so and used the same. */
function matched<Entry extends WorkEntry>(stages: readonly PlannedStage[], entries: readonly Entry[]): ReadonlyMap<Entry, PlannedStage> {
  const byId = new Map(stages.map((stage) => [stage.id, stage]));
  const found = new Map<Entry, PlannedStage>();
  let next = 0;
  for (const entry of entries) {
    const stage = entry.stageId === null ? stages[next] : byId.get(entry.stageId);
    if (stage === undefined) continue;
    if (entry.stageId === null) {
      if (entry.label !== stage.label || entry.abrasive !== stage.abrasive) continue;
      next += 1;
    }
    found.set(entry, stage);
  }
  return found;
}

function finishOf(surface: readonly WorkEntry[]): Finish | null {
  const last = surface.findLastIndex(({ kind }) => kind !== "polish");
  const number = last === -1 ? null : numberOf(surface[last].abrasive);
  return number === null ? null : { number, polished: last < surface.length - 1 };
}
