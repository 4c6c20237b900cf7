import { RecordsFault } from "#contract/records/fault";
import { digitsOf, serialOf, wordsOf } from "../search/terms.ts";
import { type Session, timeOf } from "../session.ts";
import { balls } from "../things/balls.ts";
import { bowlers } from "../things/bowlers.ts";
import type { Fields } from "../things/definition.ts";
import { makeMany } from "../things/makeMany.ts";
import { fieldsIn } from "../things/rows.ts";
import { store } from "../things/store.ts";
import type { ChangeOn, Write } from "../write.ts";
import type { ImportDone, ImportKind, RowProblem } from "./lists.ts";
import { eachOf, portionsOf } from "./portions.ts";
import { type ReadRow, type ReadTable, readTable } from "./readTable.ts";

/** What would be added, what is there already, and everything that stands against it. */
export interface Judged {
  readonly table: ReadTable;
  readonly toAdd: readonly Fields[];
  readonly alreadyThere: number;
  readonly problems: readonly RowProblem[];
}

export async function judged(session: Session, kind: ImportKind, table: ReadTable): Promise<Judged> {
  const problems = [...table.problems];
  const known = await marksKept(session, kind);
  const toAdd: Fields[] = [];
  let alreadyThere = 0;
  const owners = kind === "balls" ? await bowlersByName(session) : new Map<string, string[]>();
  for await (const portion of portionsOf(table.rows))
    for (const row of portion) {
      const mark = markOf(kind, row.fields);
      if (mark !== null && known.has(mark)) {
        alreadyThere += 1;
        continue;
      }
      if (mark !== null) known.add(mark);
      toAdd.push({ ...row.fields, ...ownerOf(row, owners, problems) });
    }
  return { table, toAdd, alreadyThere, problems };
}

/** @throws {RecordsFault} `refused` with every row's problems, each at `rows.N.column` */
export async function applyImport(
  session: Session,
  kind: ImportKind,
  csv: string,
  mapping: Readonly<Record<string, string>> | undefined,
  write: Write,
): Promise<ImportDone> {
  // Before the write: what is read from the table alone keeps no other write waiting.
  const table = await readTable(kind, csv, mapping);
  return session.write(write, async (inside) => {
    const { toAdd, alreadyThere, problems } = await judged(inside, kind, table);
    if (problems.length > 0)
      throw new RecordsFault("refused", "import", {
        problems: problems.map(({ row, column, value, allowed }) => ({ path: `rows.${row}.${column}`, value, allowed })),
      });
    const added = kind === "bowlers" ? await makeMany(inside, bowlers, toAdd, write.by) : await makeMany(inside, balls, toAdd, write.by);
    const importId = inside.newId();
    const { shopId, now } = inside;
    await inside.db
      .insertInto("imports")
      .values({ id: importId, shopId, at: timeOf(now()), by: write.by, kind, added: JSON.stringify(added) })
      .execute();
    return { importId, added: added.length, alreadyThere };
  });
}

/** @throws {RecordsFault} `notFound`; `refused` where something that was imported has been changed or used since */
export function undoImport(session: Session, importId: string, write: Write): Promise<number> {
  return session.write(write, async (inside) => {
    const { db } = inside;
    const row = await db.selectFrom("imports").selectAll().where("id", "=", importId).executeTakeFirst();
    if (row === undefined) throw new RecordsFault("notFound", `import ${importId}`);
    const added: string[] = JSON.parse(row.added);
    // Version 1 is what the import made: a thing that has been changed since is somebody's work.
    const asMade: ChangeOn = { by: write.by, expectedVersion: 1 };
    for await (const portion of portionsOf(added)) for (const id of portion) await remove(inside, row.kind as ImportKind, id, asMade);
    await db.deleteFrom("imports").where("id", "=", importId).execute();
    return added.length;
  });
}

function remove(session: Session, kind: ImportKind, id: string, write: ChangeOn): Promise<void> {
  return kind === "bowlers" ? store(session, bowlers).remove(id, write) : store(session, balls).remove(id, write);
}

/** What tells two bowlers or balls apart: a serial; a name with a number. Null where nothing does, and the row is then added. */
function markOf(kind: ImportKind, fields: Fields): string | null {
  if (kind === "balls") return typeof fields.serial === "string" ? serialOf(fields.serial) : null;
  const number = typeof fields.phone === "string" ? digitsOf(fields.phone) : "";
  const email = typeof fields.email === "string" ? fields.email.toLowerCase() : "";
  return number === "" && email === "" ? null : `${wordsOf(String(fields.name)).join(" ")}|${number}|${email}`;
}

async function marksKept({ db }: Session, kind: ImportKind): Promise<Set<string>> {
  const rows = await db.selectFrom(kind).select("body").execute();
  return new Set((await eachOf(rows, ({ body }) => markOf(kind, fieldsIn(body) ?? {}))).filter((mark) => mark !== null));
}

async function bowlersByName({ db }: Session): Promise<Map<string, string[]>> {
  const byName = new Map<string, string[]>();
  await eachOf(await db.selectFrom("bowlers").select(["id", "body"]).execute(), ({ id, body }) => {
    const name = wordsOf(String(fieldsIn(body)?.name ?? "")).join(" ");
    const ids = byName.get(name);
    if (ids === undefined) byName.set(name, [id]);
    else ids.push(id);
  });
  return byName;
}

function ownerOf({ row, owner }: ReadRow, owners: ReadonlyMap<string, readonly string[]>, problems: RowProblem[]): Fields {
  if (owner === null) return {};
  const found = owners.get(wordsOf(owner).join(" ")) ?? [];
  if (found.length === 1) return { bowlerId: found[0] };
  problems.push({
    row,
    column: "owner",
    value: owner,
    allowed: found.length === 0 ? "the name of a bowler that is kept" : "a name that only one bowler has",
  });
  return {};
}
