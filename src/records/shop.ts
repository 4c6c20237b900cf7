import { RecordsFault } from "#contract/records/fault";
import { type Runner, transaction } from "./database/transaction.ts";
import { people } from "./things/plainKinds.ts";
import { rowOf } from "./things/rows.ts";
import { settingsKind } from "./things/settings.ts";

/** The shop whose records these are: the one asked for, the only one, or a new one with one person, to be named later. */
export function shopOf(runner: Runner, asked: string | undefined, newId: () => string, now: () => number): Promise<string> {
  return transaction(runner, async (db) => {
    const shops = await db.selectFrom("settings").select("id").limit(2).execute();
    if (asked !== undefined) {
      const row = await db.selectFrom("settings").select("id").where("id", "=", asked).executeTakeFirst();
      if (row === undefined) throw new RecordsFault("notFound", `shop ${asked}`);
      return asked;
    }
    if (shops.length > 1)
      throw new RecordsFault("refused", "shopId", {
        problems: [{ path: "shopId", value: null, allowed: "the id of one of several shops" }],
      });
    if (shops.length === 1) return shops[0].id;
    const id = newId();
    const at = new Date(now()).toISOString();
    const kept = { shopId: id, version: 1, createdAt: at, changedAt: at };
    const settings = settingsKind.kept.parse({ ...kept, id, shopName: "My shop" });
    const person = people.kept.parse({ ...kept, id: newId(), name: "Technician", initials: "T" });
    await db.insertInto("settings").values(rowOf(settingsKind, settings)).execute();
    await db.insertInto("people").values(rowOf(people, person)).execute();
    return id;
  });
}
