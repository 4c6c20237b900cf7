import { RecordsFault } from "#contract/records/fault";
import type { Db } from "../database/tables.ts";

/** @throws {RecordsFault} `frozen` where these records were moved elsewhere, or have not wholly come from there yet */
export async function mustBeHere(db: Db): Promise<void> {
  const mark = await db.selectFrom("moves").selectAll().where("way", "in", ["moved away", "being filled"]).executeTakeFirst();
  if (mark === undefined) return;
  const { way, at, other } = mark;
  if (way === "moved away")
    throw new RecordsFault("frozen", `moved to ${other} on ${at}`, {
      problems: [{ path: "records", value: at, allowed: `those in ${other}; to take these back: gritwright move --take-back --from …` }],
    });
  throw new RecordsFault("frozen", `still being filled from ${other}, since ${at}`, {
    problems: [{ path: "records", value: at, allowed: `these, once gritwright move --from ${other} --to … has ended` }],
  });
}
