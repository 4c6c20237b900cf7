import { readFile } from "node:fs/promises";
import { promisify } from "node:util";
import { type AsyncZippable, zip } from "fflate";
import type { shopRoutes } from "#contract/routes/shop";
import type { Records } from "#records/records";
import type { Handlers } from "../http/mount.ts";
import { changeOf, listed, writeOf } from "./keptHandlers.ts";

/** In threads of its own, one for each large file. */
const zipped = promisify<AsyncZippable, Uint8Array>(zip);

export function shopHandlers({ settings, audit, search, backups, lists }: Records): Handlers<typeof shopRoutes> {
  return {
    getSettings: () => settings.get(),
    changeSettings: (asked) => settings.change(asked.body, changeOf(asked)),
    listAudit: listed(audit),
    async search({ query }) {
      const { bowlers, balls } = await search.find(query.words);
      return { bowlers: [...bowlers], balls: [...balls] };
    },

    listBackups: async () => ({ items: [...(await backups.list())] }),
    makeBackup: () => backups.make("asked"),
    async verifyBackup({ params }) {
      const report = await backups.verify(params.name);
      return { ...report, counts: { ...report.counts }, missing: [...report.missing] };
    },
    async backupBytes({ params, by }) {
      const bytes = await readFile(await backups.path(params.name));
      await audit.note("take backup", by);
      return { bytes, type: "application/zip", name: params.name };
    },
    async exportAll({ by }) {
      const files = await lists.exportAll();
      await audit.note("export", by);
      const named = Object.fromEntries(files.map(({ name, text }) => [name, new TextEncoder().encode(text)]));
      return { bytes: await zipped(named), type: "application/zip", name: "everything.zip" };
    },

    async previewImport({ body }) {
      const preview = await lists.preview(body.kind, body.csv, body.mapping);
      return {
        columns: [...preview.columns],
        mapping: { ...preview.mapping },
        fields: [...preview.fields],
        rows: preview.rows,
        alreadyThere: preview.alreadyThere,
        sample: preview.sample.map((row) => ({ ...row })),
        problems: preview.problems.map((problem) => ({ ...problem })),
      };
    },
    applyImport: (asked) => lists.apply(asked.body.kind, asked.body.csv, asked.body.mapping, writeOf(asked)),
    undoImport: async (asked) => ({ takenOut: await lists.undo(asked.params.id, writeOf(asked)) }),
  };
}
