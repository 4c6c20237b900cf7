import { type Kysely, sql } from "kysely";
import { afterAll, describe, expect, it } from "vitest";
import { ofShop } from "#records/database/ofShop";
import { openSqlite } from "#records/database/sqlite";
import { TABLE_RULES } from "#records/database/tableRules";
import type { Db, Tables } from "#records/database/tables";

/*
 * The wall between shops, query by query. What holds over all routes is in test/server/otherShop.test.ts.
 */

const { db: whole } = openSqlite(":memory:");
afterAll(() => whole.destroy());
const db: Db = whole.withPlugin(ofShop("S"));
const row = { id: "1", shopId: "S", version: 1, createdAt: "", changedAt: "", body: "{}" };

describe("a query is held to the shop", () => {
  it.each([
    ["a list", db.selectFrom("visits").selectAll(), 'select * from "visits" where "visits"."shopId" = ?'],
    [
      "with its own condition, an or among it",
      db
        .selectFrom("visits")
        .select("id")
        .where((is) => is.or([is("id", "=", "1"), is("state", "=", "open")])),
      'select "id" from "visits" where (("id" = ? or "state" = ?)) and "visits"."shopId" = ?',
    ],
    [
      "of several tables, one under another name",
      db.selectFrom("visits").innerJoin("tickets as t", "t.visitId", "visits.id").select("t.id"),
      'select "t"."id" from "visits" inner join "tickets" as "t" on ("t"."visitId" = "visits"."id") and "t"."shopId" = ? where "visits"."shopId" = ?',
    ],
    [
      "where rows may lack the other table's",
      db.selectFrom("balls").leftJoin("tickets", "tickets.ballId", "balls.id").select("tickets.id"),
      'select "tickets"."id" from "balls" left join "tickets" on ("tickets"."ballId" = "balls"."id") and "tickets"."shopId" = ?',
    ],
    [
      "and its subqueries",
      db
        .selectFrom("balls")
        .select("id")
        .where("id", "in", (from) => from.selectFrom("readings").select("id")),
      'select "id" from "balls" where "id" in (select "id" from "readings" where "readings"."shopId" = ?)',
    ],
    [
      "photos of balls are seen by all",
      db.selectFrom("photos").select("id"),
      'select "id" from "photos" where ("photos"."shopId" = ? or "photos"."ballId" is not null)',
    ],
    [
      "and changed by their own shop",
      db.updateTable("photos").set({ body: "{}" }).where("id", "=", "1"),
      'update "photos" set "body" = ? where ("id" = ?) and "photos"."shopId" = ?',
    ],
    ["a deletion of everything", db.deleteFrom("tickets"), 'delete from "tickets" where "tickets"."shopId" = ?'],
    ["what is everybody's", db.updateTable("bowlers").set({ body: "{}" }), 'update "bowlers" set "body" = ?'],
  ])("%s", (_, query, expected) => {
    expect(query.compile().sql).toBe(expected);
  });

  it("every table of shops, and no other, can be asked", () => {
    for (const [table, { belongsTo }] of Object.entries(TABLE_RULES)) {
      const compiled = () =>
        db
          .selectFrom(table as "visits")
          .select("id")
          .compile().sql;
      if (belongsTo === "no shop") expect(compiled, table).toThrow(/no shop's/);
      else expect(compiled().includes("shopId"), table).toBe(belongsTo !== "all shops");
    }
  });
});

describe("what is refused", () => {
  it("a row with another shop's id, alone or among others, and one with none", () => {
    expect(db.insertInto("visits").values(row).compile().sql).toMatch(/^insert into "visits"/);
    for (const table of ["visits", "bowlers", "photos", "audit"] as const) {
      const insert = db.insertInto(table as "visits");
      expect(() => insert.values([row, { ...row, shopId: "T" }]).compile(), table).toThrow(/shopId, allowed: S/);
      const { shopId: _, ...without } = row;
      expect(() => insert.values(without as typeof row).compile(), table).toThrow(/shop's id/);
    }
  });

  const wide = db as Kysely<Tables & { pg_class: { id: string } }>;
  it.each<[string, () => unknown]>([
    ["a row that goes to another shop", () => db.updateTable("visits").set({ shopId: "T" }).compile()],
    ["a table without a rule", () => wide.selectFrom("pg_class").selectAll().compile()],
    [
      "rows out of a query",
      () =>
        db
          .insertInto("visits")
          .columns(["id", "shopId"])
          .expression((from) => from.selectFrom("visits").select(["id", "shopId"]))
          .compile(),
    ],
    [
      "a conflict that writes over a row",
      () =>
        db
          .insertInto("visits")
          .values(row)
          .onConflict((on) => on.column("id").doUpdateSet({ body: "{}" }))
          .compile(),
    ],
    ["a replacement", () => db.replaceInto("visits").values(row).compile()],
    [
      "a common table",
      () =>
        db
          .with("v", (from) => from.selectFrom("visits").selectAll())
          .selectFrom("v")
          .selectAll()
          .compile(),
    ],
    ["a union", () => db.selectFrom("visits").select("id").union(db.selectFrom("tickets").select("id")).compile()],
    ["a join without a condition", () => db.selectFrom("balls").crossJoin("visits").select("visits.id").compile()],
    ["a raw table", () => db.selectFrom(sql<{ id: string }>`visits`.as("v")).selectAll().compile()],
    ["a change out of another table", () => db.updateTable("balls").from("visits").set({ body: "{}" }).compile()],
    ["a change of the schema", () => db.schema.dropTable("visits").compile()],
  ])("%s", (_, query) => {
    expect(query).toThrow(TypeError);
  });

  it("a raw statement", async () => {
    await expect(sql`select * from visits`.execute(db)).rejects.toThrow(/acrossShops/);
  });
});
