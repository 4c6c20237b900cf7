import { RecordsFault } from "#contract/records/fault";
import { type ChangeFeed, type Noted, seenBy } from "./changeFeed/changeFeed.ts";
import { ofShop } from "./database/ofShop.ts";
import type { Db } from "./database/tables.ts";
import { momentOf, type Runner, transaction } from "./database/transaction.ts";
import { remembered } from "./once.ts";
import { type Session, type SetAsideNotes, timeOf } from "./session.ts";

interface RootParts extends Pick<Session, "shopId" | "files" | "now" | "newId"> {
  readonly setAside: SetAsideNotes;
  /** The newer program that asks this one only to read; null where it may write. */
  readonly newerProgram: string | null;
  readonly runner: Runner;
  readonly changeFeed: ChangeFeed;
}

type Narrow = (db: Db) => Db;

/** Outside any transaction: each write gets one. */
export function rootSession(parts: RootParts): Session {
  return outside(parts, toShop(parts.shopId));
}

function toShop(shopId: string): Narrow {
  return (db) => db.withPlugin(ofShop(shopId));
}

/** @param narrow holds a database to the shop, or leaves it as it is */
function outside(parts: RootParts, narrow: Narrow): Session {
  const { runner, changeFeed, shopId, files, now, newId, setAside, newerProgram } = parts;
  return {
    db: narrow(runner.db),
    engine: runner.engine,
    shopId,
    files,
    now,
    newId,
    setAside,
    async write(write, work) {
      if (newerProgram !== null) throw new RecordsFault("newerWriter", `version ${newerProgram}`);
      let noted: Noted[] = [];
      const answer = await transaction(
        runner,
        async (db) => {
          noted = [];
          const inside = within(parts, db, narrow, noted, null);
          const done = await remembered(inside, write, async () => {
            await mustBePerson(toShop(shopId)(db), write.by);
            return work(inside);
          });
          await changeFeed.announce(db, noted);
          return done;
        },
        shopId,
      );
      changeFeed.tell(seenBy(shopId, noted));
      return answer;
    },
    unnoted: (work) => transaction(runner, (db) => work(narrow(db)), shopId),
    atOneMoment: (work) => momentOf(runner, (db) => work(within(parts, db, narrow, [], setAside))),
    note: () => Promise.reject(new TypeError("a note belongs to a write")),
    noteAll: () => Promise.reject(new TypeError("a note belongs to a write")),
    acrossShops: () => outside(parts, everyShop),
  };
}

function everyShop(db: Db): Db {
  return db;
}

function within(parts: RootParts, db: Db, narrow: Narrow, noted: Noted[], setAside: SetAsideNotes | null): Session {
  const { runner, shopId, files, now, newId } = parts;
  const inside: Session = {
    db: narrow(db),
    engine: runner.engine,
    shopId,
    files,
    now,
    newId,
    setAside,
    write(write, work) {
      if (write.once !== undefined) return Promise.reject(new TypeError("a key belongs to the whole, not to a part of it"));
      return work(inside);
    },
    unnoted: (work) => work(inside.db),
    atOneMoment: (work) => work(inside),
    note: (entry) => inside.noteAll([entry]),
    async noteAll(entries) {
      const rows = entries.map(({ fields, ...entry }) => ({ ...entry, id: newId(), at: timeOf(now()), fields: JSON.stringify(fields) }));
      await inside.db.insertInto("audit").values(rows).execute();
      for (const { kind, thingId, shopId: whose } of entries) noted.push({ kind, id: thingId, shopId: whose });
    },
    acrossShops: () => within(parts, db, everyShop, noted, setAside),
  };
  return inside;
}

/** @param db held to the shop: nobody of another shop acts in this one */
async function mustBePerson(db: Db, by: string): Promise<void> {
  const person = await db.selectFrom("people").select("id").where("id", "=", by).executeTakeFirst();
  if (person !== undefined) return;
  throw new RecordsFault("refused", "by", { problems: [{ path: "by", value: by, allowed: "the id of a person of the shop" }] });
}
