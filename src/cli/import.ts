import type { ImportKind, ImportPreview } from "#records/lists/lists";
import { RECORDS } from "#words/en/records";
import { personWith, withRecords, wordsFor } from "./openShop.ts";
import type { Options } from "./options.ts";
import { readTableText } from "./readJob.ts";
import { usageFault } from "./usageFault.ts";
import type { ExitCode, World } from "./world.ts";

/** `gritwright import KIND FILE FOLDER`: shows what a table of bowlers or balls would add; with `--apply` adds it, all rows or none. */
export async function importTable(words: readonly string[], options: Options, world: World): Promise<ExitCode> {
  const [kind, path, folder] = wordsFor(words, "import", ["KIND", "FILE", "FOLDER"]);
  if (kind !== "bowlers" && kind !== "balls")
    throw usageFault(`import wants bowlers or balls; "${kind}" is neither.`, "bowlers, balls", kind);
  const csv = await readTableText(path);
  return withRecords<ExitCode>(folder, options, world, async (records) => {
    const mapping = options.map ?? undefined;
    const preview = await records.lists.preview(kind as ImportKind, csv, mapping);
    if (!options.apply || preview.problems.length > 0) {
      if (options.json) world.print(`${JSON.stringify({ gritwright: 1, kind: "importPreview", ...preview }, null, 2)}\n`);
      else world.print(`${previewText(preview).join("\n")}\n`);
      return preview.problems.length > 0 ? 3 : 0;
    }
    const done = await records.lists.apply(kind, csv, mapping, { by: await personWith(options.by, records) });
    if (options.json) world.print(`${JSON.stringify({ gritwright: 1, kind: "imported", ...done }, null, 2)}\n`);
    else world.print(`${RECORDS.imported(done.added, done.alreadyThere, done.importId)}\n`);
    return 0;
  });
}

/** `gritwright undo ID FOLDER`: takes out what an import added. */
export async function undo(words: readonly string[], options: Options, world: World): Promise<ExitCode> {
  const [importId, folder] = wordsFor(words, "undo", ["ID", "FOLDER"]);
  return withRecords<ExitCode>(folder, options, world, async (records) => {
    const takenOut = await records.lists.undo(importId, { by: await personWith(options.by, records) });
    if (options.json) world.print(`${JSON.stringify({ gritwright: 1, kind: "importUndone", takenOut }, null, 2)}\n`);
    else world.print(`${RECORDS.undone(takenOut)}\n`);
    return 0;
  });
}

function previewText({ columns, mapping, rows, alreadyThere, problems }: ImportPreview): string[] {
  const field = (column: string) => (Object.hasOwn(mapping, column) ? RECORDS.feeds(column, mapping[column]) : RECORDS.leftOut(column));
  return [
    ...columns.map(field),
    ...problems.map(({ row, column, value, allowed }) => RECORDS.badRow(row, column, value, allowed)),
    RECORDS.preview(rows, alreadyThere),
  ];
}
