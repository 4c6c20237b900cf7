import { RecordsFault } from "#contract/records/fault";
import { type Settings, settingsKept, settingsWritten } from "#contract/records/settings";
import type { Db } from "../database/tables.ts";
import type { Things } from "../records.ts";
import type { Session } from "../session.ts";
import type { Definition } from "./definition.ts";
import { fieldsIn } from "./rows.ts";
import { store } from "./store.ts";

/** Without settings and people no page opens, and nobody could put them right. */
export const settingsKind: Definition<Settings> = {
  kind: "settings",
  written: settingsWritten,
  kept: settingsKept,
  lookups: {},
  rescue: { shopName: "?" },
};

export function settings(session: Session): Things["settings"] {
  const stored = store(session, settingsKind);
  return {
    get: () => stored.get(session.shopId),
    change: (fields, write) =>
      session.write(write, async (inside) => {
        // A server finds its shop by this name.
        if (typeof fields.shopName === "string") await mustBeFreeName(inside.acrossShops().db, fields.shopName, session.shopId);
        return store(inside, settingsKind).change(session.shopId, fields, { by: write.by, expectedVersion: write.expectedVersion });
      }),
  };
}

export interface ShopNamed {
  readonly id: string;
  readonly name: string;
}

/** In the order in which they were made. @param db over all shops */
export async function shopsIn(db: Db): Promise<ShopNamed[]> {
  const rows = await db.selectFrom("settings").select(["id", "body"]).orderBy("id").execute();
  return rows.map(({ id, body }) => ({ id, name: String(fieldsIn(body)?.shopName ?? id) }));
}

/** @throws {RecordsFault} `refused` where another shop of the database has the name */
export async function mustBeFreeName(db: Db, name: string, ofShop: string | null): Promise<void> {
  if (!(await shopsIn(db)).some((shop) => shop.id !== ofShop && shop.name === name.trim())) return;
  throw new RecordsFault("refused", "shop", { problems: [{ path: "shopName", value: name, allowed: "a name that no shop here has" }] });
}
