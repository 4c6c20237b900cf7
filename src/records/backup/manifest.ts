import { z } from "zod";

/** Forms of a backup: in the first everything is in the zip, in the second photos and files lie beside it. */
export const WHOLE = 1;
export const SHARING = 2;
export const MANIFEST = "manifest.json";
/** The manifest's own checksum, in hexadecimal. */
export const MANIFEST_SUM = "manifest.sha256";

const fileSum = z.strictObject({ name: z.string(), bytes: z.int(), sha256: z.string().regex(/^[0-9a-f]{64}$/) });

/** What stands in a backup about itself; with the checksums of everything that belongs to it. */
export const manifestSchema = z.strictObject({
  gritwright: z.literal([WHOLE, SHARING]),
  kind: z.literal("backup"),
  madeAt: z.iso.datetime(),
  why: z.enum(["asked", "scheduled", "before migration", "before restore"]),
  programVersion: z.string(),
  schema: z.string(),
  counts: z.record(z.string(), z.int()),
  /** Photos and profile files that rows speak of and that were not there. */
  missing: z.array(z.string()),
  /** What is in the zip. */
  files: z.array(fileSum),
  /** Photos and profile files that lie beside it in the folder `blobs`, by their checksums. */
  blobs: z.array(fileSum).optional(),
});
export type Manifest = z.output<typeof manifestSchema>;
