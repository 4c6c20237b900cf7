import { z } from "zod";
import { id, instant } from "./fields.ts";

/** The kinds of things kept, as audit entries, exports and addresses name them. */
export const THING_KINDS = [
  "people",
  "bowlers",
  "balls",
  "visits",
  "tickets",
  "stagesDone",
  "readings",
  "photos",
  "profileFiles",
  "houses",
  "lanes",
  "patterns",
  "shotNotes",
  "referenceBalls",
  "stockItems",
  "stockMovements",
  "prices",
  "payments",
  "prepaid",
  "settings",
] as const;
export type ThingKind = (typeof THING_KINDS)[number];

/** Who did what, when: ids and names of fields, never what stood in them. */
export const auditEntryKept = z.strictObject({
  id,
  shopId: id,
  at: instant,
  by: id,
  did: z.enum([
    "create",
    "change",
    "move",
    "remove",
    "erase",
    "import",
    "undo import",
    "export",
    "take backup",
    "restore",
    "fail to sign in",
    "mend",
    // Never written: stands for what cannot be read.
    "not readable",
  ]),
  kind: z.enum(THING_KINDS),
  thingId: id,
  fields: z.array(z.string()),
});
export type AuditEntry = z.output<typeof auditEntryKept>;
