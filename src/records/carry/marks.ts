import { RecordsFault } from "#contract/records/fault";
import type { Db, MoveRow } from "../database/tables.ts";

/** @throws {RecordsFault} `frozen` where these records were moved elsewhere, or have not wholly come from there yet */
export async function mustBeHere(db: Db): Promise<void> {
  const mark = await db.selectFrom("moves").selectAll().where("way", "in", ["moved away", "being filled"]).executeTakeFirst();
  if (mark !== undefined) throw frozen(mark);
}

export function frozen({ way, at, other }: MoveRow): RecordsFault {
  if (way === "moved away")
    return new RecordsFault("frozen", `moved to ${other} on ${at}`, {
      problems: [{ path: "records", value: at, allowed: `those in ${other}; gritwright move --take-back --from … takes these back` }],
    });
  return new RecordsFault("frozen", `being filled from ${other} since ${at}`, {
    problems: [{ path: "records", value: at, allowed: `the same once gritwright move --from ${other} --to … has ended` }],
  });
}
