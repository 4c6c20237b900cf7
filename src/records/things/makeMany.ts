import type { Kept } from "#contract/records/fields";
import { portionsOf } from "../lists/portions.ts";
import type { Session } from "../session.ts";
import type { Definition, Fields } from "./definition.ts";
import { rowOf } from "./rows.ts";
import { readied, termRows } from "./store.ts";

/** Rows of one statement: the parameters of as many stay far below what a database takes. */
const OF_ONE_STATEMENT = 200;

/**
 * Makes many new things of one kind in the write that is open, a portion at a time, so that others are served in between and the write is soon over.
 * Kinds that write something else beside themselves are not made so.
 *
 * @param checked fields as they have been checked
 * @returns their ids
 * @throws {RecordsFault} `refused`
 */
export async function makeMany<Thing extends Kept>(
  inside: Session,
  definition: Definition<Thing>,
  checked: readonly Fields[],
  by: string,
): Promise<string[]> {
  const { kind } = definition;
  const ids: string[] = [];
  for await (const portion of portionsOf(checked, OF_ONE_STATEMENT)) {
    const things: Thing[] = [];
    for (const fields of portion) things.push(await readied(inside, definition, fields, {}));
    await inside.db
      .insertInto(kind as "bowlers")
      .values(things.map((thing) => rowOf(definition, thing)))
      .execute();
    for await (const terms of portionsOf(
      things.flatMap((thing) => termRows(inside, definition, thing)),
      OF_ONE_STATEMENT,
    ))
      await inside.db
        .insertInto("terms")
        .values([...terms])
        .execute();
    await inside.noteAll(
      things.map(({ id }, i) => ({ shopId: inside.shopId, by, did: "create", kind, thingId: id, fields: Object.keys(portion[i]) })),
    );
    ids.push(...things.map(({ id }) => id));
  }
  return ids;
}
