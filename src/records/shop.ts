import { RecordsFault } from "#contract/records/fault";
import { id as idSchema } from "#contract/records/fields";
import { settingsWritten } from "#contract/records/settings";
import type { Db } from "./database/tables.ts";
import { type Runner, transaction } from "./database/transaction.ts";
import { people } from "./things/plainKinds.ts";
import { checkedFields, rowOf } from "./things/rows.ts";
import { mustBeFreeName, type ShopNamed, settingsKind, shopsIn } from "./things/settings.ts";

/*
 * The shops of a database: this is done before any of them has been opened, and so over all of them.
 */

interface Making {
  readonly newId: () => string;
  readonly now: () => number;
}

/**
 * The shop whose records these are: the one asked for by id or name, the only one, or a new one, to be named later.
 *
 * @throws {RecordsFault} `notFound`; `refused` where several could be meant
 */
export function shopOf(runner: Runner, asked: string | undefined, making: Making): Promise<string> {
  return transaction(runner, async (db) => {
    const shops = await shopsIn(db);
    const meant = asked === undefined ? shops : shops.filter(({ id, name }) => id === asked || name === asked);
    if (meant.length === 1) return meant[0].id;
    const allowed = shops.map(({ id, name }) => `${name} (${id})`).join(", ");
    if (meant.length > 1)
      throw new RecordsFault("refused", "shop", {
        problems: [{ path: "shop", value: asked ?? null, allowed: `the name or id of one of several shops: ${allowed}` }],
      });
    if (asked !== undefined && (shops.length > 0 || idSchema.safeParse(asked).success))
      throw new RecordsFault("notFound", `shop ${asked}`, { problems: [{ path: "shop", value: asked, allowed }] });
    return insertShop(db, asked ?? "My shop", making);
  });
}

/** Adds a shop to a database, with one person. @throws {RecordsFault} `refused` where the name is taken, or none */
export function addShop(runner: Runner, name: string, making: Making): Promise<ShopNamed> {
  return transaction(runner, async (db) => {
    await mustBeFreeName(db, name, null);
    return { id: await insertShop(db, name, making), name };
  });
}

async function insertShop(db: Db, shopName: string, { newId, now }: Making): Promise<string> {
  const id = newId();
  const at = new Date(now()).toISOString();
  const kept = { shopId: id, version: 1, createdAt: at, changedAt: at };
  const settings = settingsKind.kept.parse({ ...kept, id, ...checkedFields(settingsWritten, { shopName }, "settings") });
  const person = people.kept.parse({ ...kept, id: newId(), name: "Technician", initials: "T" });
  await db.insertInto("settings").values(rowOf(settingsKind, settings)).execute();
  await db.insertInto("people").values(rowOf(people, person)).execute();
  return id;
}
