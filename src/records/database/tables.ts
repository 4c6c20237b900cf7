import type { Kysely } from "kysely";
import type { ThingKind } from "#contract/records/auditEntry";

/**
 * How a kept thing lies in its table: what it is looked up by has a column of the same name as its field, the whole thing is in `body` as JSON.
 */
export interface ThingRow {
  id: string;
  shopId: string;
  version: number;
  createdAt: string;
  changedAt: string;
  /** With which version of its kind `body` was written. */
  schemaVersion: number;
  body: string;
  [lookup: string]: string | number | null;
}

export interface AuditRow {
  id: string;
  shopId: string;
  at: string;
  by: string;
  did: string;
  kind: string;
  thingId: string;
  /** Names of fields, JSON list. */
  fields: string;
}

/** Answers of writes that must happen once. */
export interface OnceRow {
  shopId: string;
  person: string;
  key: string;
  route: string;
  bodyHash: string;
  at: string;
  /** JSON; null once a bowler's erasure took it away. */
  answer: string | null;
}

/** What a bowler or ball is found by, one row a word or number. */
export interface TermRow {
  shopId: string;
  kind: string;
  thingId: string;
  term: string;
}

export interface ImportRow {
  id: string;
  shopId: string;
  at: string;
  by: string;
  kind: string;
  /** Ids of what it added, JSON list. */
  added: string;
}

/** Bytes of a photo or profile file, where they lie in the database; in a folder this table stays empty. */
export interface FileRow {
  /** `photos/…` or `profiles/…`, named by the checksum of what is in it. */
  name: string;
  /** When it was last put there. */
  at: string;
  bytes: Uint8Array;
}

/** An erasure that was asked for; where several servers share a database they share this ledger. */
export interface ErasureRow {
  bowlerId: string;
  at: string;
  by: string;
}

/** That these records were moved elsewhere, are being filled from elsewhere, or came from there. */
export interface MoveRow {
  /** The same on both sides. */
  id: string;
  way: "moved away" | "being filled" | "came from";
  at: string;
  /** The other side, without a password. */
  other: string;
}

/** A person's way in. */
export interface AccountRow {
  personId: string;
  shopId: string;
  /** As it is compared: see `nameKey`. */
  signInName: string;
  role: string;
  passwordHash: string;
  pinHash: string | null;
  pinFailures: number;
  createdAt: string;
  changedAt: string;
}

/** Somebody who is signed in; of what the browser has only the digest lies here. */
export interface SessionRow {
  id: string;
  shopId: string;
  personId: string;
  tokenHash: string;
  /** What the browser had before it was renewed, good until `oldUntil` for requests under way. */
  oldHash: string | null;
  oldUntil: string | null;
  madeAt: string;
  renewedAt: string;
  seenAt: string;
  endsAt: string;
  address: string;
  /** Whose password began it: another person's where a PIN has changed the person since. */
  begunBy: string;
  /** 1 where a PIN opened it: then it may do no more than a technician, whoever it is. */
  byPin: number;
}

/** Vain tries to sign in, by the digest of a name or by an address. */
export interface TryRow {
  shopId: string;
  about: string;
  failures: number;
  since: string;
  waitUntil: string;
}

/** What a program must know to write here. */
export interface WriterRow {
  name: string;
  format: number;
  /** Version of the program that said so. */
  program: string;
}

export interface SchemaRow {
  name: string;
  at: string;
}

export type Tables = Record<ThingKind, ThingRow> & {
  audit: AuditRow;
  once: OnceRow;
  terms: TermRow;
  imports: ImportRow;
  files: FileRow;
  erasures: ErasureRow;
  moves: MoveRow;
  accounts: AccountRow;
  sessions: SessionRow;
  tries: TryRow;
  writers: WriterRow;
  schemaSteps: SchemaRow;
};

/** The database, or a transaction in it. */
export type Db = Kysely<Tables>;

export type EngineName = "sqlite" | "postgres";
