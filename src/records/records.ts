import type { Photo, PhotoWritten, ProfileFile, ProfileFileWritten } from "#contract/records/attachment";
import type { AuditEntry, ThingKind } from "#contract/records/auditEntry";
import type { Ball, BallWritten } from "#contract/records/ball";
import type { Bowler, BowlerWritten } from "#contract/records/bowler";
import type { Kept } from "#contract/records/fields";
import type { Payment, PaymentWritten, Prepaid, PrepaidWritten, Price, PriceWritten } from "#contract/records/money";
import type { Person, PersonWritten } from "#contract/records/person";
import type { House, HouseWritten, Lane, LaneWritten, Pattern, PatternWritten } from "#contract/records/place";
import type { Reading, ReadingWritten } from "#contract/records/reading";
import type { Settings, SettingsWritten } from "#contract/records/settings";
import type { ShotNote, ShotNoteWritten } from "#contract/records/shotNote";
import type { StageDone, StageDoneWritten } from "#contract/records/stageDone";
import type {
  ReferenceBall,
  ReferenceBallWritten,
  StockItem,
  StockItemWritten,
  StockMovement,
  StockMovementWritten,
} from "#contract/records/stock";
import type { Ticket, TicketWritten } from "#contract/records/ticket";
import type { TicketState } from "#contract/records/ticketStates";
import type { Visit, VisitWritten } from "#contract/records/visit";
import type { Accounts } from "./accounts/accounts.ts";
import type { SecretHasher } from "./accounts/hasher.ts";
import type { Backups } from "./backup/backups.ts";
import type { ThingRow } from "./database/tables.ts";
import type { Lists } from "./lists/lists.ts";
import type { Personal } from "./personal/personal.ts";
import type { Search } from "./search/search.ts";
import type { SetAside } from "./session.ts";
import type { Fields } from "./things/definition.ts";
import type { ChangeOn, Write } from "./write.ts";

/** One page of a list. `after` of the next page is `next`; null at the end. */
export interface Page<Thing> {
  readonly items: readonly Thing[];
  readonly next: string | null;
}

export interface PageRequest {
  /** `next` of the page before. */
  readonly after?: string | null;
  /** 1 to 500; 50 where nothing is said. */
  readonly limit?: number;
  /** By the time of making: newest first where nothing is said. */
  readonly order?: "newest first" | "oldest first";
}

/** Reading. `Filter` names the fields that a list can be narrowed by; they are the columns that are indexed. */
export interface Readable<Thing extends Kept, Filter extends string> {
  /** @throws {RecordsFault} `notFound` */
  get(id: string): Promise<Thing>;
  list(
    asked?: PageRequest & { readonly where?: Partial<Record<Filter, string | number | null | readonly string[]>> },
  ): Promise<Page<Thing>>;
}

/** Things that are written once and never altered. */
export interface Addable<Thing extends Kept, Written, Filter extends string> extends Readable<Thing, Filter> {
  /** @throws {RecordsFault} `refused` with every problem; `keyReused`; `busy`, `full`, `readOnly` */
  create(written: Written, write: Write): Promise<Thing>;
}

/** Things that are also changed. */
export interface Changeable<Thing extends Kept, Written, Filter extends string> extends Addable<Thing, Written, Filter> {
  /**
   * Sets the fields that are given, and leaves the others.
   *
   * @throws {RecordsFault} `notFound`, `changedMeanwhile` with the thing as it stands, `refused`
   */
  change(id: string, fields: Partial<Written>, write: ChangeOn): Promise<Thing>;
}

/** Things that may go again, where nothing hangs on them: `refused` where something does. */
export interface Removable<Thing extends Kept, Written, Filter extends string> extends Changeable<Thing, Written, Filter> {
  remove(id: string, write: ChangeOn): Promise<void>;
}

export type Visits = Changeable<Visit, VisitWritten, "bowlerId" | "state">;

export interface Tickets extends Changeable<Ticket, TicketWritten, "visitId" | "ballId" | "bowlerId" | "state" | "reworkOf"> {
  /**
   * Moves a ticket on. The moves that are allowed stand in `contract/records/ticketStates`.
   * A ticket with a stop that is not cleared goes nowhere but to `warranty hold`, `waiting for approval` or `cancelled`.
   *
   * @throws {RecordsFault} `refused` where the move is not allowed
   */
  /** @param why needed where it goes back to the state that it stood in before, and no way leads there */
  move(id: string, to: TicketState, write: ChangeOn, why?: string): Promise<Ticket>;
}

/** Files kept with the database. The file is on the disk, synced, when its row is. */
export interface Attachments<Thing extends Kept, Written, Filter extends string> extends Readable<Thing, Filter> {
  /** @throws {RecordsFault} `refused` where the bytes are not what may be kept */
  add(written: Written, bytes: Uint8Array, write: Write): Promise<Thing>;
  /** @throws {RecordsFault} `notFound`; `damaged` where the file is missing or not what it was */
  bytes(id: string): Promise<Uint8Array>;
  change(id: string, fields: Partial<Written>, write: ChangeOn): Promise<Thing>;
  remove(id: string, write: ChangeOn): Promise<void>;
}

