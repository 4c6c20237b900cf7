import type { Account } from "#contract/records/account";
import { RecordsFault } from "#contract/records/fault";
import type { Role } from "#contract/records/roles";
import type { Problem } from "#engine/fault";
import type { AccountRow, Db } from "../database/tables.ts";
import type { Session } from "../session.ts";

const OWNER_ALLOWED = "as it is: nobody else who works here is an owner with a password";

/** How many ways in there are. */
export async function countAccounts(db: Db): Promise<number> {
  const rows = await db.selectFrom("accounts").select("personId").execute();
  return rows.length;
}

export async function accountRow({ db }: Session, personId: string): Promise<AccountRow> {
  const row = await db.selectFrom("accounts").selectAll().where("personId", "=", personId).executeTakeFirst();
  if (row === undefined) throw new RecordsFault("notFound", `accounts ${personId}`);
  return row;
}

export function accountOf(
  { personId, signInName, role, pinHash, pinFailures, createdAt, changedAt }: AccountRow,
  mostPins: number,
): Account {
  const hasPin = pinHash !== null;
  return { personId, signInName, role: role as Role, hasPin, pinIsOff: hasPin && pinFailures >= mostPins, createdAt, changedAt };
}

/** The problem with taking an owner's place away from somebody: nobody could give anybody a password any more. */
export async function lastOwnerProblem({ db }: Session, personId: string, path: string, value: unknown): Promise<Problem | null> {
  const owners = await db.selectFrom("accounts").select("personId").where("role", "=", "owner").execute();
  if (!owners.some((owner) => owner.personId === personId)) return null;
  const others = owners.map((owner) => owner.personId).filter((id) => id !== personId);
  const working =
    others.length === 0
      ? []
      : await db.selectFrom("people").select("id").where("id", "in", others).where("state", "=", "works here").limit(1).execute();
  return working.length > 0 ? null : { path, value, allowed: OWNER_ALLOWED };
}
