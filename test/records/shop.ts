import { randomBytes } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { hasherHere } from "#records/accounts/hasher";
import { openPostgres } from "#records/database/postgres";
import { openSqlite } from "#records/database/sqlite";
import type { Db } from "#records/database/tables";
import { shopFolder } from "#records/folder";
import { openRecords } from "#records/openRecords";
import type { Records, RecordsParts } from "#records/records";
import { addShopTo } from "#records/shopsOf";

/** Passwords of tests are nobody's: a hash of a millisecond will do. */
export const cheapHasher = hasherHere({ memoryKib: 64, passes: 1 }, randomBytes);

export interface TestShop {
  readonly records: Records;
  readonly parts: RecordsParts;
  /** The person who does everything. */
  readonly by: string;
  /** Closes the records and opens them again, as another start of the program would. */
  reopen(): Promise<Records>;
  end(): Promise<void>;
}

/** An empty shop in a folder of its own, with a clock that goes a second on at every look. */
export async function testShop(
  options: { readonly postgres?: string; readonly folder?: string; readonly shop?: string } = {},
): Promise<TestShop> {
  const folder = options.folder ?? mkdtempSync(join(tmpdir(), "gritwright-records-"));
  let clock = Date.UTC(2026, 4, 31, 18, 0, 0);
  const now = () => {
    clock += 1000;
    return clock;
  };
  const postgres = options.postgres === undefined ? {} : { postgres: options.postgres };
  const named = options.shop === undefined ? {} : { shop: options.shop };
  const parts: RecordsParts = { folder, ...postgres, ...named, now, randomBytes, hasher: cheapHasher, programVersion: "0.0.0-test" };
  let records = await openRecords(parts);
  const { items } = await records.people.list({ order: "oldest first" });
  return {
    records,
    parts,
    by: items[0].id,
    async reopen() {
      await records.close();
      records = await openRecords(parts);
      return records;
    },
    async end() {
      await records.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** Two shops, West and East, in one database: each opened by a server of its own, with PostgreSQL also in a folder of its own. */
export async function twoShops(postgres?: string): Promise<{ west: TestShop; east: TestShop }> {
  const at = postgres === undefined ? {} : { postgres };
  const west = await testShop({ ...at, shop: "West" });
  const { now } = west.parts;
  await addShopTo({ place: postgres ?? west.parts.folder, now, randomBytes }, "East");
  const east = await testShop({ ...at, ...(postgres === undefined ? { folder: west.parts.folder } : {}), shop: "East" });
  return { west, east };
}

/** The database itself, past the records; for whoever looks at rows of all shops. */
export function databaseOf({ folder, postgres }: RecordsParts): Db {
  return postgres === undefined ? openSqlite(shopFolder(folder).database).db : openPostgres(postgres);
}

/** What a promise is refused with; fails where it is not. */
export async function refusal<Fault>(promise: Promise<unknown>): Promise<Fault> {
  const outcome = await promise.then(
    (answer) => ({ answer }),
    (fault: Fault) => ({ fault }),
  );
  if ("fault" in outcome) return outcome.fault;
  throw new Error(`expected a refusal, got ${JSON.stringify(outcome.answer)}`);
}

/** An invented bowler with a ball in a visit, and the ball's ticket. */
export async function onTheCounter({ records, by }: Pick<TestShop, "records" | "by">) {
  const bowler = await records.bowlers.create(
    { name: "Ottilie Sandgrouse", phone: "+1 (555) 0101-234", notes: "Prefers Tuesdays" },
    { by },
  );
  const ball = await records.balls.create({ name: "Grey Heron", serial: "QX-7731 904", cover: "solid", bowlerId: bowler.id }, { by });
  const visit = await records.visits.create({ bowlerId: bowler.id, arrivedAt: "2026-05-31T18:00:00.000Z", currency: "USD" }, { by });
  const ticket = await records.tickets.create(
    { visitId: visit.id, ballId: ball.id, receivedAt: "2026-05-31T18:00:00.000Z", complaint: "Hooks early and hits weak" },
    { by },
  );
  return { bowler, ball, visit, ticket };
}
