import type { z } from "zod";
import type { ThingKind } from "#contract/records/auditEntry";
import type { Ball } from "#contract/records/ball";
import type { Bowler } from "#contract/records/bowler";
import type { Kept } from "#contract/records/fields";
import type { ThingRow } from "../database/tables.ts";
import type { Session } from "../session.ts";
import { fileNameOf, photoKind, profileFileKind, removeUnused } from "../things/attachments.ts";
import { balls } from "../things/balls.ts";
import { bowlers } from "../things/bowlers.ts";
import type { Definition, Fields } from "../things/definition.ts";
import { paymentKind, prepaidKind } from "../things/payments.ts";
import { readings, shotNotes, visits } from "../things/plainKinds.ts";
import { fieldsIn, readRow } from "../things/rows.ts";
import { isUnreadable } from "../things/setAside.ts";
import { stageKind } from "../things/stagesDone.ts";
import { store } from "../things/store.ts";
import { tableOf } from "../things/table.ts";
import { ticketKind } from "../things/ticketKind.ts";
import { schemaVersionOf } from "../upgrades/upgrade.ts";
import { gather, type OfBowler } from "./gather.ts";
import type { Erasure, Ledger } from "./ledger.ts";
import { leaveNothingBehind } from "./rewrite.ts";
import { sweep } from "./sweep.ts";
import { NO_NAME, type Traces, tracesOf, withoutPerson } from "./traces.ts";
import { withoutEffects } from "./withoutEffects.ts";

/**
 * Erases one bowler's personal data, in every shop of the database: the bowler's row keeps its id and says nothing; balls, work and money stay without
 * free text; photos, shot notes and the inputs of plans go; no answer is kept for retries that could repeat any of it.
 */
export async function erase(session: Session, { bowlerId, at, by }: Erasure): Promise<void> {
  let finish = async (): Promise<void> => {};
  await session.write({ by }, async (inside) => {
    // The person asks one shop and means all that keep anything of them.
    const everywhere = inside.acrossShops();
    await makeReadable(everywhere, bowlerId);
    // Of what cannot be read nobody knows where the person stands in it: it says nothing any more.
    const found = await gather(everywhere, bowlerId, (kind, { id }) => emptyRow(everywhere, kind, id, "{}"));
    const traces = tracesOf(found.bowler);
    await emptyBowler(everywhere, found.bowler, at, by);
    await emptyBalls(everywhere, found, traces, by);
    await emptyWork(everywhere, found, traces, by);
    await sweep(everywhere, found.bowler, by);
    await everywhere.db.updateTable("once").set({ answer: null }).execute();
    // The same picture may hang on somebody else's ticket: its file lies there once, for both.
    finish = await removeUnused(everywhere, found.photos.map(fileNameOf));
  });
  await finish();
  await leaveNothingBehind(session);
}

/** A bowler who cannot be read is erased all the same: as far as a name or a number can be made out, it is looked for elsewhere. */
async function makeReadable(session: Session, bowlerId: string): Promise<void> {
  const row = (await tableOf(session.db, "bowlers").selectAll().where("id", "=", bowlerId).executeTakeFirst()) as ThingRow | undefined;
  if (row === undefined) return;
  try {
    readRow(bowlers, row);
  } catch (fault) {
    if (!isUnreadable(fault)) throw fault;
    const fields = fieldsIn(row.body) ?? {};
    const sound = Object.entries(bowlers.written.shape).flatMap(([field, schema]) => {
      const read = (schema as z.ZodType).safeParse(fields[field]);
      return read.success && fields[field] !== undefined ? [[field, read.data]] : [];
    });
    const body = bowlers.written.parse({ name: NO_NAME, ...Object.fromEntries(sound) });
    await emptyRow(session, "bowlers", bowlerId, JSON.stringify(body));
  }
}

async function emptyRow({ db }: Session, kind: ThingKind, id: string, body: string): Promise<void> {
  await db
    .updateTable(kind as "bowlers")
    .set({ body, schemaVersion: schemaVersionOf(kind) })
    .where("id", "=", id)
    .execute();
}

async function emptyBowler(session: Session, bowler: Bowler, at: string, by: string): Promise<void> {
  const empty = bowlers.written.parse({ name: NO_NAME, erasedAt: at }) as Fields;
  await alter(session, bowlers, bowler, empty, by);
}

