import { resolve } from "node:path";
import { RecordsFault } from "#contract/records/fault";
import { isAddress, withoutPassword } from "../database/address.ts";
import { withFaults } from "../database/driverFault.ts";
import { knownSchema, migrate } from "../database/migrate.ts";
import { step002 } from "../database/migrations/step002.ts";
import { STEPS } from "../database/migrations/steps.ts";
import type { Db, MoveRow } from "../database/tables.ts";
import { transaction } from "../database/transaction.ts";
import { filesOfRecords } from "../tidy.ts";
import { uuid7Source } from "../uuid7.ts";
import { compareRows } from "./compareRows.ts";
import { frozen } from "./marks.ts";
import { moveFiles } from "./moveFiles.ts";
import { MOVED_TABLES, moveRows } from "./moveRows.ts";
import { isThere, mustBeUpToDate, openSide, type Side, type SideParts } from "./side.ts";

export interface MoveDone {
  /** Rows by table, each compared on both sides; null where an earlier call had ended the move already. */
  readonly counts: Readonly<Record<string, number>> | null;
  readonly files: number;
  /** Files that were lost before. */
  readonly missing: readonly string[];
}

interface MoveParts extends SideParts {
  /** Folder of a shop, or address of a PostgreSQL database. */
  readonly from: string;
  readonly to: string;
  /** Told after each batch: a table or `files`, and how many of it have been carried in this call. */
  readonly tell: (what: string, count: number) => void;
}

/**
 * Moves the records of all shops elsewhere: marks them where they are, so that no program opens them any more, carries everything over, and compares
 * every row and file. A call that was cut is called again, and goes on where it was.
 *
 * @throws {RecordsFault} `notFound`; `busy` while anybody has either side open; `refused` where there is something else already; `frozen` where they
 *   were moved elsewhere; `damaged` where something did not arrive as it was
 */
export async function moveRecords(parts: MoveParts): Promise<MoveDone> {
  const [from, to] = [whole(parts.from), whole(parts.to)];
  const [shownFrom, shownTo] = [withoutPassword(from), withoutPassword(to)];
  if (shownFrom === shownTo) throw refusedTo(shownTo, "another place than they lie in");
  if (!isThere(from)) throw new RecordsFault("notFound", shownFrom);
  return withSide(from, parts, (source) => withSide(to, parts, (target) => moved(source, target, parts)));
}

/** A place as the mark of a move names it, wherever one stands: a folder by its whole path. */
function whole(place: string): string {
  return isAddress(place) ? place : resolve(place);
}

/** Opens records again that were moved away. What was written elsewhere since is not in them. @throws {RecordsFault} `notFound`, `busy`, `refused` */
export async function takeBack(from: string, parts: SideParts): Promise<void> {
  if (!isThere(from)) throw new RecordsFault("notFound", withoutPassword(from));
  return withSide(from, parts, async (source) => {
    await mustBeUpToDate(source);
    const { numDeletedRows } = await source.db.deleteFrom("moves").where("way", "=", "moved away").executeTakeFirstOrThrow();
    if (numDeletedRows === 0n)
      throw new RecordsFault("refused", source.shown, {
        problems: [{ path: "from", value: source.shown, allowed: "records that were moved away" }],
      });
  });
}

function withSide<Answer>(place: string, parts: SideParts, work: (side: Side) => Promise<Answer>): Promise<Answer> {
  return withFaults(withoutPassword(place), async () => {
    const side = await openSide(place, parts);
    try {
      return await work(side);
    } finally {
      await side.close();
    }
  });
}

async function moved(source: Side, target: Side, parts: MoveParts): Promise<MoveDone> {
  await mustBeUpToDate(source);
  const known = await markOf(source.db, ["moved away", "being filled"]);
  if (known !== undefined && (known.way === "being filled" || known.other !== target.shown)) throw frozen(known);
  const id = known?.id ?? uuid7Source(parts.now, parts.randomBytes)();
  const state = await stateOf(target, id, source.shown);
  if (state === "ended") return { counts: null, files: 0, missing: [] };
  const at = new Date(parts.now()).toISOString();
  // The target first: cut between the two, the records are still open where they lie, and nothing can be written where they will come.
  if (known === undefined || state === "empty") await begin(target, { id, way: "being filled", at, other: source.shown }, parts);
  if (known === undefined) await source.db.insertInto("moves").values({ id, way: "moved away", at, other: target.shown }).execute();
  return carried(source, target, id, parts);
}

async function carried(source: Side, target: Side, id: string, { tell }: MoveParts): Promise<MoveDone> {
  await moveRows(source.db, target.db, MOVED_TABLES, tell);
  const there = new Set((await target.ledger.all()).map(({ bowlerId }) => bowlerId));
  for (const entry of await source.ledger.all()) if (!there.has(entry.bowlerId)) await target.ledger.add(entry);
  const names = await filesOfRecords(source.db, source.files);
  let files = 0;
  const missing = await moveFiles(source, target, names, () => {
    files += 1;
    tell("files", files);
  });
  const counts = await compareRows(source.db, target.db, MOVED_TABLES);
  await target.db.updateTable("moves").set({ way: "came from" }).where("id", "=", id).execute();
  return { counts, files: names.size - missing.length, missing };
}

/**
 * How far a target is: nothing in it that counts, this move begun or ended. What another move from the same place has left, cut or taken back, counts
 * for nothing: it never was a shop.
 *
 * @throws {RecordsFault} `refused` where something else is in it
 */
async function stateOf({ runner, db, shown }: Side, id: string, from: string): Promise<"empty" | "begun" | "ended"> {
  const { at, pending } = await knownSchema(runner, STEPS);
  if (at === "") return "empty";
  const mark = pending.includes(step002) ? undefined : await markOf(db, ["being filled", "came from"]);
  if (mark?.id === id) return mark.way === "came from" ? "ended" : "begun";
  if (mark?.way === "being filled" && mark.other === from) return "empty";
  // Its tables may have been made in part only, where that was cut.
  if (mark === undefined && (await isUntouched(db, !pending.includes(step002)))) return "empty";
  throw refusedTo(shown, "an empty place, or one where this very move was begun");
}

/** A shop as it is made, in which nobody has written anything, is nothing yet. */
async function isUntouched(db: Db, hasMoves: boolean): Promise<boolean> {
  const written = await db.selectFrom("audit").select("id").limit(1).executeTakeFirst();
  const moves = hasMoves ? await db.selectFrom("moves").select("id").limit(1).executeTakeFirst() : undefined;
  return written === undefined && moves === undefined;
}

async function begin({ runner }: Side, mark: MoveRow, { now }: MoveParts): Promise<void> {
  await migrate(runner, STEPS, now);
  await transaction(runner, async (inside) => {
    for (const table of MOVED_TABLES.toReversed()) await inside.deleteFrom(table as "bowlers").execute();
    await inside.deleteFrom("moves").where("way", "=", "being filled").execute();
    await inside.insertInto("moves").values(mark).execute();
  });
}

function markOf(db: Db, ways: readonly MoveRow["way"][]): Promise<MoveRow | undefined> {
  return db.selectFrom("moves").selectAll().where("way", "in", ways).executeTakeFirst();
}

function refusedTo(value: string, allowed: string): RecordsFault {
  return new RecordsFault("refused", value, { problems: [{ path: "to", value, allowed }] });
}
