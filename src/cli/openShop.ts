import { existsSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { isAddress, withoutPassword } from "#records/database/address";
import { shopFolder } from "#records/folder";
import { openRecords } from "#records/openRecords";
import type { Records, RecordsParts } from "#records/records";
import { shopsOf } from "#records/shopsOf";
import { programVersion } from "#server/version";
import { RECORDS } from "#words/en/records";
import type { Options } from "./options.ts";
import { usageFault } from "./usageFault.ts";
import type { World } from "./world.ts";

/** What the records need; a place is a shop's folder or the address of a PostgreSQL database. */
export function recordsParts(place: Place, { now, randomBytes }: World): RecordsParts {
  const { folder, address, shop } = place;
  const where = { ...(address === null ? {} : { postgres: address }), ...(shop === null ? {} : { shop }) };
  return { folder, ...where, now, randomBytes, programVersion: programVersion() };
}

/** Where records lie. A database wants a folder too, for the backups and the ledger of erasures of this machine. */
export interface Place {
  readonly folder: string;
  readonly address: string | null;
  /** Name or id of the shop, where there are several. */
  readonly shop: string | null;
}

/**
 * Opens the records of a place for as long as `work` takes. A folder that holds none is refused: a slip of the pen makes no new shop.
 *
 * @param word a folder, or an address; with an address a folder is made for the while
 */
export async function withRecords<Answer>(
  word: string,
  { shop }: Pick<Options, "shop">,
  world: World,
  work: (records: Records) => Promise<Answer>,
): Promise<Answer> {
  if (!isAddress(word)) return withPlace({ folder: word, address: null, shop }, world, work);
  const folder = await mkdtemp(join(tmpdir(), "gritwright-"));
  try {
    return await withPlace({ folder, address: word, shop }, world, work);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

export async function withPlace<Answer>(place: Place, world: World, work: (records: Records) => Promise<Answer>): Promise<Answer> {
  await mustHoldShop(place, world);
  const records = await openRecords(recordsParts(place, world));
  try {
    return await work(records);
  } finally {
    await records.close();
  }
}

/** @throws {JobFault} where the place holds no records of a shop */
export async function mustHoldShop({ folder, address }: Place, world: World): Promise<void> {
  if (address === null && !existsSync(shopFolder(folder).database))
    throw usageFault(`${RECORDS.noShop(folder)}.`, "a folder with the records of a shop", folder);
  if (address === null || (await shopsOf({ place: address, ...world })).length > 0) return;
  throw usageFault(`${RECORDS.noShop(withoutPassword(address))}.`, "a database with the records of a shop", null);
}

/** Whose work it is: the person with these initials, or the only one. @throws {JobFault} where that is nobody, or several */
export async function personWith(initials: string | null, records: Records): Promise<string> {
  const { items } = await records.people.list({ where: { state: "works here" }, limit: 500 });
  const meant = initials === null ? items : items.filter((person) => person.initials === initials);
  if (meant.length === 1) return meant[0].id;
  const all = items.map((person) => person.initials).join(", ");
  throw usageFault(`Who does it? --by wants the initials of one of ${all}.`, all, initials);
}

/** The words of a command, one for each name. @throws {JobFault} where there are more or fewer */
export function wordsFor(given: readonly string[], command: string, names: readonly string[]): readonly string[] {
  if (given.length === names.length) return given;
  const usage = `gritwright ${command} ${names.join(" ")}`;
  throw usageFault(
    `gritwright ${command} wants ${names.length} ${names.length === 1 ? "word" : "words"}: ${usage}.`,
    usage,
    given.join(" "),
  );
}
