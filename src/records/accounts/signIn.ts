import type { AccountRow, Db } from "../database/tables.ts";
import { timeOf } from "../session.ts";
import type { Begun, CameIn, LiveSession, NotChanged, NotIn, SignInTried } from "./accounts.ts";
import { deviceMark, knownDevice } from "./device.ts";
import type { SecretHasher } from "./hasher.ts";
import { accountRow } from "./owners.ts";
import { isTooLong, nameKey, normalized } from "./secrets.ts";
import { beginSession, type SessionParts } from "./sessions.ts";
import { beginTry, endTry } from "./tries.ts";

/** What signing in works with. */
export interface AccountParts extends SessionParts {
  readonly hasher: SecretHasher;
}

/** Wrong PINs after which a person's password is needed. */
export const MOST_PINS = 5;

const NOTHING = "nothing";

const WRONG = { kind: "wrong" } as const;

/** A name that nobody has costs the same work and is told the same. */
export async function signIn(parts: AccountParts, { signInName, password, address, device = null }: SignInTried): Promise<CameIn | NotIn> {
  const { db, shopId, now } = parts.session;
  const name = nameKey(signInName);
  const account = await db.selectFrom("accounts").selectAll().where("signInName", "=", name).executeTakeFirst();
  const known = account === undefined ? null : knownDevice(account, device, now());
  const trying = known === null ? { name, address } : { device: known };
  const seconds = await beginTry(parts.session, trying);
  if (seconds !== null) return { kind: "wait", seconds };
  const isRight = await fits(parts, password, account?.passwordHash ?? parts.hasher.decoy);
  if (account === undefined || !isRight) {
    await noteFailure(parts, account?.personId ?? null, "password");
    return WRONG;
  }
  return parts.session.unnoted(async (inside) => {
    const today = await stillAs(inside, account);
    if (today === null) return WRONG;
    await endTry(inside, shopId, trying, now());
    await inside.updateTable("accounts").set({ pinFailures: 0 }).where("personId", "=", today.personId).execute();
    const { personId, role } = today;
    const begun = await beginSession(parts, inside, {
      personId,
      role: role as LiveSession["role"],
      address,
      begunBy: personId,
      byPin: false,
    });
    return { ...begun, device: deviceMark(today, now()) };
  });
}

/** Whether it is the person's password; counted like a try to sign in. */
export async function doubt(parts: AccountParts, personId: string, password: string): Promise<NotIn | null> {
  const { shopId, now } = parts.session;
  const account = await accountRow(parts.session, personId);
  // Whoever guesses elsewhere keeps nobody waiting who is in already.
  const trying = { confirming: personId };
  const seconds = await beginTry(parts.session, trying);
  if (seconds !== null) return { kind: "wait", seconds };
  if (!(await fits(parts, password, account.passwordHash))) {
    await noteFailure(parts, personId, "password");
    return WRONG;
  }
  await parts.session.unnoted((inside) => endTry(inside, shopId, trying, now()));
  return null;
}

/** A PIN opens nothing by itself: it changes the person in a session that somebody's password began. */
export async function changePerson(
  parts: AccountParts,
  from: LiveSession,
  to: { readonly personId: string; readonly pin: string; readonly address: string },
): Promise<Begun | NotChanged> {
  const account = await parts.session.unnoted((inside) => countedPin(inside, to.personId));
  if (account === "off") return { kind: "off" };
  const isRight = await fits(parts, to.pin, account?.pinHash ?? parts.hasher.decoy);
  if (account === null || account.pinHash === null || !isRight) {
    await noteFailure(parts, account?.personId ?? null, "pin");
    return WRONG;
  }
  return parts.session.unnoted(async (inside) => {
    const today = await stillAs(inside, account);
    // Of two who take over at once only the first finds the session.
    const ended = await inside.deleteFrom("sessions").where("id", "=", from.id).executeTakeFirst();
    if (today === null || ended.numDeletedRows === 0n) return WRONG;
    const { personId, role, pinFailures } = today;
    // This try was none. The wrong ones before stay counted: they would else be forgiven whenever the person comes in, and guessing go on for ever.
    await inside
      .updateTable("accounts")
      .set({ pinFailures: Math.max(0, pinFailures - 1) })
      .where("personId", "=", personId)
      .execute();
    const { endsAt: endsBy, begunBy } = from;
    return beginSession(parts, inside, { personId, role: role as LiveSession["role"], address: to.address, endsBy, begunBy, byPin: true });
  });
}

/** Counts a PIN before it is looked at. */
async function countedPin(db: Db, personId: string): Promise<AccountRow | "off" | null> {
  const account = await db.selectFrom("accounts").selectAll().where("personId", "=", personId).executeTakeFirst();
  if (account === undefined || account.pinHash === null) return null;
  if (account.pinFailures >= MOST_PINS) return "off";
  const pinFailures = account.pinFailures + 1;
  await db.updateTable("accounts").set({ pinFailures }).where("personId", "=", personId).execute();
  return { ...account, pinFailures };
}

/** The account now, where what was looked at still is what opens it and its person works here. */
async function stillAs(db: Db, { personId, passwordHash, pinHash }: AccountRow): Promise<AccountRow | null> {
  const today = await db.selectFrom("accounts").selectAll().where("personId", "=", personId).executeTakeFirst();
  const person = await db.selectFrom("people").select("state").where("id", "=", personId).executeTakeFirst();
  const isSame = today?.passwordHash === passwordHash && today.pinHash === pinHash;
  return isSame && person?.state === "works here" ? (today ?? null) : null;
}

/** What is empty or longer than anything that is kept is wrong; something else is hashed in its place, for as long. */
async function fits({ hasher }: AccountParts, secret: string, encoded: string): Promise<boolean> {
  const plain = normalized(secret);
  const couldBe = plain !== "" && !isTooLong(plain);
  const isRight = await hasher.isRight(couldBe ? plain : NOTHING, encoded);
  return isRight && couldBe;
}

/** In the trail stands that it was tried, and for whom where it is somebody's name; never what was typed. */
function noteFailure({ session }: AccountParts, personId: string | null, secret: "password" | "pin"): Promise<unknown> {
  const { shopId, newId, now } = session;
  const about = personId === null ? { kind: "settings", thingId: shopId, by: shopId } : { kind: "people", thingId: personId, by: personId };
  const fields = JSON.stringify([secret]);
  const row = { id: newId(), shopId, at: timeOf(now()), did: "fail to sign in", ...about, fields };
  return session.unnoted((inside) => inside.insertInto("audit").values(row).execute());
}
