import { existsSync } from "node:fs";
import { RecordsFault } from "#contract/records/fault";
import { mustBeHere } from "./carry/marks.ts";
import { isAddress, withoutPassword } from "./database/address.ts";
import { withFaults } from "./database/driverFault.ts";
import { migrate, schemaState } from "./database/migrate.ts";
import { STEPS } from "./database/migrations/steps.ts";
import { openPostgres } from "./database/postgres.ts";
import { openSqlite } from "./database/sqlite.ts";
import type { Runner } from "./database/transaction.ts";
import { shopFolder } from "./folder.ts";
import { chanceOf } from "./openDatabase.ts";
import type { RecordsParts } from "./records.ts";
import { addShop, type ShopNamed, shopsIn } from "./shop.ts";
import { uuid7Source } from "./uuid7.ts";

interface ShopsAsked extends Pick<RecordsParts, "now" | "randomBytes"> {
  /** A shop's folder, or the address of a PostgreSQL database. */
  readonly place: string;
  /** Name of one to be added; null: none. */
  readonly add: string | null;
}

/**
 * The shops of a database, in the order in which they were made, whoever may have it open.
 *
 * @throws {RecordsFault} `notFound` where a folder holds no records; `refused` where the name is taken, or the schema is older than this program;
 *   `frozen`
 */
export function listShops(asked: ShopsAsked): Promise<{ shops: ShopNamed[]; added: ShopNamed | null }> {
  return withFaults(withoutPassword(asked.place), async () => {
    const runner = open(asked);
    try {
      if (asked.add === null && (await schemaState(runner, STEPS)).at === "") return { shops: [], added: null };
      await prepare(runner, asked);
      const newId = uuid7Source(asked.now, asked.randomBytes);
      const added = asked.add === null ? null : await addShop(runner, asked.add, { newId, now: asked.now });
      return { shops: await shopsIn(runner.db), added };
    } finally {
      await runner.db.destroy();
    }
  });
}

function open(asked: ShopsAsked): Runner {
  const chance = chanceOf(asked);
  if (isAddress(asked.place)) return { db: openPostgres(asked.place), engine: "postgres", chance };
  const { database } = shopFolder(asked.place);
  if (!existsSync(database)) throw new RecordsFault("notFound", database);
  return { db: openSqlite(database).db, engine: "sqlite", chance };
}

/** A new database gets its tables; an older one is brought up to date where it is opened, after a backup. */
async function prepare(runner: Runner, { place, now }: ShopsAsked): Promise<void> {
  const { at, pending } = await schemaState(runner, STEPS);
  if (at === "") await migrate(runner, STEPS, now);
  else if (pending.length > 0)
    throw new RecordsFault("refused", withoutPassword(place), {
      problems: [{ path: "schema", value: at, allowed: `${STEPS.at(-1)?.name}: start the server once, which brings it up to date` }],
    });
  await mustBeHere(runner.db);
}
