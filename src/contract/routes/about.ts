import { z } from "zod";
import { answers, route } from "./route.ts";

const healthSchema = z.strictObject({
  state: z.enum(["well", "closing"]),
  version: z.string(),
  /** Whether this is the invented shop. */
  invented: z.boolean(),
  /** Whether the last backup that was to be made is there and read back; when and why stands in the list of backups. */
  lastBackup: z.enum(["good", "failed", "none"]),
  /** How many photos and profile files were lost before the last good backup was made; it names them. */
  lostFiles: z.int(),
  /** How many things that are kept could not be read, as far as anybody has met them; which and why, an owner may ask. */
  unreadable: z.int(),
  /** Whether this program may write; it may not where a newer one asks older ones only to read. */
  mayWrite: z.boolean(),
});

/** The server about itself. */
export const aboutRoutes = {
  health: route({
    least: "anybody",
    method: "get",
    path: "/api/health",
    does: "Whether the server answers, its records can be read, and the last backup was good",
    answer: answers(healthSchema),
  }),
  describe: route({
    least: "reader",
    method: "get",
    path: "/api/openapi.json",
    does: "This description",
    answer: answers(z.looseObject({ openapi: z.string() })),
  }),
};
