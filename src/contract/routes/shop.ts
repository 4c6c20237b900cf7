import { z } from "zod";
import { mapping, oneOf, text } from "../job/fields.ts";
import { auditEntryKept, THING_KINDS } from "../records/auditEntry.ts";
import { ballKept } from "../records/ball.ts";
import { bowlerKept } from "../records/bowler.ts";
import { RECORDS_FAULT_KINDS } from "../records/fault.ts";
import { id } from "../records/fields.ts";
import { settingsKept, settingsWritten } from "../records/settings.ts";
import { changesOf } from "./changes.ts";
import { listRoute } from "./kept.ts";
import { takesPermille } from "./olderTax.ts";
import { idParams } from "./parts.ts";
import { answers, json, NOTHING, route } from "./route.ts";

const backupSchema = z.strictObject({
  name: z.string(),
  madeAt: z.string(),
  bytes: z.int(),
  why: z.enum(["asked", "scheduled", "before migration", "before restore"]),
});
const backupFailureSchema = z.strictObject({
  at: z.string(),
  why: backupSchema.shape.why,
  fault: z.enum([...RECORDS_FAULT_KINDS, "broken"]),
});
const backupReportSchema = z.strictObject({
  madeAt: z.string(),
  programVersion: z.string(),
  schema: z.string(),
  files: z.int(),
  counts: z.record(z.string(), z.int()),
  /** Files beside the database that had been lost when the backup was made. */
  missing: z.array(z.string()),
});
const named = mapping({ name: text("Name of the backup, as the list gives it") }, "Which backup");

/** What the records set aside. */
const setAsideSchema = z.strictObject({
  kind: z.enum(THING_KINDS),
  id,
  problems: z.array(z.strictObject({ path: z.string(), value: z.unknown(), allowed: z.string() })),
});

const listShape = {
  kind: oneOf(["bowlers", "balls"], "What the list holds"),
  csv: z.string({ error: "a table as CSV" }).min(1, { error: "a table as CSV" }),
  mapping: z.record(z.string(), z.string(), { error: "a field for each column" }).optional(),
};
const previewSchema = z.strictObject({
  columns: z.array(z.string()),
  mapping: z.record(z.string(), z.string()),
  fields: z.array(z.string()),
  rows: z.int(),
  /** Rows that would be passed over. */
  alreadyThere: z.int(),
  sample: z.array(z.record(z.string(), z.unknown())),
  problems: z.array(z.strictObject({ row: z.int(), column: z.string(), value: z.string(), allowed: z.string() })),
});

/** Settings, search, the trail of who did what, backups, export and import. */
export const shopRoutes = {
  getSettings: route({
    least: "reader",
    method: "get",
    path: "/api/settings",
    does: "What the shop has settled on",
    answer: answers(settingsKept),
  }),
  changeSettings: takesPermille(
    route({
      least: "owner",
      method: "patch",
      path: "/api/settings",
      does: "Changes the given settings",
      body: json(changesOf(settingsWritten)),
      answer: answers(settingsKept),
      match: true,
      key: "allowed",
    }),
  ),
  listAudit: listRoute("owner", "/api/audit", "who did what, when", auditEntryKept, ["kind", "thingId", "by"]),
  search: route({
    least: "reader",
    method: "get",
    path: "/api/search",
    query: mapping({ words: text("A name, a serial number or its end, a telephone number or its end") }, "What is looked for"),
    does: "Bowlers and balls by name, serial number or telephone number, at most twenty of each",
    answer: answers(z.strictObject({ bowlers: z.array(bowlerKept), balls: z.array(ballKept) })),
  }),

  listBackups: route({
    least: "owner",
    method: "get",
    path: "/api/backups",
    does: "Lists the backups, newest first, and says where the last one failed",
    answer: answers(z.strictObject({ items: z.array(backupSchema), failed: backupFailureSchema.nullable() })),
  }),
  makeBackup: route({
    least: "owner",
    method: "post",
    path: "/api/backups",
    does: "Makes a backup while work goes on, and reads it back",
    answer: answers(backupSchema, 201),
  }),
  verifyBackup: route({
    least: "owner",
    method: "post",
    path: "/api/backups/:name/verify",
    params: named,
    does: "Reads a backup through and compares every checksum",
    answer: answers(backupReportSchema),
  }),
  backupBytes: route({
    least: "owner",
    method: "get",
    path: "/api/backups/:name",
    params: named,
    does: "A backup as one file with everything in it, to be kept elsewhere",
    again: true,
    answer: { kind: "file", status: 200, types: ["application/zip"] },
  }),
  exportAll: route({
    least: "owner",
    method: "get",
    path: "/api/export",
    does: "Everything as JSON and as tables, in one ZIP file",
    again: true,
    answer: { kind: "file", status: 200, types: ["application/zip"] },
  }),

  listUnreadable: route({
    least: "owner",
    method: "get",
    path: "/api/unreadable",
    does: "Looks through everything that is kept for what cannot be read, and lists it",
    answer: answers(z.strictObject({ items: z.array(setAsideSchema) })),
  }),
  getUnreadable: route({
    least: "owner",
    method: "get",
    path: "/api/unreadable/:id",
    params: idParams,
    does: "One thing as it lies in the records, read or not",
    answer: answers(z.strictObject({ kind: z.enum(THING_KINDS), version: z.int(), schemaVersion: z.int(), document: z.string() })),
  }),
  mendUnreadable: route({
    least: "owner",
    method: "post",
    path: "/api/unreadable/:id",
    params: idParams,
    does: "Puts a whole document in the place of what cannot be read",
    body: json(mapping({ document: z.record(z.string(), z.unknown(), { error: "the whole document" }) }, "The thing as it is to be")),
    answer: NOTHING,
    match: true,
    key: "allowed",
  }),

  previewImport: route({
    least: "owner",
    method: "post",
    path: "/api/imports/preview",
    does: "What an import would do; nothing is written",
    body: json(mapping(listShape, "A list")),
    answer: answers(previewSchema),
  }),
  applyImport: route({
    least: "owner",
    method: "post",
    path: "/api/imports",
    does: "Takes in all rows of a list, or none",
    body: json(mapping(listShape, "A list")),
    answer: answers(z.strictObject({ importId: z.string(), added: z.int(), alreadyThere: z.int() }), 201),
    key: "allowed",
  }),
  undoImport: route({
    least: "owner",
    method: "post",
    path: "/api/imports/:id/undo",
    params: idParams,
    does: "Takes out again what an import added, where nobody has changed or used it since",
    answer: answers(z.strictObject({ takenOut: z.int() })),
    key: "allowed",
  }),
};
