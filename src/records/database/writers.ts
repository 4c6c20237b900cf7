import { FORMAT, LEAST_WRITER } from "./format.ts";
import type { Db } from "./tables.ts";
import { type Runner, transaction } from "./transaction.ts";

const LEAST = "least writer";

/** Which program asks older ones only to read, where there is one that this program is older than; null where this program may write. */
export async function newerWriter(db: Db): Promise<string | null> {
  const row = await db.selectFrom("writers").selectAll().where("name", "=", LEAST).executeTakeFirst();
  return row === undefined || row.format <= FORMAT ? null : row.program;
}

/** Says what the least is that a program must know to write here. It never goes down. */
export async function sayLeastWriter(runner: Runner, program: string): Promise<void> {
  const before = await runner.db.selectFrom("writers").select("format").where("name", "=", LEAST).executeTakeFirst();
  if (before !== undefined && before.format >= LEAST_WRITER) return;
  await transaction(runner, async (db) => {
    await db.deleteFrom("writers").where("name", "=", LEAST).where("format", "<", LEAST_WRITER).execute();
    await db
      .insertInto("writers")
      .values({ name: LEAST, format: LEAST_WRITER, program })
      .onConflict((conflict) => conflict.doNothing())
      .execute();
  });
}
