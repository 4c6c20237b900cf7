import { type RawBuilder, sql } from "kysely";
import { THING_KINDS } from "#contract/records/auditEntry";
import type { Bowler } from "#contract/records/bowler";
import type { Kept } from "#contract/records/fields";
import { TABLE_RULES } from "../database/tableRules.ts";
import { digitsOf } from "../search/terms.ts";
import type { Session } from "../session.ts";
import type { Definition, Fields } from "../things/definition.ts";
import { KINDS } from "../things/kinds.ts";
import { fieldsIn } from "../things/rows.ts";
import { isUnreadable } from "../things/setAside.ts";
import { store } from "../things/store.ts";
import { ownTexts, tracesOf, withoutWhole } from "./traces.ts";
import { withoutEffects } from "./withoutEffects.ts";

/** Kinds in whose text somebody may stand who has nothing else to do with it. A person of the shop, or another bowler, is not altered for it. */
const SPEAKING = THING_KINDS.filter((kind) => TABLE_RULES[kind].bowlerStands === "in words").map((kind) => KINDS[kind]);

/** Fields that hold what somebody wrote freely; in all others stand words that the program knows. */
export const FREE: ReadonlySet<string> = new Set([
  ...["name", "note", "notes", "what", "way", "why", "clearedWhy", "besidesWhy", "discountWhy"],
  ...["place", "places", "complaint", "symptoms", "findings", "abrasive"],
]);

/**
 * Takes a person's whole name, numbers and addresses out of everything else that was written freely, in every shop. Those that another bowler has too
 * are left: what speaks of one may speak of the other.
 *
 * @param everywhere a write across all shops
 * @param bowler as they were before they were erased
 */
export async function sweep(everywhere: Session, bowler: Bowler, by: string): Promise<void> {
  const whole = await onlyTheirs(everywhere, bowler);
  if (whole.length === 0) return;
  for (const definition of SPEAKING) await sweepKind(everywhere, definition, whole, by);
}

async function sweepKind(everywhere: Session, definition: Definition<Kept>, whole: readonly string[], by: string): Promise<void> {
  const all = store(everywhere, withoutEffects(definition));
  for (const { id, body } of await rowsWith(everywhere, definition.kind, whole)) {
    const thing = await all.get(id).catch((fault: unknown) => {
      if (isUnreadable(fault)) return null;
      throw fault;
    });
    if (thing === null) {
      // What cannot be read cannot be put together again: the words go from it as it lies there.
      await everywhere.db
        .updateTable(definition.kind as "bowlers")
        .set({ body: withoutWhole(body, whole) })
        .where("id", "=", id)
        .execute();
      continue;
    }
    const fields = freed(thing, whole);
    if (Object.keys(fields).length > 0) await all.alter(id, () => fields, { by, expectedVersion: thing.version }, "erase");
  }
}

/** What another bowler has too is theirs as well; that somebody is spoken of in another's notes makes it nobody else's. */
async function onlyTheirs(everywhere: Session, bowler: Bowler): Promise<string[]> {
  const others = (await rowsWith(everywhere, "bowlers", tracesOf(bowler).whole)).filter(({ id }) => id !== bowler.id);
  const had = others.flatMap(({ body }) => ownTexts(fieldsIn(body) ?? {}).map(({ text }) => text.toLowerCase()));
  return tracesOf(bowler).whole.filter((trace) => !had.some((own) => own.includes(trace.toLowerCase())));
}

/** Rows that may speak of it, in whichever way it is written; what else is like it comes too. */
function rowsWith({ db, engine }: Session, kind: Definition<Kept>["kind"], whole: readonly string[]) {
  const like = engine === "postgres" ? sql`ilike` : sql`like`;
  const pattern = (trace: string): RawBuilder<boolean> => sql`body ${like} ${likely(trace)}`;
  return db
    .selectFrom(kind as "bowlers")
    .select(["id", "body"])
    .where(({ or }) => or(whole.map((trace) => pattern(trace))))
    .execute();
}

/** A pattern that fits every way of writing it: the last digits of a number apart, the longest word of a name. */
function likely(trace: string): string {
  const digits = digitsOf(trace);
  if (digits.length > 0 && !/\p{L}|@/u.test(trace)) return `%${[...digits].join("%")}%`;
  const longest = trace.split(/\s+/).reduce((most, word) => (word.length > most.length ? word : most), "");
  return `%${inJson(longest).replaceAll(/[\\%_]/g, "_")}%`;
}

/** As a text stands in JSON. */
function inJson(text: string): string {
  return JSON.stringify(text).slice(1, -1);
}

/** The fields that are altered. */
function freed(thing: Kept, whole: readonly string[]): Fields {
  const altered = Object.entries(thing).map(([field, value]) => [field, freeOf(field, value, whole)] as const);
  return Object.fromEntries(altered.filter(([field, value]) => JSON.stringify(value) !== JSON.stringify((thing as Fields & Kept)[field])));
}

function freeOf(field: string, value: unknown, whole: readonly string[]): unknown {
  if (typeof value === "string") return FREE.has(field) ? withoutWhole(value, whole) : value;
  if (Array.isArray(value)) return value.map((one) => freeOf(field, one, whole));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, freeOf(key, one, whole)]));
}
