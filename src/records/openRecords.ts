import { RecordsFault } from "#contract/records/fault";
import { accounts } from "./accounts/allAccounts.ts";
import { USUAL_COST } from "./accounts/hasher.ts";
import { hasherThread } from "./accounts/hasherThread.ts";
import { type AllBackups, backups } from "./backup/makeBackup.ts";
import { bringUpToDate } from "./bringUpToDate.ts";
import { withFaults } from "./database/driverFault.ts";
import { identityOf } from "./database/fileIdentity.ts";
import { schemaState } from "./database/migrate.ts";
import { STEPS } from "./database/migrations/steps.ts";
import { type ShopFolder, shopFolder } from "./folder.ts";
import { lists } from "./lists/allLists.ts";
import { mustBeHere } from "./move/marks.ts";
import { type OpenDatabase, openDatabase } from "./openDatabase.ts";
import { endErasures } from "./personal/erase.ts";
import { personal } from "./personal/ofBowler.ts";
import { olderCopies } from "./personal/olderCopies.ts";
import type { Records, RecordsParts } from "./records.ts";
import { rootSession } from "./rootSession.ts";
import { search } from "./search/find.ts";
import type { Session } from "./session.ts";
import { shopOf } from "./shop.ts";
import { allThings } from "./things/allThings.ts";
import { setAsideNotes } from "./things/setAside.ts";
import { shopsIn } from "./things/settings.ts";
import { unreadable } from "./things/unreadable.ts";
import { tidy } from "./tidy.ts";
import { uuid7Source } from "./uuid7.ts";

/**
 * Opens the records of a shop, and makes them where there are none. A schema of an older program is brought up to date, after a backup.
 *
 * @throws {RecordsFault} `damaged`, `newerSchema`, `readOnly`, `busy`, `full`, `notReachable`, naming the file or folder; `frozen` where they were
 *   moved elsewhere; `notFound`, `refused` where there are several shops and none of them, or more than one, is meant
 */
export function openRecords(parts: RecordsParts): Promise<Records> {
  const folder = shopFolder(parts.folder);
  return withFaults(parts.postgres === undefined ? folder.database : "the PostgreSQL database", async () => {
    const database = await openDatabase(parts, folder);
    try {
      const { now, programVersion, postgres } = parts;
      const from = postgres === undefined ? ({ file: identityOf(folder.database) } as const) : ({ postgres } as const);
      const { mustBeThere } = database.runner;
      const there = mustBeThere === undefined ? {} : { mustBeThere };
      const backup = backups({ folder, now, programVersion, from, ...there });
      await mustBeHere(database.runner);
      const newerProgram = await bringUpToDate(database.runner, backup, STEPS, { now, programVersion });
      return await assembled(parts, database, folder, { backup, newerProgram });
    } catch (error) {
      await database.close();
      throw error;
    }
  });
}

interface Opened {
  readonly backup: AllBackups;
  readonly newerProgram: string | null;
}

async function assembled(
  parts: RecordsParts,
  database: OpenDatabase,
  folder: ShopFolder,
  { backup, newerProgram }: Opened,
): Promise<Records> {
  const { runner, files, ledger, changeFeed } = database;
  const { now, randomBytes } = parts;
  const newId = uuid7Source(now, randomBytes);
  const shopId = await shopOf(runner, parts.shop, { newId, now });
  changeFeed.hear(shopId);
  const setAside = setAsideNotes();
  const session = rootSession({ runner, shopId, files, changeFeed, now, newId, setAside, newerProgram });
  if (newerProgram === null) await endErasures(session, ledger);
  const hasher = parts.hasher ?? hasherThread(USUAL_COST, randomBytes);
  return {
    ...allThings(session),
    accounts: accounts({ session, randomBytes, hasher }),
    together: (write, work) => session.write(write, (inside) => work(allThings(inside))),
    search: search(session),
    personal: personal(session, ledger, () => olderCopies(runner, folder, backup)),
    backups: {
      ...backup,
      async path(name) {
        await mustBeOnlyShop(session);
        return backup.path(name);
      },
      async verify(name) {
        const report = await backup.verify(name);
        // How many there are in the other shops is theirs.
        return (await isOnlyShop(session)) ? report : { ...report, counts: {} };
      },
      async send(name) {
        await mustBeOnlyShop(session);
        return backup.send(name);
      },
      async keepUp() {
        const tidied =
          newerProgram === null ? withFaults(folder.root, () => tidy({ runner, files, folder, now: now() })) : Promise.resolve();
        // What keeps it from being tidied must not keep a backup from being made, or from being said to have failed.
        const kept = await tidied.catch(() => {}).then(() => backup.keepUp());
        await tidied;
        return kept;
      },
    },
    lists: lists(session),
    unreadable: unreadable(session, setAside),
    newerProgram,
    watch: changeFeed.watch,
    health: () =>
      withFaults("the database", async () => {
        runner.mustBeThere?.();
        return { engine: runner.engine, schema: (await schemaState(runner, STEPS)).at };
      }),
    async close() {
      await Promise.all([hasher.close(), backup.close()]);
      await database.close();
    },
  };
}

/** A backup holds every shop of the database, and is not handed to the people of one. */
async function isOnlyShop(session: Session): Promise<boolean> {
  return (await shopsIn(session.acrossShops().db)).length === 1;
}

async function mustBeOnlyShop(session: Session): Promise<void> {
  if (await isOnlyShop(session)) return;
  const problem = { path: "name", value: null, allowed: "a backup of one shop: this one holds several, and lies in the server's folder" };
  throw new RecordsFault("refused", "backup", { problems: [problem] });
}
