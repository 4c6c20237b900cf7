import { sql } from "kysely";
import type { Bowler } from "#contract/records/bowler";
import type { Kept } from "#contract/records/fields";
import { TABLE_RULES } from "../database/tableRules.ts";
import { wordsOf } from "../search/terms.ts";
import type { Session } from "../session.ts";
import { fileNameOf, photoKind, profileFileKind, removeUnused } from "../things/attachments.ts";
import { balls } from "../things/balls.ts";
import { bowlers } from "../things/bowlers.ts";
import type { Definition, Fields } from "../things/definition.ts";
import { paymentKind, prepaidKind } from "../things/payments.ts";
import { readings, shotNotes, visits } from "../things/plainKinds.ts";
import { stageKind } from "../things/stock.ts";
import { store } from "../things/store.ts";
import { ticketKind } from "../things/tickets.ts";
import { gather, type OfBowler } from "./gather.ts";
import type { Erasure } from "./ledger.ts";

const NO_NAME = "(erased)";

/**
 * Erases one bowler's personal data, in every shop of the database: the bowler's row keeps its id and says nothing; balls, work and money stay without
 * free text; photos, shot notes and the inputs of plans go; no answer is kept for retries that could repeat any of it.
 */
export async function erase(session: Session, { bowlerId, at, by }: Erasure): Promise<void> {
  let finish = async (): Promise<void> => {};
  await session.write({ by }, async (inside) => {
    // The person asks one shop and means all that keep anything of them.
    const everywhere = inside.acrossShops();
    const found = await gather(everywhere, bowlerId);
    await emptyBowler(everywhere, found.bowler, at, by);
    await emptyBalls(everywhere, found, by);
    await emptyWork(everywhere, found, by);
    await everywhere.db.updateTable("once").set({ answer: null }).execute();
    // The same picture may hang on somebody else's ticket: its file lies there once, for both.
    finish = await removeUnused(everywhere, found.photos.map(fileNameOf));
  });
  await finish();
  await leaveNothingBehind(session);
}

async function emptyBowler(session: Session, bowler: Bowler, at: string, by: string): Promise<void> {
  const empty = bowlers.written.parse({ name: NO_NAME, erasedAt: at }) as Fields;
  await alter(session, bowlers, bowler, empty, by);
}

async function emptyBalls(session: Session, { bowler, balls: own, photos, shotNotes: notes }: OfBowler, by: string): Promise<void> {
  const nameWords = new Set(wordsOf(bowler.name));
  for (const ball of own) {
    const isNamedAfter = wordsOf(ball.name).some((word) => [...nameWords].some((own) => word.startsWith(own)));
    const fields = {
      bowlerId: null,
      owners: ball.owners.filter((owner) => owner.bowlerId !== bowler.id),
      ...(isNamedAfter ? { name: NO_NAME } : {}),
      surface: ball.surface.map((entry) => ({ ...entry, note: "" })),
      found: ball.found.map((entry) => ({ ...entry, note: "" })),
      warranty: ball.warranty === null ? null : { ...ball.warranty, note: "" },
      notes: "",
    };
    await alter(session, balls, ball, fields, by);
  }
  for (const photo of photos) await store(session, photoKind).remove(photo.id, { by, expectedVersion: photo.version });
  for (const note of notes) await store(session, shotNotes).remove(note.id, { by, expectedVersion: note.version });
}

async function emptyWork(session: Session, found: OfBowler, by: string): Promise<void> {
  const noText = { note: "" };
  for (const visit of found.visits) await alter(session, visits, visit, { ...noText, discountWhy: "" }, by);
  for (const ticket of found.tickets) {
    const stops = ticket.stops.map((stop) => ({ ...stop, why: NO_NAME }));
    await alter(session, ticketKind, ticket, { complaint: "", findings: "", symptoms: [], whatChanged: null, plan: null, stops }, by);
  }
  for (const stage of found.stagesDone) await alter(session, withoutEffects(stageKind), stage, noText, by);
  for (const reading of found.readings) await alter(session, readings, reading, noText, by);
  for (const file of found.profileFiles) await alter(session, profileFileKind, file, { ...noText, name: NO_NAME }, by);
  for (const payment of found.payments) await alter(session, withoutEffects(paymentKind), payment, noText, by);
  for (const entry of found.prepaid) await alter(session, withoutEffects(prepaidKind), entry, noText, by);
}

/** Work that is only emptied takes nothing from the stock again, and money that is counted already is not counted twice. */
function withoutEffects<Thing extends Kept>({ kind, written, kept, lookups }: Definition<Thing>): Definition<Thing> {
  return { kind, written, kept, lookups };
}

async function alter<Thing extends Kept>(
  session: Session,
  definition: Definition<Thing>,
  thing: Thing,
  fields: Fields,
  by: string,
): Promise<void> {
  await store(session, definition).alter(thing.id, () => fields, { by, expectedVersion: thing.version }, "erase");
}

/** Deleted rows are overwritten (`secure_delete`); the log of writes and the file's free pages must not keep them either. */
async function leaveNothingBehind(session: Session): Promise<void> {
  const { db } = session.acrossShops();
  if (session.engine === "postgres") {
    const tables = Object.keys(TABLE_RULES).map((table) => sql.table(table));
    await sql`vacuum ${sql.join(tables)}`.execute(db);
    return;
  }
  await sql`vacuum`.execute(db);
  await sql`pragma wal_checkpoint(truncate)`.execute(db);
}
