import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { sql } from "kysely";
import { afterAll, beforeEach, describe, expect, it } from "vitest";
import { THING_KINDS } from "#contract/records/auditEntry";
import type { RecordsFault } from "#contract/records/fault";
import { restoreBackup } from "#records/backup/restoreBackup";
import { verifyBackup } from "#records/backup/verifyBackup";
import { TABLE_RULES } from "#records/database/tableRules";
import { shopFolder } from "#records/folder";
import { openRecords } from "#records/openRecords";
import { PNG } from "./pictures.ts";
import { testPostgres } from "./postgres.ts";
import { databaseOf, onTheCounter, refusal, type TestShop, testShop, twoShops } from "./shop.ts";

/*
 * Backups of a PostgreSQL database, put back into a folder and into PostgreSQL. Both shops of the database are in them.
 */

const postgres = await testPostgres();
afterAll(() => postgres?.stop());

async function backupPath({ records, parts }: TestShop): Promise<string> {
  const { name } = await records.backups.make("asked");
  return join(shopFolder(parts.folder).backups, name);
}

/** Names of the schemas in a shop's database that are ours. */
async function schemas({ parts }: TestShop): Promise<string[]> {
  const db = databaseOf(parts);
  const { rows } = await sql<{ name: string }>`select nspname as name from pg_namespace where nspname like 'gritwright%'`.execute(db);
  await db.destroy();
  return rows.map(({ name }) => name).sort();
}

