import type { AuditEntry, ThingKind } from "#contract/records/auditEntry";
import type { Problem } from "#engine/fault";
import type { Db, EngineName } from "./database/tables.ts";
import type { FileStore } from "./files/fileStore.ts";
import type { Write } from "./write.ts";

/** What every piece of the records works with: a database, or one transaction in it, and whose shop it is. */
export interface Session {
  /** Held to the shop: no query through it reads or writes another shop's rows. */
  readonly db: Db;
  readonly engine: EngineName;
  readonly shopId: string;
  readonly files: FileStore;
  readonly now: () => number;
  readonly newId: () => string;
  /** Where rows that cannot be read are noted; null inside a write, where all must be readable. */
  readonly setAside: SetAsideNotes | null;
  /** Runs a write in a transaction of its own, or in the one that is open. Inside, only `inside` is used. */
  write<Answer>(write: Write, work: (inside: Session) => Promise<Answer>): Promise<Answer>;
  /** Writes in a transaction what is nobody's work: that somebody came in, or tried to. Nothing of it is noted, nobody is told. */
  unnoted<Answer>(work: (db: Db) => Promise<Answer>): Promise<Answer>;
  /** Reads as of one moment. Inside, only `inside` is used. */
  atOneMoment<Answer>(work: (inside: Session) => Promise<Answer>): Promise<Answer>;
  /** Notes who did what, in the trail of the shop whose thing it is; told to those who watch once it is kept. */
  note(entry: NewEntry): Promise<void>;
  /** Notes many at once. */
  noteAll(entries: readonly NewEntry[]): Promise<void>;
  /** The one way past the shop: the same session over the rows of every shop of the database. Who uses it says why. */
  acrossShops(): Session;
}

export type NewEntry = Pick<AuditEntry, "shopId" | "by" | "did" | "kind" | "thingId" | "fields">;

/** A row that this program cannot read. It stays where it is; lists and searches go on without it. */
export interface SetAside {
  readonly kind: ThingKind;
  readonly id: string;
  readonly problems: readonly Problem[];
}

/** Which rows could not be read, as far as anybody has met them. */
export interface SetAsideNotes {
  note(found: SetAside): void;
  forget(kind: ThingKind, id: string): void;
  /** Of a kind that was looked through: only these. */
  only(kind: ThingKind, ids: ReadonlySet<string>): void;
  all(): readonly SetAside[];
}

/** ISO 8601 in UTC. */
export function timeOf(milliseconds: number): string {
  return new Date(milliseconds).toISOString();
}
