import type { z } from "zod";
import type { ThingKind } from "#contract/records/auditEntry";
import type { Kept } from "#contract/records/fields";
import type { Problem } from "#engine/fault";
import type { Session } from "../session.ts";

/** What a kind of thing is, apart from where it lies. */
export interface Definition<Thing extends Kept> {
  readonly kind: ThingKind;
  /** What may be written. */
  readonly written: z.ZodObject;
  /** What is read: what may be written, what the records add to this kind, and what they add to everything. */
  readonly kept: z.ZodType<Thing>;
  /** Fields that have a column of their own. A value names the kind whose id the field holds. */
  readonly lookups: Readonly<Record<string, ThingKind | null>>;
  /** What stands for fields that cannot be read, where nothing can be done without such a thing; others are set aside. */
  readonly rescue?: Fields;
  /** Words it is found by. */
  readonly terms?: (thing: Thing) => readonly string[];
  /** What the records fill in by themselves. */
  readonly filledIn?: (fields: Fields, before: Thing | null, session: Session) => Promise<Fields>;
  /** What the schema cannot see alone. */
  readonly check?: (thing: Thing, before: Thing | null, session: Session) => Promise<readonly Problem[]>;
  /** What else must happen in the same transaction. */
  readonly alsoWrite?: (thing: Thing, before: Thing | null, session: Session, by: string) => Promise<void>;
}

/** Fields of a thing by name, once they have been checked. */
export type Fields = Record<string, unknown>;
