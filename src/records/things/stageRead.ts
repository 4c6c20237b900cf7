import { type StageDone, stageDoneKept, stageDoneWritten } from "#contract/records/stageDone";
import type { Definition } from "./definition.ts";

/** A signed stage, for whoever only reads it; keeping one has effects of its own. */
export const stageRead: Definition<StageDone> = {
  kind: "stagesDone",
  written: stageDoneWritten,
  kept: stageDoneKept,
  lookups: { ticketId: "tickets", personId: "people" },
};
