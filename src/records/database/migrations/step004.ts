import { sql } from "kysely";
import type { Step } from "./step.ts";

/** Whose password began a session, where a PIN has changed the person since: it ends with that person's way in too. */
export const step004: Step = {
  name: "004 who began a session",
  async apply(db, engine) {
    const text = engine === "postgres" ? sql`text collate "C"` : sql`text`;
    await db.schema
      .alterTable("sessions")
      .addColumn("begunBy", text, (c) => c.notNull().defaultTo(""))
      .execute();
    await db
      .updateTable("sessions")
      .set(({ ref }) => ({ begunBy: ref("personId") }))
      .execute();
  },
};
