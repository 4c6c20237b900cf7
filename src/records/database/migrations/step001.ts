import { type RawBuilder, sql } from "kysely";
import type { Db, EngineName } from "../tables.ts";
import type { Step } from "./step.ts";

/** Written out and not taken from today's definitions, which change; this step does not. A value names the table that a column refers to. */
const THINGS: readonly [string, Readonly<Record<string, string | null>>][] = [
  ["settings", {}],
  ["people", { state: null }],
  ["bowlers", {}],
  ["balls", { bowlerId: "bowlers", state: null, job: null }],
  ["visits", { bowlerId: "bowlers", state: null }],
  [
    "tickets",
    { visitId: "visits", ballId: "balls", bowlerId: "bowlers", state: null, reworkOf: "tickets", receivedAt: null, readyAt: null },
  ],
  ["stagesDone", { ticketId: "tickets", personId: "people" }],
  ["referenceBalls", {}],
  ["profileFiles", { ballId: "balls", ticketId: "tickets" }],
  ["readings", { ballId: "balls", ticketId: "tickets", referenceBallId: "referenceBalls", profileFileId: "profileFiles" }],
  ["photos", { ballId: "balls", ticketId: "tickets", bowlerId: "bowlers" }],
  ["houses", {}],
  ["lanes", { houseId: "houses" }],
  ["patterns", { houseId: "houses" }],
  ["shotNotes", { bowlerId: "bowlers", ballId: "balls", houseId: "houses", laneId: "lanes", patternId: "patterns", ticketId: "tickets" }],
  ["stockItems", { kind: null, state: null }],
  ["stockMovements", { stockItemId: "stockItems", stageDoneId: "stagesDone" }],
  ["prices", {}],
  ["payments", { visitId: "visits", refundOf: "payments" }],
  ["prepaid", { bowlerId: "bowlers", visitId: "visits" }],
];

export const step001: Step = {
  name: "001 first tables",
  async apply(db, engine) {
    const text = textType(engine);
    for (const [table, lookups] of THINGS) await makeThings(db, table, lookups, text);
    await makeAudit(db, text);
    await makeOnce(db, text);
    await makeTerms(db, text);
    await db.schema
      .createTable("imports")
      .addColumn("id", text, (c) => c.primaryKey())
      .addColumn("shopId", text, (c) => c.notNull())
      .addColumn("at", text, (c) => c.notNull())
      .addColumn("by", text, (c) => c.notNull())
      .addColumn("kind", text, (c) => c.notNull())
      .addColumn("added", text, (c) => c.notNull())
      .execute();
  },
};

type TextType = RawBuilder<unknown>;

/** Text is ordered by its code units in both, or beginnings of words could not be looked up by a range. */
function textType(engine: EngineName): TextType {
  return engine === "postgres" ? sql`text collate "C"` : sql`text`;
}

async function makeThings(db: Db, table: string, lookups: Readonly<Record<string, string | null>>, text: TextType): Promise<void> {
  let making = db.schema
    .createTable(table)
    .addColumn("id", text, (c) => c.primaryKey())
    .addColumn("shopId", text, (c) => c.notNull())
    .addColumn("version", "integer", (c) => c.notNull())
    .addColumn("createdAt", text, (c) => c.notNull())
    .addColumn("changedAt", text, (c) => c.notNull())
    .addColumn("body", text, (c) => c.notNull());
  for (const [column, refersTo] of Object.entries(lookups))
    making = making.addColumn(column, text, (c) => (refersTo === null ? c : c.references(`${refersTo}.id`)));
  await making.execute();
  await db.schema.createIndex(`${table}ByShop`).on(table).columns(["shopId", "id"]).execute();
  for (const column of Object.keys(lookups))
    await db.schema.createIndex(`${table}By_${column}`).on(table).columns([column, "id"]).execute();
}

async function makeAudit(db: Db, text: TextType): Promise<void> {
  let making = db.schema.createTable("audit").addColumn("id", text, (c) => c.primaryKey());
  for (const column of ["shopId", "at", "by", "did", "kind", "thingId", "fields"])
    making = making.addColumn(column, text, (c) => c.notNull());
  await making.execute();
  await db.schema.createIndex("auditByShop").on("audit").columns(["shopId", "id"]).execute();
  await db.schema.createIndex("auditByThing").on("audit").columns(["thingId", "id"]).execute();
}

async function makeOnce(db: Db, text: TextType): Promise<void> {
  await db.schema
    .createTable("once")
    .addColumn("shopId", text, (c) => c.notNull())
    .addColumn("person", text, (c) => c.notNull())
    .addColumn("key", text, (c) => c.notNull())
    .addColumn("route", text, (c) => c.notNull())
    .addColumn("bodyHash", text, (c) => c.notNull())
    .addColumn("at", text, (c) => c.notNull())
    .addColumn("answer", text)
    .addPrimaryKeyConstraint("onceKey", ["shopId", "person", "key"])
    .execute();
}

async function makeTerms(db: Db, text: TextType): Promise<void> {
  await db.schema
    .createTable("terms")
    .addColumn("shopId", text, (c) => c.notNull())
    .addColumn("kind", text, (c) => c.notNull())
    .addColumn("thingId", text, (c) => c.notNull())
    .addColumn("term", text, (c) => c.notNull())
    .addPrimaryKeyConstraint("termsKey", ["shopId", "term", "kind", "thingId"])
    .execute();
  await db.schema.createIndex("termsByThing").on("terms").columns(["thingId"]).execute();
}
