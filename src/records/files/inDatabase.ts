import type { FileStore } from "./fileStore.ts";

/** Files as rows: every server of the database has them, they come and go with the rows that speak of them, and one snapshot holds both. */
export function filesInDatabase(now: () => number): FileStore {
  return {
    async put(inside, name, bytes) {
      const at = new Date(now()).toISOString();
      await inside
        .insertInto("files")
        .values({ name, at, bytes })
        .onConflict((conflict) => conflict.column("name").doUpdateSet({ at }))
        .execute();
    },
    get: async (db, name) => (await db.selectFrom("files").select("bytes").where("name", "=", name).executeTakeFirst())?.bytes ?? null,
    async remove(inside, names) {
      if (names.length > 0) await inside.deleteFrom("files").where("name", "in", names).execute();
      return async () => {};
    },
    async olderThan(db, time) {
      const rows = await db.selectFrom("files").select("name").where("at", "<", new Date(time).toISOString()).execute();
      return rows.map(({ name }) => name);
    },
  };
}
