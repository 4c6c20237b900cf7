import type { Database } from "better-sqlite3";
import { accounts } from "./accounts/allAccounts.ts";
import { USUAL_COST } from "./accounts/hasher.ts";
import { hasherThread } from "./accounts/hasherThread.ts";
import { backups } from "./backup/makeBackup.ts";
import { bringUpToDate } from "./bringUpToDate.ts";
import { withFaults } from "./database/driverFault.ts";
import { schemaState } from "./database/migrate.ts";
import { STEPS } from "./database/migrations/steps.ts";
import { openPostgres } from "./database/postgres.ts";
import { openSqlite } from "./database/sqlite.ts";
import type { Runner } from "./database/transaction.ts";
import { prepareFolder, type ShopFolder, shopFolder } from "./folder.ts";
import { lists } from "./lists/allLists.ts";
import { endErasures } from "./personal/endErasures.ts";
import { personal } from "./personal/ofBowler.ts";
import type { Records, RecordsParts } from "./records.ts";
import { search } from "./search/find.ts";
import { rootSession, type Written } from "./session.ts";
import { shopOf } from "./shop.ts";
import { allThings } from "./things/allThings.ts";
import { tidy } from "./tidy.ts";
import { uuid7Source } from "./uuid7.ts";

/**
 * Opens the records of a shop, and makes them where there are none. A schema of an older program is brought up to date, after a backup.
 *
 * @throws {RecordsFault} `damaged`, `newerSchema`, `readOnly`, `busy`, `full`, `notReachable`, naming the file or folder
 */
export function openRecords(parts: RecordsParts): Promise<Records> {
  const folder = shopFolder(parts.folder);
  return withFaults(parts.postgres === undefined ? folder.database : "the PostgreSQL database", async () => {
    prepareFolder(folder);
    const { runner, raw } = openDatabase(parts, folder);
    try {
      const backup = backups({ runner, raw, folder, now: parts.now, programVersion: parts.programVersion });
      await bringUpToDate(runner, backup, STEPS, parts.now);
      return await assembled(parts, runner, folder, backup);
    } catch (error) {
      await runner.db.destroy();
      throw error;
    }
  });
}

/** The database alone. `raw` is the SQLite connection under it; PostgreSQL has none. */
function openDatabase({ postgres, randomBytes }: RecordsParts, folder: ShopFolder): { runner: Runner; raw: Database | null } {
  const chance = () => new DataView(randomBytes(4).slice().buffer).getUint32(0) / 2 ** 32;
  if (postgres !== undefined) return { runner: { db: openPostgres(postgres), engine: "postgres", chance }, raw: null };
  const { db, raw } = openSqlite(folder.database);
  return { runner: { db, engine: "sqlite", chance }, raw };
}

async function assembled(parts: RecordsParts, runner: Runner, folder: ShopFolder, backup: Records["backups"]): Promise<Records> {
  const { now, randomBytes } = parts;
  const newId = uuid7Source(now, randomBytes);
  const shopId = await shopOf(runner, parts.shopId, newId, now);
  const watchers = new Set<(written: Written) => void>();
  const tell = (written: Written) => {
    for (const watcher of watchers) watcher(written);
  };
  const session = rootSession({ runner, shopId, now, newId, tell });
  await endErasures(session, folder);
  const hasher = parts.hasher ?? hasherThread(USUAL_COST, randomBytes);
  return {
    ...allThings(session, folder.live),
    accounts: accounts({ session, randomBytes, hasher }),
    together: (write, work) => session.write(write, (inside) => work(allThings(inside, folder.live))),
    search: search(session),
    personal: personal(session, folder),
    backups: {
      ...backup,
      async keepUp() {
        await withFaults(folder.live, () => tidy(session, folder));
        return backup.keepUp();
      },
    },
    lists: lists(session),
    watch(watcher) {
      watchers.add(watcher);
      return () => {
        watchers.delete(watcher);
      };
    },
    health: () => withFaults("the database", async () => ({ engine: runner.engine, schema: (await schemaState(runner, STEPS)).at })),
    async close() {
      await hasher.close();
      await runner.db.destroy();
    },
  };
}
