import { sql } from "kysely";
import type { Step } from "./step.ts";

/** What several shops and several servers on one database need: files in it, a ledger of erasures, marks of a move; words looked up without a shop. */
export const step002: Step = {
  name: "002 several shops and servers",
  async apply(db, engine) {
    const text = engine === "postgres" ? sql`text collate "C"` : sql`text`;
    await db.schema
      .createTable("files")
      .addColumn("name", text, (c) => c.primaryKey())
      .addColumn("at", text, (c) => c.notNull())
      .addColumn("bytes", engine === "postgres" ? "bytea" : "blob", (c) => c.notNull())
      .execute();
    await db.schema
      .createTable("erasures")
      .addColumn("bowlerId", text, (c) => c.primaryKey())
      .addColumn("at", text, (c) => c.notNull())
      .addColumn("by", text, (c) => c.notNull())
      .execute();
    await db.schema
      .createTable("moves")
      .addColumn("id", text, (c) => c.primaryKey())
      .addColumn("way", text, (c) => c.notNull())
      .addColumn("at", text, (c) => c.notNull())
      .addColumn("other", text, (c) => c.notNull())
      .execute();
    await db.schema.createIndex("termsByTerm").on("terms").columns(["term", "kind", "thingId"]).execute();
  },
};
