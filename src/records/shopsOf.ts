import { existsSync } from "node:fs";
import { RecordsFault } from "#contract/records/fault";
import { isAddress, withoutPassword } from "./database/address.ts";
import { withFaults } from "./database/driverFault.ts";
import { knownSchema, migrate } from "./database/migrate.ts";
import { STEPS } from "./database/migrations/steps.ts";
import { openPostgres } from "./database/postgres.ts";
import { openSqlite } from "./database/sqlite.ts";
import type { Runner } from "./database/transaction.ts";
import { shopFolder } from "./folder.ts";
import { mustBeHere } from "./move/marks.ts";
import { chanceOf } from "./openDatabase.ts";
import type { RecordsParts } from "./records.ts";
import { addShop } from "./shop.ts";
import { type ShopNamed, shopsIn } from "./things/settings.ts";
import { uuid7Source } from "./uuid7.ts";

interface PlaceParts extends Pick<RecordsParts, "now" | "randomBytes"> {
  /** A shop's folder, or the address of a PostgreSQL database. */
  readonly place: string;
}

/**
 * The shops of a database, in the order in which they were made, whoever may have it open. Nothing is written.
 *
 * @throws {RecordsFault} `notFound` where a folder holds no records; `newerSchema`, `notReachable`
 */
export function shopsOf(parts: PlaceParts): Promise<ShopNamed[]> {
  return withDatabase(parts, async (runner) => ((await knownSchema(runner, STEPS)).at === "" ? [] : shopsIn(runner.db)));
}

/**
 * Adds a shop, with one person, to a database, whoever may have it open; a new database gets its tables.
 *
 * @throws {RecordsFault} as `shopsOf`; `refused` where the name is taken, or the schema is older than this program; `frozen`
 */
export function addShopTo(parts: PlaceParts, name: string): Promise<ShopNamed> {
  const { place, now, randomBytes } = parts;
  return withDatabase(parts, async (runner) => {
    const { at, pending } = await knownSchema(runner, STEPS);
    if (at === "") await migrate(runner, STEPS, now);
    else if (pending.length > 0)
      throw new RecordsFault("refused", withoutPassword(place), {
        problems: [{ path: "schema", value: at, allowed: `${STEPS.at(-1)?.name}: start the server once, which brings it up to date` }],
      });
    await mustBeHere(runner);
    return addShop(runner, name, { newId: uuid7Source(now, randomBytes), now });
  });
}

function withDatabase<Answer>(parts: PlaceParts, work: (runner: Runner) => Promise<Answer>): Promise<Answer> {
  return withFaults(withoutPassword(parts.place), async () => {
    const runner = open(parts);
    try {
      return await work(runner);
    } finally {
      await runner.db.destroy();
    }
  });
}

function open(parts: PlaceParts): Runner {
  const chance = chanceOf(parts);
  if (isAddress(parts.place)) return { db: openPostgres(parts.place), engine: "postgres", chance };
  const { database } = shopFolder(parts.place);
  if (!existsSync(database)) throw new RecordsFault("notFound", database);
  return { db: openSqlite(database).db, engine: "sqlite", chance };
}
