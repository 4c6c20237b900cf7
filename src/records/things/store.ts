import type { AuditEntry, ThingKind } from "#contract/records/auditEntry";
import { RecordsFault } from "#contract/records/fault";
import type { Kept } from "#contract/records/fields";
import type { Problem } from "#engine/fault";
import { withFaults } from "../database/driverFault.ts";
import { TABLE_RULES } from "../database/tableRules.ts";
import type { TermRow } from "../database/tables.ts";
import type { Page, PageRequest, Removable } from "../records.ts";
import { type Session, timeOf } from "../session.ts";
import type { ChangeOn, Write } from "../write.ts";
import type { Definition, Fields } from "./definition.ts";
import { page, type Where } from "./page.ts";
import { checkedFields, type ReadRow, rowOf } from "./rows.ts";
import { found, foundRow, insertRow, removeRow, replaceRow, tableOf } from "./table.ts";

/** Reading, making, changing and removing things of one kind. Kinds that must not be changed show only a part of it. */
export interface Store<Thing extends Kept> extends Removable<Thing, Fields, string> {
  list(asked?: PageRequest & { readonly where?: Where }): Promise<Page<Thing>>;
  /** Makes a thing with fields that nobody may write from outside. */
  make(fields: Fields, extra: Fields, write: Write): Promise<Thing>;
  /** Changes a thing, also in fields that nobody may write from outside. */
  alter(id: string, make: (before: Thing) => Fields, write: ChangeOn, did?: AuditEntry["did"]): Promise<Thing>;
}

export function store<Thing extends Kept>(session: Session, definition: Definition<Thing>): Store<Thing> {
  const { kind, written } = definition;
  const all: Store<Thing> = {
    get: (id) => withFaults(kind, () => found(session, definition, id)),
    list: (asked = {}) => withFaults(kind, () => page(session, definition, asked)),
    create: async (fields, write) => all.make(checkedFields(written, fields, kind), {}, write),
    make: (fields, extra, write) => session.write(write, (inside) => made(inside, definition, fields, extra, write)),
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
        const before = await foundRow(inside, definition, id);
        mustBeVersion(kind, before.thing, write);
        return altered(inside, definition, before, make(before.thing), write.by, did);
      }),
    remove: (id, write) =>
      session.write(write, async (inside) => {
        const before = await found(inside, definition, id);
        mustBeVersion(kind, before, write);
        await removeRow(inside, kind, before);
        await inside.note({ shopId: trailOf(inside, kind, before), by: write.by, did: "remove", kind, thingId: id, fields: [] });
      }),
  };
  return all;
}

async function made<Thing extends Kept>(
  inside: Session,
  definition: Definition<Thing>,
  fields: Fields,
  extra: Fields,
  { by }: Write,
): Promise<Thing> {
  const { kind } = definition;
  const thing = await readied(inside, definition, fields, extra);
  await insertRow(inside.db, kind, rowOf(definition, thing));
  await keepTerms(inside, definition, thing);
  await inside.note({ shopId: inside.shopId, by, did: "create", kind, thingId: thing.id, fields: Object.keys(fields) });
  await definition.alsoWrite?.(thing, null, inside, by);
  return thing;
}

/** A new thing as it will be kept, checked. */
export async function readied<Thing extends Kept>(
  inside: Session,
  definition: Definition<Thing>,
  fields: Fields,
  extra: Fields,
): Promise<Thing> {
  const at = timeOf(inside.now());
  const filled = { ...extra, ...fields, ...(await definition.filledIn?.({ ...extra, ...fields }, null, inside)) };
  const keptFields = { id: inside.newId(), shopId: inside.shopId, version: 1, createdAt: at, changedAt: at };
  const thing = checkedFields(definition.kept, { ...keptFields, ...filled }, definition.kind) as Thing & Fields;
  await mustFit(inside, definition, thing, null);
  return thing;
}

async function altered<Thing extends Kept>(
  inside: Session,
  definition: Definition<Thing>,
  beforeRow: ReadRow<Thing>,
  fields: Fields,
  by: string,
  did: AuditEntry["did"],
): Promise<Thing> {
  const { kind } = definition;
  const before = beforeRow.thing;
  const filled = { ...fields, ...(await definition.filledIn?.({ ...before, ...fields }, before, inside)) };
  const bumped = { version: before.version + 1, changedAt: timeOf(inside.now()) };
  const thing = checkedFields(definition.kept, { ...before, ...filled, ...bumped }, `${kind} ${before.id}`) as Thing & Fields;
  await mustFit(inside, definition, thing, before);
  await replaceRow(inside.db, kind, rowOf(definition, thing, did === "erase" ? { ...beforeRow, whole: null } : beforeRow));
  await keepTerms(inside, definition, thing);
  await inside.note({ shopId: trailOf(inside, kind, thing), by, did, kind, thingId: thing.id, fields: Object.keys(filled) });
  await definition.alsoWrite?.(thing, before, inside, by);
  return thing;
}

/** In whose trail it stands that a thing was changed: where it belongs to all shops, in that of who changed it. */
function trailOf({ shopId }: Session, kind: ThingKind, thing: Kept): string {
  return TABLE_RULES[kind].belongsTo === "all shops" ? shopId : thing.shopId;
}

function mustBeVersion(kind: ThingKind, before: Kept, { expectedVersion }: ChangeOn): void {
  if (before.version !== expectedVersion) throw new RecordsFault("changedMeanwhile", `${kind} ${before.id}`, { current: before });
}

/** References lead to things that this shop sees, and the kind's own rules hold. */
export async function mustFit<Thing extends Kept>(
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
      .executeTakeFirst();
    if (row === undefined) problems.push({ path: field, value, allowed: `the id of one of the ${refersTo} that are kept` });
  }
  if (problems.length === 0) problems.push(...((await definition.check?.(thing, before, session)) ?? []));
  if (problems.length > 0) throw new RecordsFault("refused", definition.kind, { problems });
}

/** Words by which it is found, in place of those of before. */
export async function keepTerms<Thing extends Kept>(session: Session, { kind, terms }: Definition<Thing>, thing: Thing): Promise<void> {
  if (terms === undefined) return;
  const { db } = session;
  await db.deleteFrom("terms").where("thingId", "=", thing.id).execute();
  const rows = termRows(session, { kind, terms }, thing);
  if (rows.length > 0) await db.insertInto("terms").values(rows).execute();
}

/** What a thing is found by. */
export function termRows<Thing extends Kept>(
  { shopId }: Session,
  { kind, terms }: Pick<Definition<Thing>, "kind" | "terms">,
  thing: Thing,
): TermRow[] {
  return [...new Set(terms?.(thing) ?? [])].map((term) => ({ shopId, kind, thingId: thing.id, term }));
}
