import { sql } from "kysely";
import type { Step } from "./step.ts";

/** Who may come in, who is in, and how often somebody tried in vain. */
export const step003: Step = {
  name: "003 accounts",
  async apply(db, engine) {
    const text = engine === "postgres" ? sql`text collate "C"` : sql`text`;
    await db.schema
      .createTable("accounts")
      .addColumn("personId", text, (c) => c.primaryKey().references("people.id"))
      .addColumn("shopId", text, (c) => c.notNull())
      .addColumn("signInName", text, (c) => c.notNull())
      .addColumn("role", text, (c) => c.notNull())
      .addColumn("passwordHash", text, (c) => c.notNull())
      .addColumn("pinHash", text)
      .addColumn("pinFailures", "integer", (c) => c.notNull())
      .addColumn("createdAt", text, (c) => c.notNull())
      .addColumn("changedAt", text, (c) => c.notNull())
      .execute();
    await db.schema.createIndex("accountsByName").unique().on("accounts").columns(["shopId", "signInName"]).execute();
    await db.schema
      .createTable("sessions")
      .addColumn("id", text, (c) => c.primaryKey())
      .addColumn("shopId", text, (c) => c.notNull())
      .addColumn("personId", text, (c) => c.notNull().references("people.id"))
      .addColumn("tokenHash", text, (c) => c.notNull())
      .addColumn("oldHash", text)
      .addColumn("oldUntil", text)
      .addColumn("madeAt", text, (c) => c.notNull())
      .addColumn("renewedAt", text, (c) => c.notNull())
      .addColumn("seenAt", text, (c) => c.notNull())
      .addColumn("endsAt", text, (c) => c.notNull())
      .addColumn("address", text, (c) => c.notNull())
      .execute();
    await db.schema.createIndex("sessionsByToken").unique().on("sessions").columns(["shopId", "tokenHash"]).execute();
    await db.schema.createIndex("sessionsByOldToken").on("sessions").columns(["shopId", "oldHash"]).execute();
    await db.schema.createIndex("sessionsByPerson").on("sessions").columns(["shopId", "personId"]).execute();
    await db.schema
      .createTable("tries")
      .addColumn("shopId", text, (c) => c.notNull())
      .addColumn("about", text, (c) => c.notNull())
      .addColumn("failures", "integer", (c) => c.notNull())
      .addColumn("since", text, (c) => c.notNull())
      .addColumn("waitUntil", text, (c) => c.notNull())
      .addPrimaryKeyConstraint("triesKey", ["shopId", "about"])
      .execute();
  },
};
