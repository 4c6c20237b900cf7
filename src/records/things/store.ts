import type { AuditEntry, ThingKind } from "#contract/records/auditEntry";
import { RecordsFault } from "#contract/records/fault";
import type { Kept } from "#contract/records/fields";
import type { Problem } from "#engine/fault";
import { withFaults } from "../database/driverFault.ts";
import type { Db, ThingRow } from "../database/tables.ts";
import type { Page, PageAsked, Removable } from "../records.ts";
import { type Session, timeOf } from "../session.ts";
import type { ChangeOn, Write } from "../write.ts";
import type { Definition, Fields } from "./definition.ts";
import { checkedFields, rowOf, thingOf } from "./rows.ts";

const USUAL_LIMIT = 50;
const MOST_LIMIT = 500;

type Where = Partial<Record<string, string | number | null | readonly string[]>>;

/** Reading, making, changing and removing things of one kind. Kinds that must not be changed show only a part of it. */
export interface Store<Thing extends Kept> extends Removable<Thing, Fields, string> {
  list(asked?: PageAsked & { readonly where?: Where }): Promise<Page<Thing>>;
  /** Makes a thing with fields that nobody may write from outside. */
  make(fields: Fields, extra: Fields, write: Write): Promise<Thing>;
  /** Changes a thing, also in fields that nobody may write from outside. */
  alter(id: string, make: (before: Thing) => Fields, write: ChangeOn, did?: AuditEntry["did"]): Promise<Thing>;
}

export function store<Thing extends Kept>(session: Session, definition: Definition<Thing>): Store<Thing> {
  const { kind, written } = definition;
  const found = async ({ db, shopId }: Session, id: string): Promise<Thing> => {
    const row = await tableOf(db, kind).selectAll().where("id", "=", id).where("shopId", "=", shopId).executeTakeFirst();
    if (row === undefined) throw new RecordsFault("notFound", `${kind} ${id}`);
    return thingOf(definition, row as ThingRow);
  };
  const all: Store<Thing> = {
    get: (id) => withFaults(kind, () => found(session, id)),
    list: (asked = {}) => withFaults(kind, () => page(session, definition, asked)),
    create: async (fields, write) => all.make(checkedFields(written, fields, kind), {}, write),
    make: (fields, extra, write) =>
      session.write(write, async (inside) => {
        const at = timeOf(inside.now());
        const filled = { ...extra, ...fields, ...(await definition.filledIn?.({ ...extra, ...fields }, null, inside)) };
        const keptFields = { id: inside.newId(), shopId: inside.shopId, version: 1, createdAt: at, changedAt: at };
        const thing = checkedFields(definition.kept, { ...keptFields, ...filled }, kind) as Thing & Fields;
        await mustFit(inside, definition, thing, null);
        await insertInto(inside.db, kind, rowOf(definition, thing));
        await keepTerms(inside, definition, thing);
        await inside.note({ by: write.by, did: "create", kind, thingId: thing.id, fields: Object.keys(fields) });
        await definition.alsoWrite?.(thing, null, inside, write.by);
        return thing;
      }),
    change: async (id, fields, write) =>
      all.alter(
        id,
        (before) => {
          const today = Object.fromEntries(Object.keys(written.shape).map((field) => [field, (before as Fields)[field]]));
          const whole = checkedFields(written, { ...today, ...fields }, `${kind} ${id}`);
          return Object.fromEntries(Object.keys(fields).map((field) => [field, whole[field]]));
        },
        write,
      ),
    alter: (id, make, write, did = "change") =>
      session.write(write, async (inside) => {
        const before = await found(inside, id);
        mustBeVersion(kind, before, write);
        const fields = make(before);
        const filled = { ...fields, ...(await definition.filledIn?.({ ...before, ...fields }, before, inside)) };
        const bumped = { version: before.version + 1, changedAt: timeOf(inside.now()) };
        const thing = checkedFields(definition.kept, { ...before, ...filled, ...bumped }, `${kind} ${id}`) as Thing & Fields;
        await mustFit(inside, definition, thing, before);
        await replaceRow(inside.db, kind, rowOf(definition, thing));
        await keepTerms(inside, definition, thing);
        await inside.note({ by: write.by, did, kind, thingId: id, fields: Object.keys(filled) });
        await definition.alsoWrite?.(thing, before, inside, write.by);
        return thing;
      }),
    remove: (id, write) =>
      session.write(write, async (inside) => {
        mustBeVersion(kind, await found(inside, id), write);
        await removeRow(inside, kind, id);
        await inside.note({ by: write.by, did: "remove", kind, thingId: id, fields: [] });
      }),
  };
  return all;
}

/** All tables of things have one shape; the query builder wants one name. */
function tableOf(db: Db, kind: ThingKind) {
  return db.selectFrom(kind as "bowlers");
}

