import type { Session } from "../session.ts";
import { fieldsIn } from "../things/rows.ts";
import { erase } from "./erase.ts";
import type { Ledger } from "./ledger.ts";

/** Ends erasures that the ledger knows and the database does not: it was restored, or the power went in between. */
export async function endErasures(session: Session, ledger: Ledger): Promise<void> {
  const { db } = session;
  for (const erasure of await ledger.all()) {
    const row = await db.selectFrom("bowlers").select("body").where("id", "=", erasure.bowlerId).executeTakeFirst();
    if (row === undefined || typeof fieldsIn(row.body)?.erasedAt === "string") continue;
    const person = await db.selectFrom("people").select("id").where("id", "=", erasure.by).executeTakeFirst();
    // A database from before that person came, or another shop's person: whoever is there stands for it.
    const by = person?.id ?? (await db.selectFrom("people").select("id").orderBy("id").executeTakeFirstOrThrow()).id;
    await erase(session, { ...erasure, by });
  }
}
