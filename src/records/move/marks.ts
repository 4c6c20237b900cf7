import { RecordsFault } from "#contract/records/fault";
import { schemaState } from "../database/migrate.ts";
import { step002 } from "../database/migrations/step002.ts";
import { STEPS } from "../database/migrations/steps.ts";
import type { MoveRow } from "../database/tables.ts";
import type { Runner } from "../database/transaction.ts";

/** @throws {RecordsFault} `frozen` where these records were moved elsewhere, or have not wholly come from there yet */
export async function mustBeHere(runner: Runner): Promise<void> {
  const { at, pending } = await schemaState(runner, STEPS);
  // A schema from before there were such marks has none.
  if (at === "" || pending.includes(step002)) return;
  const mark = await runner.db.selectFrom("moves").selectAll().where("way", "in", ["moved away", "being filled"]).executeTakeFirst();
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
