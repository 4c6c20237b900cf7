import { createHash } from "node:crypto";
import type { Db } from "../database/tables.ts";
import { type Session, timeOf } from "../session.ts";

/** Vain tries for one name that cost no wait: fingers slip. */
const FREE_TRIES = 3;
const LONGEST_WAIT_MS = 15 * 60_000;
/** Vain tries from one address, whatever the names, before it waits until the span is over. */
const ADDRESS_TRIES = 30;
const ADDRESS_SPAN_MS = 15 * 60_000;
const SECOND_MS = 1000;

/**
 * Who tries. Names that nobody has are counted like those that somebody has, or their wait would tell which is which. A device that is known, and
 * somebody who is in already, wait for their own vain tries alone: others' are no reason to keep them out.
 */
export type Trying = { readonly name: string; readonly address: string } | { readonly device: string } | { readonly confirming: string };

/** How long a name waits after so many vain tries in a row, ms: 2 s after the fourth, doubled with each, a quarter of an hour at most. */
export function waitAfter(failures: number): number {
  return failures <= FREE_TRIES ? 0 : Math.min(SECOND_MS * 2 ** (failures - FREE_TRIES), LONGEST_WAIT_MS);
}

/**
 * Counts a try before it is looked at, so that many at once are not all looked at before the first is counted.
 *
 * @returns null where it may be looked at, else how long to wait, s
 */
export async function beginTry({ db: readOnly, shopId, now, unnoted }: Session, trying: Trying): Promise<number | null> {
  // Who only is to wait writes nothing: a flood of tries would else keep the shop's own writes waiting.
  const mustWait = waitOf(await countsOf(readOnly, trying), now());
  if (mustWait !== null) return mustWait;
  return unnoted(async (db) => {
    const at = now();
    const counts = await countsOf(db, trying);
    const waits = waitOf(counts, at);
    if (waits !== null) return waits;
    const { ofName, ofAddress } = counts;
    const nameFailures = ofName.failures + 1;
    await keep(db, shopId, aboutOne(trying), { failures: nameFailures, since: at, waitUntil: at + waitAfter(nameFailures) });
    if (!("address" in trying)) return null;
    const isNewSpan = at - ofAddress.since > ADDRESS_SPAN_MS;
    const since = isNewSpan ? at : ofAddress.since;
    const failures = isNewSpan ? 1 : ofAddress.failures + 1;
    const waitUntil = failures >= ADDRESS_TRIES ? since + ADDRESS_SPAN_MS : at;
    await keep(db, shopId, aboutAddress(trying.address), { failures, since, waitUntil });
    return null;
  });
}

/** The try was none: the name begins anew, and the address has one less. */
export async function endTry(db: Db, shopId: string, trying: Trying, at: number): Promise<void> {
  await db.deleteFrom("tries").where("about", "=", aboutOne(trying)).execute();
  if (!("address" in trying)) return;
  const about = aboutAddress(trying.address);
  const count = await countOf(db, about);
  if (count.failures > 0)
    await keep(db, shopId, about, { ...count, failures: count.failures - 1, waitUntil: Math.min(count.waitUntil, at) });
}

/** Counts that hold nobody back any more. */
export async function forgetTries(db: Db, before: number): Promise<void> {
  await db.deleteFrom("tries").where("since", "<", timeOf(before)).where("waitUntil", "<", timeOf(before)).execute();
}

interface Count {
  readonly failures: number;
  readonly since: number;
  readonly waitUntil: number;
}

interface Counts {
  readonly ofName: Count;
  readonly ofAddress: Count;
}

async function countsOf(db: Db, trying: Trying): Promise<Counts> {
  const ofAddress = "address" in trying ? await countOf(db, aboutAddress(trying.address)) : NONE;
  return { ofName: await countOf(db, aboutOne(trying)), ofAddress };
}

const NONE: Count = { failures: 0, since: 0, waitUntil: 0 };

/** Seconds; null where nothing is to be waited for. */
function waitOf({ ofName, ofAddress }: Counts, at: number): number | null {
  const waits = Math.max(ofName.waitUntil, ofAddress.waitUntil) - at;
  return waits > 0 ? Math.ceil(waits / SECOND_MS) : null;
}

async function countOf(db: Db, about: string): Promise<Count> {
  const row = await db.selectFrom("tries").selectAll().where("about", "=", about).executeTakeFirst();
  if (row === undefined) return NONE;
  return { failures: row.failures, since: Date.parse(row.since), waitUntil: Date.parse(row.waitUntil) };
}

async function keep(db: Db, shopId: string, about: string, { failures, since, waitUntil }: Count): Promise<void> {
  const counted = { failures, since: timeOf(since), waitUntil: timeOf(waitUntil) };
  const { numUpdatedRows } = await db.updateTable("tries").set(counted).where("about", "=", about).executeTakeFirst();
  if (numUpdatedRows > 0n) return;
  await db
    .insertInto("tries")
    .values({ shopId, about, ...counted })
    .execute();
}

function aboutOne(trying: Trying): string {
  if ("device" in trying) return `device ${trying.device}`;
  return "confirming" in trying ? `confirming ${trying.confirming}` : aboutName(trying.name);
}

/** Its digest: somebody types a password where the name belongs sooner or later. */
function aboutName(name: string): string {
  return `name ${createHash("sha256").update(name).digest("hex")}`;
}

function aboutAddress(address: string): string {
  return `address ${address}`;
}
