import { createHash } from "node:crypto";
import type { SignedInSession } from "#contract/records/account";
import { RecordsFault, type RecordsFaultKind } from "#contract/records/fault";
import { mayDo, type Role } from "#contract/records/roles";
import { withFaults } from "../database/driverFault.ts";
import type { Db, SessionRow } from "../database/tables.ts";
import { type Session, timeOf } from "../session.ts";
import type { Begun, LiveSession, Recognised } from "./accounts.ts";

/** 256 bits. */
const TOKEN_BYTES = 32;
const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
/** Nobody has used it for so long: a night. */
const IDLE_MS = 12 * HOUR_MS;
/** However much it is used; the password is asked for once a week. */
const LASTS_MS = 7 * 24 * HOUR_MS;
/** After so long in use the browser gets another token. */
const RENEW_MS = 4 * HOUR_MS;
/** Requests under way still have the old one. */
const OLD_TOKEN_MS = MINUTE_MS;
/** The time it was last used is written down no more often. */
const SEEN_MS = MINUTE_MS;

export interface SessionParts {
  readonly session: Session;
  readonly randomBytes: (count: number) => Uint8Array;
}

interface NewSession {
  readonly personId: string;
  readonly role: Role;
  readonly address: string;
  /** At the latest, ms since 1970. */
  readonly endsBy?: number;
  readonly begunBy: string;
  readonly byPin: boolean;
}

/** Begins a session inside a transaction. */
export async function beginSession({ session, randomBytes }: SessionParts, db: Db, begun: NewSession): Promise<Begun> {
  const { personId, address, begunBy, byPin, endsBy = Number.POSITIVE_INFINITY } = begun;
  const at = session.now();
  const endsAt = Math.min(at + LASTS_MS, endsBy);
  const token = newToken(randomBytes);
  const id = session.newId();
  const [madeAt, tokenHash] = [timeOf(at), digest(token)];
  const times = { madeAt, renewedAt: madeAt, seenAt: madeAt, endsAt: timeOf(endsAt) };
  await db
    .insertInto("sessions")
    .values({
      id,
      shopId: session.shopId,
      personId,
      tokenHash,
      oldHash: null,
      oldUntil: null,
      ...times,
      address,
      begunBy,
      byPin: byPin ? 1 : 0,
    })
    .execute();
  const role = byPin ? withPin(begun.role) : begun.role;
  return { kind: "in", token, session: { id, personId, role, endsAt, begunBy } };
}

/** Whose token it is, noting that it is used, with another token where it is time for one. */
export async function recognise(parts: SessionParts, token: string): Promise<Recognised | null> {
  const { db, now } = parts.session;
  const tokenHash = digest(token);
  const at = now();
  const row = await rowOf(parts.session, tokenHash, at);
  if (row === null) return null;
  const live = await liveOf(parts.session, row, at);
  if (live === null) return null;
  if (at - Date.parse(row.seenAt) > SEEN_MS) {
    const seen = db
      .updateTable("sessions")
      .set({ seenAt: timeOf(at) })
      .where("id", "=", row.id);
    await whereWritable(() => seen.execute());
  }
  if (row.tokenHash !== tokenHash || at - Date.parse(row.renewedAt) < RENEW_MS) return { session: live, renewed: null };
  return { session: live, renewed: await whereWritable(() => parts.session.unnoted((inside) => renew(parts, inside, row, at))) };
}

const NOT_NOW: ReadonlySet<RecordsFaultKind> = new Set(["full", "readOnly", "busy"]);

/** A full disk or another program that writes keeps nobody from reading: the session then goes on as it was. */
async function whereWritable<Answer>(work: () => Promise<Answer>): Promise<Answer | null> {
  try {
    return await withFaults("sessions", work);
  } catch (fault) {
    if (fault instanceof RecordsFault && NOT_NOW.has(fault.kind)) return null;
    throw fault;
  }
}

