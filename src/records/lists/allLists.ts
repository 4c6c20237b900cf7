import { withFaults } from "../database/driverFault.ts";
import type { Session } from "../session.ts";
import { exportAll } from "./exportAll.ts";
import { IMPORT_FIELDS } from "./importFields.ts";
import { applyImport, judged, undoImport } from "./importTable.ts";
import type { Lists } from "./lists.ts";
import { readTable } from "./readTable.ts";

/** How many rows a preview shows. */
const SAMPLE = 10;

export function lists(session: Session): Lists {
  return {
    exportAll: () => withFaults("export", () => exportAll(session)),
    preview: (kind, csv, mapping) =>
      withFaults("import", async () => {
        const table = await readTable(kind, csv, mapping);
        const { toAdd, alreadyThere, problems } = await judged(session, kind, table);
        const { columns, rows } = table;
        const sample = toAdd.slice(0, SAMPLE);
        return {
          columns,
          mapping: table.mapping,
          fields: Object.keys(IMPORT_FIELDS[kind]),
          rows: rows.length,
          alreadyThere,
          sample,
          problems,
        };
      }),
    apply: (kind, csv, mapping, write) => applyImport(session, kind, csv, mapping, write),
    undo: (importId, write) => undoImport(session, importId, write),
  };
}
