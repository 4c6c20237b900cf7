import { createHash } from "node:crypto";
import { DummyDriver, Kysely, SqliteAdapter, SqliteIntrospector, SqliteQueryCompiler } from "kysely";
import { afterAll, expect, it } from "vitest";
import { migrate, schemaState } from "#records/database/migrate";
import type { Step } from "#records/database/migrations/step";
import { STEPS } from "#records/database/migrations/steps";
import { openPostgres } from "#records/database/postgres";
import { openSqlite } from "#records/database/sqlite";
import type { Db, EngineName, Tables } from "#records/database/tables";
import { uuid7Source } from "#records/uuid7";
import { testPostgres } from "./postgres.ts";

/** What the released steps say, as sums of their statements. A sum here is never changed: a step that has been released is frozen. */
const FROZEN: Readonly<Record<string, string>> = {
  "001 first tables": "748d74986c81a665",
  "002 several shops and servers": "de9d04994e23c1fd",
  "003 accounts": "174126c04c43203b",
  "004 who began a session": "0198092b30193a00",
  "005 versions of what is kept": "2db7595fb8f76d68",
  "006 what a PIN opened": "442cd64010dd4401",
};

async function statementsOf(step: Step, engine: EngineName): Promise<string[]> {
  const statements: string[] = [];
  const db = new Kysely<Tables>({
    dialect: {
      createAdapter: () => new SqliteAdapter(),
      createDriver: () => new DummyDriver(),
      createIntrospector: (inside) => new SqliteIntrospector(inside),
      createQueryCompiler: () => new SqliteQueryCompiler(),
    },
    log: ({ query }) => {
      statements.push(query.sql);
    },
  });
  await step.apply(db, engine);
  return statements;
}

it.each(STEPS.map((step) => [step.name, step] as const))("%s is what it was when it was released", async (name, step) => {
  const statements = [...(await statementsOf(step, "sqlite")), ...(await statementsOf(step, "postgres"))];
  expect(createHash("sha256").update(statements.join("\n")).digest("hex").slice(0, 16)).toBe(FROZEN[name]);
  // A step only adds.
  for (const statement of statements)
    expect(statement).toMatch(/^(create (unique )?(table|index)|alter table .* add column|insert|update) /);
});

const postgres = await testPostgres();
afterAll(() => postgres?.stop());

const LATER: Step = {
  name: "901 invented for this test",
  apply: async (db) => {
    await db.schema.alterTable("houses").addColumn("invented", "text").execute();
    await db.schema.createIndex("housesByInvented").on("houses").column("invented").execute();
  },
};
const BROKEN: Step = {
  name: "902 breaks in the middle",
  apply: async (db) => {
    await db.schema.createTable("halfMade").addColumn("id", "text").execute();
    throw new Error("the power went");
  },
};

async function chain(db: Db, engine: EngineName): Promise<void> {
  const runner = { db, engine, chance: () => 0.5 };
  const now = () => Date.UTC(2026, 4, 31);
  // Two programs at once, as two servers that start together.
  await Promise.all([migrate(runner, STEPS, now), migrate(runner, STEPS, now)]);
  expect((await schemaState(runner, STEPS)).at).toBe(STEPS.at(-1)?.name);
  await expect(migrate(runner, [...STEPS, LATER, BROKEN], now)).rejects.toThrow("the power went");
  const { at, pending } = await schemaState(runner, [...STEPS, LATER, BROKEN]);
  expect([at, pending.map(({ name }) => name)]).toEqual([LATER.name, [BROKEN.name]]);
  expect((await db.introspection.getTables()).map(({ name }) => name)).not.toContain("halfMade");
  await db.destroy();
}

it("the chain of steps runs on SQLite; one that breaks leaves nothing", () => chain(openSqlite(":memory:").db, "sqlite"));
it.runIf(postgres !== null)("the chain of steps runs on PostgreSQL; one that breaks leaves nothing", async () =>
  chain(openPostgres((await postgres?.newDatabase()) ?? ""), "postgres"),
);

it("ids are UUIDs of version 7 that sort as they were made, within a millisecond and when the clock is set back", () => {
  const times = [1_780_000_000_000, 1_780_000_000_000, 1_779_999_999_000, 1_780_000_000_001];
  let i = 0;
  const newId = uuid7Source(
    () => times[Math.min(i++ >> 12, 3)],
    (count) => new Uint8Array(count).fill(0xff),
  );
  const ids = Array.from({ length: 4 * 4096 }, newId);
  expect(ids.every((id) => /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/.test(id))).toBe(true);
  expect([...ids].sort()).toEqual(ids);
  expect(new Set(ids).size).toBe(ids.length);
  // RFC 9562, appendix A.6: 0x017F22E279B0 is 22 February 2022, 19:22:22 UTC.
  expect(
    uuid7Source(
      () => 1_645_557_742_000,
      () => new Uint8Array(10),
    )().slice(0, 13),
  ).toBe("017f22e2-79b0");
});