describe.runIf(postgres !== null)("a backup of PostgreSQL", () => {
  let west: TestShop;
  let east: TestShop;
  beforeEach(async () => {
    ({ west, east } = await twoShops(await postgres?.newDatabase()));
    return async () => {
      await east.end();
      await west.end();
    };
  });

  it("is of one moment, while writing goes on: no row without what it refers to", async () => {
    const { records, by } = west;
    const { visit, ball } = await onTheCounter(west);
    const receivedAt = "2026-05-31T18:00:00.000Z";
    const writing = Array.from({ length: 30 }, async () => {
      const ticket = await records.tickets.create({ visitId: visit.id, ballId: ball.id, receivedAt }, { by });
      await records.readings.create(
        { ballId: ball.id, ticketId: ticket.id, at: receivedAt, when: "before", place: "track", how: "tester", raUm: 0.4 },
        { by },
      );
    });
    // Foreign keys hold in the SQLite file that the rows are read into: a reading without its ticket would fail.
    const paths = [await backupPath(west), await backupPath(east)];
    await Promise.all(writing);
    for (const path of paths) expect((await verifyBackup(path)).counts).toMatchObject({ settings: 2, people: 2, bowlers: 1, balls: 1 });
  });

  it("names a photo that was lost, and keeps everything else", async () => {
    const { ball } = await onTheCounter(west);
    const photo = await west.records.photos.add({ ballId: ball.id, of: "serial" }, PNG, { by: west.by });
    const db = databaseOf(west.parts);
    await db.deleteFrom("files").execute();
    await db.destroy();
    expect((await verifyBackup(await backupPath(west))).missing).toEqual([`photos/${photo.sha256}.png`]);
    expect((await refusal<RecordsFault>(west.records.photos.bytes(photo.id))).kind).toBe("damaged");
  });

  it("is put back into a folder: each shop of it, photos too", async () => {
    const { ball, ticket } = await onTheCounter(west);
    const photo = await west.records.photos.add({ ballId: ball.id, of: "condition" }, PNG, { by: west.by });
    const house = await east.records.houses.create({ name: "East's" }, { by: east.by });
    const folder = mkdtempSync(join(tmpdir(), "gritwright-restored-"));
    const { postgres: _, ...parts } = { ...west.parts, folder };
    await restoreBackup(await backupPath(west), parts);
    const restored = await openRecords(parts);
    expect(await restored.tickets.get(ticket.id)).toEqual(ticket);
    expect(Buffer.from(await restored.photos.bytes(photo.id))).toEqual(PNG);
    expect((await refusal<RecordsFault>(restored.houses.get(house.id))).kind).toBe("notFound");
    await restored.close();
    const other = await openRecords({ ...parts, shop: "East" });
    expect(await other.houses.get(house.id)).toEqual(house);
    await other.close();
    rmSync(folder, { recursive: true });
  });

  it("drill: everything is as it was at the backup, and what was there before lies beside it", async () => {
    const { ball, ticket } = await onTheCounter(west);
    const photo = await west.records.photos.add({ ballId: ball.id, of: "condition" }, PNG, { by: west.by });
    const path = await backupPath(west);
    await west.records.balls.change(ball.id, { notes: "after the backup" }, { by: west.by, expectedVersion: 1 });
    await east.records.close();
    await west.records.close();
    const { safetyCopy } = await restoreBackup(path, west.parts);
    expect(await schemas(west)).toEqual(["gritwright", safetyCopy]);
    const restored = await west.reopen();
    expect(await restored.balls.get(ball.id)).toEqual(ball);
    expect(await restored.tickets.get(ticket.id)).toEqual(ticket);
    expect(Buffer.from(await restored.photos.bytes(photo.id))).toEqual(PNG);
    const db = databaseOf(west.parts);
    const { rows } = await sql<{ body: string }>`select body from ${sql.table(`${safetyCopy}.balls`)}`.execute(db);
    expect(rows[0].body).toContain("after the backup");
    await db.destroy();
    // It holds what may have been erased since, and goes.
    await restored.backups.keepUp();
    expect(await schemas(west)).toHaveLength(2);
    const later = await openRecords({ ...west.parts, now: () => west.parts.now() + 31 * 86_400_000 });
    await later.backups.keepUp();
    await later.close();
    expect(await schemas(west)).toEqual(["gritwright"]);
  });

  it("clears persons who were erased after it was made, as the table knows", async () => {
    const { bowler } = await onTheCounter(west);
    const path = await backupPath(west);
    await east.records.personal.erase(bowler.id, { by: east.by });
    await east.records.close();
    await west.records.close();
    rmSync(shopFolder(west.parts.folder).erasures, { force: true });
    await restoreBackup(path, west.parts);
    expect(await (await west.reopen()).bowlers.get(bowler.id)).toMatchObject({ name: "(erased)", phone: null });
    const db = databaseOf(west.parts);
    const { rows } = await sql<{ n: number }>`select count(*) as n from bowlers where body like '%Sandgrouse%'`.execute(db);
    expect(rows[0].n).toBe(0);
    await db.destroy();
  });

  it("is not put back while a server has the records open, or when it is damaged, and nothing is changed", async () => {
    const { ball } = await onTheCounter(west);
    const path = await backupPath(west);
    await west.records.close();
    expect((await refusal<RecordsFault>(restoreBackup(path, west.parts))).kind).toBe("busy");
    await east.records.close();
    const bytes = readFileSync(path);
    bytes.fill(0x55, 2000, 2100);
    writeFileSync(path, bytes);
    expect((await refusal<RecordsFault>(restoreBackup(path, west.parts))).kind).toBe("badBackup");
    expect(await schemas(west)).toEqual(["gritwright"]);
    expect(await (await west.reopen()).balls.get(ball.id)).toEqual(ball);
  });

  it("is not put back where the connection that keeps others out was cut meanwhile", async () => {
    const { ball } = await onTheCounter(west);
    const path = await backupPath(west);
    await west.records.close();
    await east.records.close();
    const refused = refusal<RecordsFault>(restoreBackup(path, west.parts));
    const db = databaseOf(west.parts);
    for (let cut = 0; cut === 0; await sleep(2)) {
      const { rows } = await sql`select pg_terminate_backend(pid) from pg_locks where locktype = 'advisory' and mode = 'ExclusiveLock'
        and database = (select oid from pg_database where datname = current_database())`.execute(db);
      cut = rows.length;
    }
    expect((await refused).kind).toBe("busy");
    await db.destroy();
    expect(await (await west.reopen()).balls.get(ball.id)).toEqual(ball);
  });

  it("of a folder is put into an empty PostgreSQL", async () => {
    const small = await testShop();
    const { ball } = await onTheCounter(small);
    const photo = await small.records.photos.add({ ballId: ball.id, of: "condition" }, PNG, { by: small.by });
    const { name } = await small.records.backups.make("asked");
    const parts = {
      ...small.parts,
      folder: mkdtempSync(join(tmpdir(), "gritwright-onto-")),
      postgres: (await postgres?.newDatabase()) ?? "",
    };
    expect((await restoreBackup(await small.records.backups.path(name), parts)).safetyCopy).toBeNull();
    const records = await openRecords(parts);
    expect(await records.balls.get(ball.id)).toEqual(ball);
    expect(Buffer.from(await records.photos.bytes(photo.id))).toEqual(PNG);
    await records.close();
    rmSync(parts.folder, { recursive: true });
    await small.end();
  });

  it("is made before a change of the schema, of the schema as it was", async () => {
    const { ball } = await onTheCounter(west);
    await east.records.close();
    await west.records.close();
    const db = databaseOf(west.parts);
    // As the first step left it.
    const first: readonly string[] = [...THING_KINDS, "audit", "once", "terms", "imports", "schemaSteps"];
    for (const table of Object.keys(TABLE_RULES).filter((one) => !first.includes(one))) await db.schema.dropTable(table).execute();
    for (const table of THING_KINDS) await db.schema.alterTable(table).dropColumn("schemaVersion").execute();
    await db.schema.dropIndex("termsByTerm").execute();
    await db.deleteFrom("schemaSteps").where("name", ">", "002").execute();
    await db.destroy();
    const records = await west.reopen();
    const [made] = await records.backups.list();
    expect(made.why).toBe("before migration");
    const path = join(shopFolder(west.parts.folder).backups, made.name);
    expect(await verifyBackup(path)).toMatchObject({ schema: "001 first tables", counts: { balls: 1, settings: 2 } });
    expect(await records.balls.get(ball.id)).toEqual(ball);
  });
});
