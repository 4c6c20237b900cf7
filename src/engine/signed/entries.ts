import type { SideId } from "../surface/padWork/sides.ts";
import type { StageKind } from "../surface/stages.ts";

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
