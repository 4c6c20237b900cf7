import type { SideId } from "../surface/padWork/sides.ts";
import { changesSurface, grainOf, isAlike, isCut } from "./abrasives.ts";
import type { PlannedStage, StageStanding, WorkEntry } from "./entries.ts";

/** The plan, and which of its stages each entry was written down for. */
interface Plan<Entry extends WorkEntry> {
  readonly stages: readonly PlannedStage[];
  readonly own: ReadonlyMap<Entry, PlannedStage>;
}

/** Whether a signature for a stage tells of another abrasive than it asks for, and so of other work. One that names none used what was planned. */
export function isInstead({ signs, abrasive }: WorkEntry, stage: PlannedStage): boolean {
  return signs && changesSurface(stage.kind) && stage.abrasive !== null && abrasive !== null && !isAlike(abrasive, stage.abrasive);
}

/**
 * How a stage stands, gone through in the order in which things were written down.
 *
 * @param server what does the same, signed for something else; null where nothing does. It stands for all that was done until now.
 */
export function standingOf<Entry extends WorkEntry>(
  plan: Plan<Entry>,
  stage: PlannedStage,
  entries: readonly Entry[],
  server: Entry | null,
): StageStanding<Entry> {
  const now = new Standing<Entry>(stage);
  let isServed = false;
  for (const entry of entries) {
    const isOwn = plan.own.get(entry) === stage;
    if (entry === server) {
      isServed = true;
      if (now.by === null) now.sign(entry);
    } else if (isOwn && entry.began !== null) now.begin(entry);
    else if (isOwn && entry.sidesAgain.length > 0) {
      isServed = false;
      now.reopen(entry.sidesAgain, entry.againSeconds);
    } else if (isOwn && entry.signs && !isInstead(entry, stage)) now.sign(entry);
    else if (isOwn && !entry.signs) now.work(entry.sidesDone);
    else if (!isServed && undoes(entry, stage, plan)) {
      now.reopen(entry.sidesDone);
      if (isOwn) now.instead = entry;
    }
  }
  return now.asItStands(now.by !== null && plan.own.get(now.by) === stage && !isInstead(now.by, stage));
}

/** One stage while its entries are gone through. */
class Standing<Entry extends WorkEntry> {
  by: Entry | null = null;
  instead: Entry | null = null;
  private running: Entry | null = null;
  private left: readonly SideId[];
  private again: readonly SideId[] = [];
  private againSeconds: number | null = null;
  private readonly stage: PlannedStage;

  constructor(stage: PlannedStage) {
    this.stage = stage;
    this.left = stage.sideIds;
  }

  sign(entry: Entry): void {
    this.by = entry;
    this.left = [];
    this.again = [];
    this.againSeconds = null;
    this.instead = null;
    this.running = null;
  }

  begin(entry: Entry): void {
    this.running = entry;
  }

  work(sides: readonly SideId[]): void {
    this.left = this.left.filter((side) => !sides.includes(side));
    if (sides.some((side) => side === this.running?.began?.side)) this.running = null;
  }

  /** @param sides none: all of them */
  reopen(sides: readonly SideId[], seconds: number | null = this.againSeconds): void {
    const reopened = sides.length === 0 ? this.stage.sideIds : sides;
    const among = (before: readonly SideId[]) => this.stage.sideIds.filter((side) => before.includes(side) || reopened.includes(side));
    this.left = among(this.left);
    if (this.by !== null || this.again.length > 0) this.again = among(this.again);
    this.againSeconds = seconds;
    this.by = null;
    this.running = null;
  }

  asItStands(isOwn: boolean): StageStanding<Entry> {
    const { stage, by, left, again, againSeconds, instead } = this;
    const over = { sidesLeft: [], againSeconds: null, again: [], instead: null, running: null };
    if (by !== null) return { stage, state: isOwn ? "signed" : "served", by, ...over };
    const side = this.running?.began?.side;
    const running = side !== undefined && left.includes(side) ? this.running : null;
    const state = left.length < stage.sideIds.length ? "begun" : "open";
    return { stage, state, by: null, sidesLeft: left, againSeconds, again, instead, running };
  }
}

/**
 * Whether an entry makes a stage be done again that was signed before it, or begun.
 *
 * - What comes before it in the plan does, where both change the surface; and anything at all under what was checked.
 * - Of work beside the plan, for an older one or with another abrasive, a *cut* does under every polish, under finer cuts, and under the plan's last cut where
 *   it is not like it; a *polish* under the last cut of a plan without one. They leave another surface than was wished for.
 */
function undoes<Entry extends WorkEntry>(entry: Entry, stage: PlannedStage, { stages, own }: Plan<Entry>): boolean {
  const of = own.get(entry);
  const isWork = entry.signs && changesSurface(entry.kind);
  const isBeside = of === undefined || isInstead(entry, of);
  const isBefore = of !== undefined && !isBeside && stages.indexOf(of) < stages.indexOf(stage);
  if (stage.kind === "check") return entry.sidesAgain.length > 0 || (isWork && (isBefore || isBeside));
  if (!isWork || !changesSurface(stage.kind)) return false;
  return isBefore || (isBeside && (of === stage || leavesAnother(entry, stage, stages)));
}

/** Whether work beside the plan leaves another surface than a stage did. */
function leavesAnother({ kind, abrasive }: WorkEntry, stage: PlannedStage, stages: readonly PlannedStage[]): boolean {
  const isLast = stage === stages.findLast((one) => one.kind === "cut");
  if (!isCut(kind)) return isLast && stages.every((one) => one.kind !== "polish");
  if (stage.kind === "polish") return true;
  return stage.kind === "cut" && (grainOf(abrasive) > grainOf(stage.abrasive) || (isLast && !isAlike(abrasive, stage.abrasive)));
}
