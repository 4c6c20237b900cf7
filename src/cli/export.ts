import { existsSync } from "node:fs";
import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { RECORDS } from "#words/en/records";
import { withRecords, wordsFor } from "./openShop.ts";
import type { Options } from "./options.ts";
import { usageFault } from "./usageFault.ts";
import type { ExitCode, World } from "./world.ts";

/** `gritwright export FOLDER INTO`: everything that is kept, as one JSON and a table a kind, into a new folder. */
export async function exportAll(words: readonly string[], options: Options, world: World): Promise<ExitCode> {
  const [folder, into] = wordsFor(words, "export", ["FOLDER", "INTO"]);
  const files = await withRecords(folder, options, world, async ({ lists, audit, people, newerProgram }) => {
    const exported = await lists.exportAll();
    const [first] = (await people.list({ order: "oldest first", limit: 1 })).items;
    // Where a newer program asks this one only to read, not even that can be written down.
    if (newerProgram === null) await audit.note("export", first.id);
    return exported;
  });
  await mkdir(into, { recursive: true });
  const there = files.find(({ name }) => existsSync(join(into, name)));
  if (there !== undefined) throw usageFault(RECORDS.exportThere(into, there.name), "a folder without an export in it", into);
  for (const { name, text } of files) await writeFile(join(into, name), text, { flag: "wx", mode: 0o600 });
  if (options.json) world.print(`${JSON.stringify({ gritwright: 1, kind: "exported", files: files.map(({ name }) => name) }, null, 2)}\n`);
  else world.print(`${RECORDS.exported(files.length, into)}\n`);
  return 0;
}
