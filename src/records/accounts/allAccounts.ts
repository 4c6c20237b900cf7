import type { Account } from "#contract/records/account";
import { RecordsFault } from "#contract/records/fault";
import type { Role } from "#contract/records/roles";
import { withFaults } from "../database/driverFault.ts";
import type { Db } from "../database/tables.ts";
import { type Session, timeOf } from "../session.ts";
import { people } from "../things/plainKinds.ts";
import { settingsKind } from "../things/settings.ts";
import { store } from "../things/store.ts";
import type { AccountChange, Accounts, AccountWritten } from "./accounts.ts";
import { accountOf, accountRow, countAccounts, lastOwnerProblem } from "./owners.ts";
import { checkedPassword, checkedPin, nameKey, refused } from "./secrets.ts";
import { isLive, listSessions, recognise } from "./sessions.ts";
import { type AccountParts, changePerson, doubt, MOST_PINS, signIn } from "./signIn.ts";

/** Who may come in, and who is in, over one database. */
export function accounts(parts: AccountParts): Accounts {
  const { session } = parts;
  const { db } = session;
  const watchers = new Set<() => void>();
  const announced = async <Answer>(work: Promise<Answer>): Promise<Answer> => {
    const answer = await work;
    for (const watcher of watchers) watcher();
    return answer;
  };
  const guarded = <Answer>(work: () => Promise<Answer>): Promise<Answer> => withFaults("accounts", work);

  return {
    any: () => guarded(async () => (await countAccounts(db)) > 0),
    list: () =>
      guarded(async () => {
        const rows = await db.selectFrom("accounts").selectAll().orderBy("createdAt").execute();
        return rows.map((row) => accountOf(row, MOST_PINS));
      }),
    // Whoever came in without a session, before there was one, is out.
    open: (personId, written, by) => announced(open(parts, personId, written, by)),
    change: (personId, change, by, keep) => announced(changeAccount(parts, personId, change, by, keep ?? null)),
    close: (personId, by) => announced(close(session, personId, by)),
    doubt: (personId, password) => guarded(() => doubt(parts, personId, password)),
    signIn: (tried) => guarded(() => signIn(parts, tried)),
    changePerson: (from, to) => announced(guarded(() => changePerson(parts, from, to))),
    recognise: (token) => guarded(() => recognise(parts, token)),
    isLive: (id) => guarded(() => isLive(session, id)),
    sessions: (personId) => guarded(() => listSessions(session, personId)),
    endSession: (id) => announced(guarded(async () => void (await db.deleteFrom("sessions").where("id", "=", id).execute()))),
    endAllSessions: () => announced(guarded(async () => void (await session.acrossShops().db.deleteFrom("sessions").execute()))),
    watchEnds(tell) {
      watchers.add(tell);
      return () => {
        watchers.delete(tell);
      };
    },
    async setPassword(signInName, password) {
      const key = nameKey(signInName);
      const row = await db.selectFrom("accounts").select("personId").where("signInName", "=", key).executeTakeFirst();
      if (row !== undefined) return announced(changeAccount(parts, row.personId, { password }, row.personId, null));
      if ((await countAccounts(db)) > 0) throw new RecordsFault("notFound", `sign-in name ${key}`);
      const { items } = await store(session, people).list({ order: "oldest first", where: { state: "works here" }, limit: 1 });
      if (items.length === 0) throw refused("people", "somebody who works here", null);
      return announced(open(parts, items[0].id, { signInName, role: "owner", password }, items[0].id));
    },
  };
}

async function open({ session, hasher }: AccountParts, personId: string, written: AccountWritten, by: string): Promise<Account> {
  const key = nameKey(written.signInName);
  const password = checkedPassword(written.password, await namesOf(session, personId, key));
  const passwordHash = await hasher.hash(password);
  return session.write({ by }, async (inside) => {
    const { db, shopId } = inside;
    await store(inside, people).get(personId);
    await mustBeFree(inside, personId, key);
    if (written.role !== "owner" && (await countAccounts(db)) === 0)
      throw refused("role", "owner: the first who has a password", written.role);
    const known = await db.selectFrom("accounts").select("personId").where("personId", "=", personId).executeTakeFirst();
    if (known !== undefined) throw refused("personId", "somebody who has no sign-in yet", personId);
    const at = timeOf(inside.now());
    const made = { personId, shopId, signInName: key, role: written.role, passwordHash, pinHash: null, pinFailures: 0 };
    await db
      .insertInto("accounts")
      .values({ ...made, createdAt: at, changedAt: at })
      .execute();
    await noteChange(inside, personId, by, ["signInName", "role", "password"]);
    return accountOf({ ...made, createdAt: at, changedAt: at }, MOST_PINS);
  });
}

