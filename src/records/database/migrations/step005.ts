import { sql } from "kysely";
import type { Step } from "./step.ts";

/** Written out and not taken from today's kinds, which change; this step does not. */
const THINGS =
  "settings people bowlers balls visits tickets stagesDone referenceBalls profileFiles readings photos houses lanes patterns shotNotes stockItems stockMovements prices payments prepaid".split(
    " ",
  );

/** With which version each thing was written, and what a program must know to write here at all. */
export const step005: Step = {
  name: "005 versions of what is kept",
  async apply(db, engine) {
    for (const table of THINGS)
      await db.schema
        .alterTable(table)
        .addColumn("schemaVersion", "integer", (c) => c.notNull().defaultTo(1))
        .execute();
    const text = engine === "postgres" ? sql`text collate "C"` : sql`text`;
    await db.schema
      .createTable("writers")
      .addColumn("name", text, (c) => c.primaryKey())
      .addColumn("format", "integer", (c) => c.notNull())
      .addColumn("program", "text", (c) => c.notNull())
      .execute();
  },
};