/** Of two requests at once only one renews; the other one's token is good for a minute. */
async function renew({ randomBytes }: SessionParts, db: Db, { id, tokenHash }: SessionRow, at: number): Promise<string | null> {
  const token = newToken(randomBytes);
  const changed = await db
    .updateTable("sessions")
    .set({ tokenHash: digest(token), oldHash: tokenHash, oldUntil: timeOf(at + OLD_TOKEN_MS), renewedAt: timeOf(at) })
    .where("id", "=", id)
    .where("tokenHash", "=", tokenHash)
    .executeTakeFirst();
  return changed.numUpdatedRows === 1n ? token : null;
}

export async function isLive(session: Session, id: string): Promise<boolean> {
  const row = await session.db.selectFrom("sessions").selectAll().where("id", "=", id).executeTakeFirst();
  return row !== undefined && (await liveOf(session, row, session.now())) !== null;
}

async function rowOf({ db }: Session, tokenHash: string, at: number): Promise<SessionRow | null> {
  const row = await db
    .selectFrom("sessions")
    .selectAll()
    .where((where) => where.or([where("tokenHash", "=", tokenHash), where("oldHash", "=", tokenHash)]))
    .executeTakeFirst();
  if (row === undefined) return null;
  return row.tokenHash === tokenHash || (row.oldUntil !== null && row.oldUntil > timeOf(at)) ? row : null;
}

/** A session is over by time, and where its person, or the one whose password began it, has left or may not come in any more. */
async function liveOf(
  { db }: Session,
  { id, personId, begunBy, byPin, endsAt, seenAt }: SessionRow,
  at: number,
): Promise<LiveSession | null> {
  const endsAtMs = Date.parse(endsAt);
  if (at >= endsAtMs || at - Date.parse(seenAt) >= IDLE_MS) return null;
  const role = await roleOf(db, personId);
  const isBegunByOne = begunBy === personId || (await roleOf(db, begunBy)) !== null;
  return role === null || !isBegunByOne ? null : { id, personId, role: byPin === 1 ? withPin(role) : role, endsAt: endsAtMs, begunBy };
}

/** So few digits open the bench and the counter, never the shop: an owner who came by a PIN signs in with the password for more. */
const MOST_BY_PIN: Role = "technician";

function withPin(role: Role): Role {
  return mayDo(MOST_BY_PIN, role) ? role : MOST_BY_PIN;
}

/** Null where the person has left, or has no way in. */
async function roleOf(db: Db, personId: string): Promise<Role | null> {
  const account = await db.selectFrom("accounts").select("role").where("personId", "=", personId).executeTakeFirst();
  const person = await db.selectFrom("people").select("state").where("id", "=", personId).executeTakeFirst();
  return account === undefined || person?.state !== "works here" ? null : (account.role as Role);
}

export async function listSessions(session: Session, personId: string | null): Promise<SignedInSession[]> {
  const { db, now } = session;
  const all = db.selectFrom("sessions").selectAll();
  const rows = await (personId === null ? all : all.where("personId", "=", personId)).orderBy("id", "desc").execute();
  const at = now();
  const live: SignedInSession[] = [];
  for (const row of rows) {
    const { id, personId: person, madeAt, seenAt, endsAt, address } = row;
    if ((await liveOf(session, row, at)) !== null) live.push({ id, personId: person, madeAt, seenAt, endsAt, address });
  }
  return live;
}

/** Sessions that are over by time. */
export async function forgetSessions(db: Db, at: number): Promise<void> {
  await db
    .deleteFrom("sessions")
    .where((where) => where.or([where("endsAt", "<", timeOf(at)), where("seenAt", "<", timeOf(at - IDLE_MS))]))
    .execute();
}

function newToken(randomBytes: (count: number) => Uint8Array): string {
  return Buffer.from(randomBytes(TOKEN_BYTES)).toString("base64url");
}

/** A token has as much chance as its digest: one plain SHA-256 is enough, and whoever reads the table cannot come in. */
function digest(token: string): string {
  return createHash("sha256").update(token).digest("hex");
}