async function emptyBalls(session: Session, found: OfBowler, traces: Traces, by: string): Promise<void> {
  const { bowler, balls: own, formerBalls, photos, shotNotes: notes, shotNotesOfBalls } = found;
  const othersThan = (ball: Ball) => ball.owners.filter((owner) => owner.bowlerId !== bowler.id);
  for (const ball of own) {
    const fields = {
      bowlerId: null,
      owners: othersThan(ball),
      name: withoutPerson(ball.name, traces),
      surface: ball.surface.map((entry) => ({ ...entry, note: "" })),
      found: ball.found.map((entry) => ({ ...entry, note: "" })),
      warranty: ball.warranty === null ? null : { ...ball.warranty, note: "" },
      notes: "",
    };
    await alter(session, balls, ball, fields, by);
  }
  // Somebody else's by now: what is written on it is theirs, unless it speaks of the one who was erased.
  for (const ball of formerBalls) {
    const surface = ball.surface.map((entry) => ({ ...entry, note: withoutPerson(entry.note, traces) }));
    const found = ball.found.map((entry) => ({ ...entry, note: withoutPerson(entry.note, traces) }));
    const texts = { name: withoutPerson(ball.name, traces), notes: withoutPerson(ball.notes, traces) };
    await alter(session, balls, ball, { owners: othersThan(ball), surface, found, ...texts }, by);
  }
  for (const note of shotNotesOfBalls) await alter(session, shotNotes, note, { note: "" }, by);
  for (const photo of photos) await store(session, photoKind).remove(photo.id, { by, expectedVersion: photo.version });
  for (const note of notes) await store(session, shotNotes).remove(note.id, { by, expectedVersion: note.version });
}

async function emptyWork(session: Session, found: OfBowler, traces: Traces, by: string): Promise<void> {
  const noText = { note: "" };
  const free = (text: string) => withoutPerson(text, traces);
  const freeOrNone = (text: string | null) => (text === null ? null : free(text));
  for (const visit of found.visits) {
    const charges = visit.charges.map((charge) => ({ ...charge, what: free(charge.what) }));
    const promises = visit.promises.map((promise) => ({ ...promise, why: NO_NAME }));
    const freeWork = visit.free.map((work) => ({ ...work, why: NO_NAME }));
    await alter(session, visits, visit, { ...noText, charges, free: freeWork, promises, discountWhy: "" }, by);
  }
  for (const ticket of found.tickets) {
    const stops = ticket.stops.map((stop) => ({ ...stop, why: NO_NAME, clearedWhy: "" }));
    const keptAsIs = ticket.keptAsIs.map((left) => ({ ...left, places: left.places.map(free), why: NO_NAME }));
    const stages = ticket.stages.map((stage) => ({
      ...stage,
      what: freeOrNone(stage.what),
      abrasive: freeOrNone(stage.abrasive),
      way: freeOrNone(stage.way),
    }));
    const said = { complaint: "", findings: "", besidesWhy: "", symptoms: [], whatChanged: null, plan: null, playedOn: null };
    await alter(session, withoutEffects(ticketKind), ticket, { ...said, stops, keptAsIs, stages }, by);
  }
  for (const stage of found.stagesDone)
    await alter(
      session,
      withoutEffects(stageKind),
      stage,
      { ...noText, what: freeOrNone(stage.what), abrasive: freeOrNone(stage.abrasive) },
      by,
    );
  for (const reading of found.readings) await alter(session, readings, reading, { ...noText, place: free(reading.place) }, by);
  for (const file of found.profileFiles) await alter(session, profileFileKind, file, { ...noText, name: NO_NAME }, by);
  for (const payment of found.payments) await alter(session, withoutEffects(paymentKind), payment, noText, by);
  for (const entry of found.prepaid) await alter(session, withoutEffects(prepaidKind), entry, noText, by);
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

/** Ends erasures that the ledger knows and the database does not: it was restored, or the power went in between. */
export async function endErasures(session: Session, ledger: Ledger): Promise<void> {
  const { db } = session;
  for (const erasure of await ledger.all()) {
    const row = await db.selectFrom("bowlers").select("body").where("id", "=", erasure.bowlerId).executeTakeFirst();
    if (row === undefined || typeof fieldsIn(row.body)?.erasedAt === "string") continue;
    const person = await db.selectFrom("people").select("id").where("id", "=", erasure.by).executeTakeFirst();
    // A database from before that person came, or another shop's person: whoever is there stands for it.
    const by = person?.id ?? (await db.selectFrom("people").select("id").orderBy("id").executeTakeFirstOrThrow()).id;
    await erase(session, { ...erasure, by });
  }
}
