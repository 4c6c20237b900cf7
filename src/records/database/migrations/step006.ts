import type { Step } from "./step.ts";

/** Whether a PIN opened a session. Of those from before it is known where the person has changed; the others last a week at most. */
export const step006: Step = {
  name: "006 what a PIN opened",
  async apply(db) {
    await db.schema
      .alterTable("sessions")
      .addColumn("byPin", "integer", (c) => c.notNull().defaultTo(0))
      .execute();
    await db.updateTable("sessions").set({ byPin: 1 }).whereRef("begunBy", "!=", "personId").execute();
  },
};
