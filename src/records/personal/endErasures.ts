import type { ShopFolder } from "../folder.ts";
import type { Session } from "../session.ts";
import { erase } from "./erase.ts";
import { erasuresOf } from "./ledger.ts";

/** Ends erasures that the ledger knows and the database does not: it was restored, or the power went in between. */
export async function endErasures(session: Session, folder: ShopFolder): Promise<void> {
  for (const erasure of erasuresOf(folder)) {
    const row = await session.db
      .selectFrom("bowlers")
      .select("body")
      .where("id", "=", erasure.bowlerId)
      .where("shopId", "=", session.shopId)
      .executeTakeFirst();
    if (row === undefined || JSON.parse(row.body).erasedAt !== null) continue;
    const person = await session.db.selectFrom("people").select("id").where("id", "=", erasure.by).executeTakeFirst();
    // A database from before that person came: whoever is there stands for it.
    const by = person?.id ?? (await session.db.selectFrom("people").select("id").orderBy("id").executeTakeFirstOrThrow()).id;
    await erase(session, folder, { ...erasure, by });
  }
}