async function insertInto(db: Db, kind: ThingKind, row: ThingRow): Promise<void> {
  await db
    .insertInto(kind as "bowlers")
    .values(row)
    .execute();
}

async function replaceRow(db: Db, kind: ThingKind, { id, ...rest }: ThingRow): Promise<void> {
  await db
    .updateTable(kind as "bowlers")
    .set(rest)
    .where("id", "=", id)
    .execute();
}

async function removeRow({ db }: Session, kind: ThingKind, id: string): Promise<void> {
  try {
    await db
      .deleteFrom(kind as "bowlers")
      .where("id", "=", id)
      .execute();
    await db.deleteFrom("terms").where("thingId", "=", id).execute();
  } catch (error) {
    // A foreign key: SQLite's and PostgreSQL's word for it.
    const code = error instanceof Error && "code" in error ? String(error.code) : "";
    if (code !== "SQLITE_CONSTRAINT_FOREIGNKEY" && code !== "23503") throw error;
    const problem = { path: "id", value: id, allowed: "a thing that nothing else refers to" };
    throw new RecordsFault("refused", `${kind} ${id}`, { problems: [problem] });
  }
}

function mustBeVersion(kind: ThingKind, before: Kept, { expectedVersion }: ChangeOn): void {
  if (before.version !== expectedVersion) throw new RecordsFault("changedMeanwhile", `${kind} ${before.id}`, { current: before });
}

/** References lead to things of this shop, and the kind's own rules hold. */
async function mustFit<Thing extends Kept>(
  session: Session,
  definition: Definition<Thing>,
  thing: Thing,
  before: Thing | null,
): Promise<void> {
  const problems: Problem[] = [];
  for (const [field, refersTo] of Object.entries(definition.lookups)) {
    const value = (thing as Fields)[field];
    if (refersTo === null || value === null || value === undefined) continue;
    if (before !== null && (before as Fields)[field] === value) continue;
    const row = await tableOf(session.db, refersTo)
      .select("id")
      .where("id", "=", value as string)
      .where("shopId", "=", session.shopId)
      .executeTakeFirst();
    if (row === undefined) problems.push({ path: field, value, allowed: `the id of one of the ${refersTo} that are kept` });
  }
  if (problems.length === 0) problems.push(...((await definition.check?.(thing, before, session)) ?? []));
  if (problems.length > 0) throw new RecordsFault("refused", definition.kind, { problems });
}

async function keepTerms<Thing extends Kept>(session: Session, { kind, terms }: Definition<Thing>, thing: Thing): Promise<void> {
  if (terms === undefined) return;
  const { db, shopId } = session;
  await db.deleteFrom("terms").where("thingId", "=", thing.id).execute();
  const rows = [...new Set(terms(thing))].map((term) => ({ shopId, kind, thingId: thing.id, term }));
  if (rows.length > 0) await db.insertInto("terms").values(rows).execute();
}

async function page<Thing extends Kept>(
  { db, shopId }: Session,
  definition: Definition<Thing>,
  { after, limit = USUAL_LIMIT, order = "newest first", where = {} }: PageAsked & { readonly where?: Where },
): Promise<Page<Thing>> {
  mustBeLimit(limit);
  const newestFirst = order === "newest first";
  let query = tableOf(db, definition.kind).selectAll().where("shopId", "=", shopId);
  for (const [field, value] of Object.entries(where)) {
    if (value === undefined) continue;
    mustBeLookup(definition, field);
    if (value === null) query = query.where(field, "is", null);
    else query = Array.isArray(value) ? query.where(field, "in", value) : query.where(field, "=", value as string);
  }
  if (after !== undefined && after !== null) query = query.where("id", newestFirst ? "<" : ">", after);
  const rows = await query
    .orderBy("id", newestFirst ? "desc" : "asc")
    .limit(limit + 1)
    .execute();
  const items = rows.slice(0, limit).map((row) => thingOf(definition, row as ThingRow));
  return { items, next: rows.length > limit ? (items.at(-1)?.id ?? null) : null };
}

function mustBeLimit(limit: number): void {
  if (Number.isInteger(limit) && limit >= 1 && limit <= MOST_LIMIT) return;
  throw new RecordsFault("refused", "limit", { problems: [{ path: "limit", value: limit, allowed: `1 ≤ x ≤ ${MOST_LIMIT}` }] });
}

function mustBeLookup({ lookups, kind }: Pick<Definition<Kept>, "lookups" | "kind">, field: string): void {
  if (Object.hasOwn(lookups, field)) return;
  const allowed = Object.keys(lookups).join(", ");
  throw new RecordsFault("refused", kind, { problems: [{ path: `where.${field}`, value: field, allowed }] });
}