async function changeAccount(
  { session, hasher }: AccountParts,
  personId: string,
  { signInName, role, password, pin }: AccountChange,
  by: string,
  keep: string | null,
): Promise<Account> {
  const before = await withFaults("accounts", () => accountRow(session, personId));
  const key = signInName === undefined ? before.signInName : nameKey(signInName);
  const passwordHash =
    password === undefined ? {} : { passwordHash: await hasher.hash(checkedPassword(password, await namesOf(session, personId, key))) };
  const pinHash = pin === undefined ? {} : { pinHash: pin === null ? null : await hasher.hash(checkedPin(pin)), pinFailures: 0 };
  return session.write({ by }, async (inside) => {
    const { db } = inside;
    const row = await accountRow(inside, personId);
    if (key !== row.signInName) await mustBeFree(inside, personId, key);
    if (role !== undefined && role !== "owner") await mustLeaveOwner(inside, personId, role);
    const changes = {
      signInName: key,
      ...(role === undefined ? {} : { role }),
      ...passwordHash,
      ...pinHash,
      changedAt: timeOf(inside.now()),
    };
    await db.updateTable("accounts").set(changes).where("personId", "=", personId).execute();
    if (password !== undefined) await sessionsOf(db, personId, keep).execute();
    if (pin !== undefined) await sessionsOf(db, personId, keep).where("personId", "=", personId).where("begunBy", "!=", personId).execute();
    const fields = Object.entries({ signInName, role, password, pin }).flatMap(([field, value]) => (value === undefined ? [] : [field]));
    await noteChange(inside, personId, by, fields);
    return accountOf({ ...row, ...changes }, MOST_PINS);
  });
}

function close(session: Session, personId: string, by: string): Promise<void> {
  return session.write({ by }, async (inside) => {
    await accountRow(inside, personId);
    await mustLeaveOwner(inside, personId, null);
    await sessionsOf(inside.db, personId, null).execute();
    await inside.db.deleteFrom("accounts").where("personId", "=", personId).execute();
    await noteChange(inside, personId, by, ["signInName", "role", "password"]);
  });
}

/** Out with the sessions that a person is in or has begun. @param keep the one that goes on */
function sessionsOf(db: Db, personId: string, keep: string | null) {
  const ended = db.deleteFrom("sessions").where((where) => where.or([where("personId", "=", personId), where("begunBy", "=", personId)]));
  return keep === null ? ended : ended.where("id", "!=", keep);
}

/** A way in is a person's: the trail tells of it there, and only by the names of what was set. */
function noteChange(inside: Session, personId: string, by: string, fields: readonly string[]): Promise<void> {
  return inside.note({ shopId: inside.shopId, by, did: "change", kind: "people", thingId: personId, fields: [...fields] });
}

async function mustLeaveOwner(inside: Session, personId: string, role: Role | null): Promise<void> {
  const problem = await lastOwnerProblem(inside, personId, "role", role);
  if (problem !== null) throw new RecordsFault("refused", "accounts", { problems: [problem] });
}

async function mustBeFree({ db }: Session, personId: string, key: string): Promise<void> {
  if (key === "") throw refused("signInName", "text of 1 to 200 letters", key);
  const taken = await db.selectFrom("accounts").select("personId").where("signInName", "=", key).executeTakeFirst();
  if (taken !== undefined && taken.personId !== personId) throw refused("signInName", "a name that nobody else signs in with", key);
}

/** What somebody who knows the shop would guess first. */
async function namesOf(session: Session, personId: string, signInName: string): Promise<string[]> {
  const person = await withFaults("accounts", () => store(session, people).get(personId));
  const { shopName } = await withFaults("accounts", () => store(session, settingsKind).get(session.shopId));
  return [shopName, person.name, ...person.name.split(/\s+/), signInName];
}