/** Everything kept, one object per kind. */
export interface Things {
  readonly people: Changeable<Person, PersonWritten, "state">;
  readonly bowlers: Changeable<Bowler, BowlerWritten, never>;
  readonly balls: Changeable<Ball, BallWritten, "bowlerId" | "state" | "job">;
  readonly visits: Visits;
  readonly tickets: Tickets;
  readonly stagesDone: Addable<StageDone, StageDoneWritten, "ticketId" | "personId">;
  readonly readings: Addable<Reading, ReadingWritten, "ballId" | "ticketId" | "referenceBallId">;
  readonly photos: Attachments<Photo, PhotoWritten, "ballId" | "ticketId" | "bowlerId">;
  readonly profileFiles: Attachments<ProfileFile, ProfileFileWritten, "ballId" | "ticketId">;
  readonly houses: Removable<House, HouseWritten, never>;
  readonly lanes: Removable<Lane, LaneWritten, "houseId">;
  readonly patterns: Removable<Pattern, PatternWritten, "houseId">;
  readonly shotNotes: Removable<ShotNote, ShotNoteWritten, "bowlerId" | "ballId" | "houseId" | "laneId" | "patternId" | "ticketId">;
  readonly referenceBalls: Removable<ReferenceBall, ReferenceBallWritten, never>;
  readonly stockItems: Changeable<StockItem, StockItemWritten, "kind" | "state">;
  readonly stockMovements: Addable<StockMovement, StockMovementWritten, "stockItemId" | "stageDoneId">;
  readonly prices: Removable<Price, PriceWritten, never>;
  readonly payments: Addable<Payment, PaymentWritten, "visitId">;
  readonly prepaid: Addable<Prepaid, PrepaidWritten, "bowlerId" | "visitId">;
  readonly settings: {
    get(): Promise<Settings>;
    change(fields: Partial<SettingsWritten>, write: ChangeOn): Promise<Settings>;
  };
  readonly audit: {
    list(
      asked?: PageRequest & { readonly where?: { readonly kind?: ThingKind; readonly thingId?: string; readonly by?: string } },
    ): Promise<Page<AuditEntry>>;
    /** Writes down what changes no thing: that somebody took everything out. */
    note(did: "export" | "take backup", by: string): Promise<void>;
    /** Writes into the trail of every shop of the database what nobody of the shop did, but whoever has the machine. */
    noteInAll(did: "restore"): Promise<void>;
  };
}

/** The room for what cannot be read: finding all of it, looking at it as it lies there, putting it right. */
export interface Unreadable {
  /** What anybody has met so far. Asks nothing of the database. */
  met(): readonly SetAside[];
  /** Looks through everything that is kept; others get their turn meanwhile. */
  lookThrough(signal?: AbortSignal): Promise<readonly SetAside[]>;
  /** @throws {RecordsFault} `notFound` */
  raw(id: string): Promise<Raw>;
  /** Puts a whole document in its place. @throws {RecordsFault} `refused` with what is wrong; `changedMeanwhile`, `notFound` */
  mend(id: string, body: Fields, write: ChangeOn): Promise<void>;
}

/** A row as it lies there. */
interface Raw extends Pick<ThingRow, "version" | "schemaVersion" | "body"> {
  readonly kind: ThingKind;
}

/** The records of one shop. */
export interface Records extends Things {
  /**
   * Several writes as one: all of them are kept, or none. With `once` the answer is kept as well and a retry gets it; it must be plain JSON.
   * Inside, `within` must be used, and no key is given again. `work` may be run more than once and must do nothing else.
   *
   * @throws whatever `work` throws
   */
  together<Answer>(write: Write, work: (within: Things) => Promise<Answer>): Promise<Answer>;
  /** Who may come in, and who is in. */
  readonly accounts: Accounts;
  readonly search: Search;
  readonly personal: Personal;
  readonly backups: Backups;
  /** Export of everything, import of bowlers and balls. */
  readonly lists: Lists;
  /** What cannot be read and was set aside. */
  readonly unreadable: Unreadable;
  /** Version of the newer program that asks this one only to read; null where it may write. */
  readonly newerProgram: string | null;
  /**
   * Tells after a write has been kept what was written, by this program or by another server of the database; for pages that watch. Without an id
   * anything of the kind may have been. Returns how to stop.
   */
  watch(tell: (written: { readonly kind: ThingKind; readonly id: string | null }) => void): () => void;
  /** Version of the schema, for a health report; throws where the database does not answer. */
  health(): Promise<{ readonly engine: "sqlite" | "postgres"; readonly schema: string }>;
  close(): Promise<void>;
}

/** What the records need from outside. */
export interface RecordsParts {
  /** Folder of the shop: backups, ledger of erasures; with SQLite database, photos and profile files too. Made where there is none. */
  readonly folder: string;
  /** Address of a PostgreSQL database, with everything of several shops in it; without it the database is a SQLite file in the folder. */
  readonly postgres?: string;
  /** Name or id of the shop, where several share a database; without it the only one. Where there is none it is made, under this name. */
  readonly shop?: string;
  /** Now, milliseconds since 1970. */
  readonly now: () => number;
  /** So many bytes of chance. */
  readonly randomBytes: (count: number) => Uint8Array;
  /** What hashes passwords; without it a thread does, at the usual cost. */
  readonly hasher?: SecretHasher;
  /** Version of the program, written into backups. */
  readonly programVersion: string;
}
