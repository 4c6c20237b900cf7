import { promisify } from "node:util";
import { type AsyncZippable, zip } from "fflate";
import type { shopRoutes } from "#contract/routes/shop";
import type { Problem } from "#engine/fault";
import type { Records } from "#records/records";
import type { Handlers } from "../http/mount.ts";
import { changeOf, listed, writeOf } from "./keptHandlers.ts";

/** In threads of its own, one for each large file. */
const zipped = promisify<AsyncZippable, Uint8Array>(zip);

export function shopHandlers({ settings, audit, search, backups, lists, unreadable }: Records): Handlers<typeof shopRoutes> {
  return {
    getSettings: () => settings.get(),
    changeSettings: (request) => settings.change(request.body, changeOf(request)),
    listAudit: listed(audit),
    async search({ query }) {
      const { bowlers, balls } = await search.find(query.words);
      return { bowlers: [...bowlers], balls: [...balls] };
    },

    async listBackups() {
      const { failed } = await backups.state();
      return { items: [...(await backups.list())], failed };
    },
    makeBackup: () => backups.make("asked"),
    async verifyBackup({ params }) {
      const report = await backups.verify(params.name);
      return { ...report, counts: { ...report.counts }, missing: [...report.missing] };
    },
    async backupBytes({ params, by }) {
      const { stream, name } = await backups.send(params.name);
      await audit.note("take backup", by);
      return { bytes: stream, type: "application/zip", name };
    },
    async exportAll({ by }) {
      const files = await lists.exportAll();
      await audit.note("export", by);
      const named = Object.fromEntries(files.map(({ name, text }) => [name, new TextEncoder().encode(text)]));
      return { bytes: await zipped(named), type: "application/zip", name: "everything.zip" };
    },

    async listUnreadable() {
      const found = await unreadable.lookThrough();
      return { items: found.map(({ kind, id, problems }) => ({ kind, id, problems: problems.map(plainProblem) })) };
    },
    async getUnreadable({ params }) {
      const { kind, version, schemaVersion, body } = await unreadable.raw(params.id);
      return { kind, version, schemaVersion, document: body };
    },
    async mendUnreadable(request) {
      await unreadable.mend(request.params.id, request.body.document, changeOf(request));
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
    applyImport: (request) => lists.apply(request.body.kind, request.body.csv, request.body.mapping, writeOf(request)),
    undoImport: async (request) => ({ takenOut: await lists.undo(request.params.id, writeOf(request)) }),
  };
}

/** A value that is not there has no JSON. */
function plainProblem({ path, value, allowed }: Problem): Problem {
  return { path, value: value ?? null, allowed };
}
