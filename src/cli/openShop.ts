import { existsSync } from "node:fs";
import { shopFolder } from "#records/folder";
import { openRecords } from "#records/openRecords";
import type { Records, RecordsParts } from "#records/records";
import { programVersion } from "#server/version";
import { RECORDS } from "#words/en/records";
import { usageFault } from "./options.ts";
import type { World } from "./world.ts";

export function recordsParts(folder: string, { now, randomBytes }: World): Omit<RecordsParts, "postgres"> {
  return { folder, now, randomBytes, programVersion: programVersion() };
}

/** Opens the records of a folder for as long as `work` takes. A folder that holds none is refused: a slip of the pen makes no new shop. */
export async function withRecords<Answer>(folder: string, world: World, work: (records: Records) => Promise<Answer>): Promise<Answer> {
  if (!existsSync(shopFolder(folder).database))
    throw usageFault(`${RECORDS.noShop(folder)}.`, "a folder with the records of a shop", folder);
  const records = await openRecords(recordsParts(folder, world));
  try {
    return await work(records);
  } finally {
    await records.close();
  }
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
  throw usageFault(`gritwright ${command} wants ${names.length} words: ${usage}.`, usage, given.join(" "));
}
