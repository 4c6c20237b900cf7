import { numberOf } from "../surface/abrasives.ts";
import type { Finish } from "../surface/finish.ts";
import type { SideId } from "../surface/padWork/sides.ts";
import type { StageKind } from "../surface/stages.ts";
import { changesSurface } from "./abrasives.ts";
import { served } from "./served.ts";
import { isInstead, standingOf } from "./standing.ts";

/** A stage as it is planned. */
export interface PlannedStage {
  /** Its own in the whole ticket, also among stages that were planned before and are planned no more. */
  readonly id: string;
  /** Null for work written by hand. */
  readonly kind: StageKind | null;
  /** Of the registry, or a name of the shop's own. */
  readonly abrasive: string | null;
  /** In the order in which they are worked; empty where a stage has none. */
  readonly sideIds: readonly SideId[];
  /** What it was called when it was planned: all that an old signature knows a stage by. */
  readonly label: string;
}

/** Something that was written down at the bench, never altered: work done, or that an entry before is taken back. */
export interface WorkEntry {
  readonly id: string;
  /** Null for signatures of before there were such ids. */
  readonly stageId: string | null;
  readonly kind: StageKind | null;
  /** What was really used. */
  readonly abrasive: string | null;
  /** A signature says that the whole stage is done; without one an entry tells of sides that are. */
  readonly signs: boolean;
  readonly sidesDone: readonly SideId[];
  /** Sides of the stage that are to be worked once more, for they were found to be off; such an entry says nothing else. */
  readonly sidesAgain: readonly SideId[];
  /** How long each of them is worked, s; null: as the plan has it. */
  readonly againSeconds: number | null;
  /** The side that somebody begins to work, and on which device; such an entry says nothing else. Null for any other. */
  readonly began: { readonly side: SideId; readonly device: string } | null;
  /** Id of the entry that this one takes back; such an entry says nothing else. */
  readonly takesBack: string | null;
  /** When it was written down; the order of the entries. */
  readonly at: string;
  readonly label: string;
}

/** How one planned stage stands. */
export interface StageStanding<Entry extends WorkEntry = WorkEntry> {
  readonly stage: PlannedStage;
  /**
   * - `open`: nothing of it is done.
   * - `begun`: some of its sides are done.
   * - `signed`: somebody signed it.
   * - `served`: nobody signed this stage with what it asks for, but what was signed, on another plan or with another abrasive, does what it would do.
   */
  readonly state: "open" | "begun" | "signed" | "served";
  /** What signed or serves it. */
  readonly by: Entry | null;
  /** Sides that are still to be worked, in order. */
  readonly sidesLeft: readonly SideId[];
  /** How long a side that is worked once more takes, s; null where the plan says it. */
  readonly againSeconds: number | null;
  /** Sides that are worked once more on a stage that was whole before: its next signature is for them alone. Empty: for all of it. */
  readonly again: readonly SideId[];
  /** What was signed for it with another abrasive and does not do what it would do; null where nothing was. */
  readonly instead: Entry | null;
  /** Who last began one of the sides that are left; null where nobody did. */
  readonly running: Entry | null;
}

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
