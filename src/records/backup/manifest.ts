import { z } from "zod";

/** Version of the form of a backup file. */
export const BACKUP_VERSION = 1;
export const MANIFEST = "manifest.json";
/** The manifest's own checksum, in hexadecimal. */
export const MANIFEST_SUM = "manifest.sha256";

/** What stands in a backup about itself. It and its checksum are the last files in it: a backup that was cut short has none. */
export const manifestSchema = z.strictObject({
  gritwright: z.literal(BACKUP_VERSION),
  kind: z.literal("backup"),
  madeAt: z.iso.datetime(),
  why: z.enum(["asked", "scheduled", "before migration", "before restore"]),
  programVersion: z.string(),
  schema: z.string(),
  counts: z.record(z.string(), z.int()),
  /** Photos and profile files that rows speak of and that were not there. */
  missing: z.array(z.string()),
  files: z.array(z.strictObject({ name: z.string(), bytes: z.int(), sha256: z.string() })),
});
export type Manifest = z.output<typeof manifestSchema>;
