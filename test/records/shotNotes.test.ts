import { afterAll, describe, expect, test } from "vitest";
import { openPostgres } from "#records/database/postgres";
import { openSqlite } from "#records/database/sqlite";
import { shopFolder } from "#records/folder";
import { testPostgres } from "./postgres.ts";
import { type TestShop, testShop } from "./shop.ts";

/* A note that was written before a field was added is read with that field unknown: notes lie in the database as one document, so no step of the schema is needed. */

const postgres = await testPostgres();
afterAll(() => postgres?.stop());

describe.each([["SQLite", null] as const, ...(postgres === null ? [] : [["PostgreSQL", postgres] as const])])("on %s", (_, server) => {
  test("what the eye saw without figures is kept; a note from before has none of it", async () => {
    const address = server === null ? undefined : await server.newDatabase();
    const shop = await testShop(address === undefined ? {} : { postgres: address });
    try {
      const at = "2026-05-31T18:00:00.000Z";
      const seen = await shop.records.shotNotes.create({ at, turned: "late", arrived: "light", leave: [10] }, { by: shop.by });
      expect(await shop.records.shotNotes.get(seen.id)).toMatchObject({
        turned: "late",
        arrived: "light",
        leave: [10],
        breakpointFt: null,
      });
      await withoutNewFields(shop, address, seen.id);
      expect(await shop.records.shotNotes.get(seen.id)).toMatchObject({ turned: null, arrived: null, leave: [10] });
    } finally {
      await shop.end();
    }
  });
});

/** Writes the row as the program before wrote it. */
async function withoutNewFields(shop: TestShop, address: string | undefined, id: string): Promise<void> {
  const db = address === undefined ? openSqlite(shopFolder(shop.parts.folder).database).db : openPostgres(address);
  const row = await db.selectFrom("shotNotes").select("body").where("id", "=", id).executeTakeFirstOrThrow();
  const { turned, arrived, ...before } = JSON.parse(row.body as string);
  expect([turned, arrived]).toEqual(["late", "light"]);
  await db
    .updateTable("shotNotes")
    .set({ body: JSON.stringify(before) })
    .where("id", "=", id)
    .execute();
  await db.destroy();
}
