import { existsSync } from "node:fs";
import { readdir, rename, rm, stat } from "node:fs/promises";
import { basename, join } from "node:path";
import type { Database } from "better-sqlite3";
import { THING_KINDS } from "#contract/records/auditEntry";
import { RecordsFault } from "#contract/records/fault";
import { withFaults } from "../database/driverFault.ts";
import { schemaState } from "../database/migrate.ts";
import { STEPS } from "../database/migrations/steps.ts";
import { openSqlite } from "../database/sqlite.ts";
import { syncFolder } from "../files/syncedFile.ts";
import { prepareBackups, type ShopFolder } from "../folder.ts";
import { ledgerText } from "../personal/ledger.ts";
import type { RecordsParts } from "../records.ts";
import { fileNameOf } from "../things/attachments.ts";
import type { BackupFile, Backups } from "./backups.ts";
import { BACKUP_VERSION, MANIFEST, MANIFEST_SUM, type Manifest } from "./manifest.ts";
import { backupsToKeep, isDue } from "./retention.ts";
import type { Snapshot, WithSnapshot } from "./snapshot.ts";
import { verifyBackup } from "./verifyBackup.ts";
import { type ZipEntry, type ZipWriter, zipWriter } from "./zipFile.ts";

interface BackupParts {
  readonly now: RecordsParts["now"];
  readonly programVersion: string;
  readonly withSnapshot: WithSnapshot;
  readonly folder: ShopFolder;
}

export interface AllBackups extends Backups {
  makeFor(why: BackupFile["why"]): Promise<BackupFile>;
}

const NAME = /^gritwright-(\d{4}-\d{2}-\d{2}T\d{2})-(\d{2})-(\d{2}\.\d{3}Z)-(asked|scheduled|before-migration|before-restore)\.zip$/;

export function backups(parts: BackupParts): AllBackups {
  const { folder, now } = parts;
  const all: AllBackups = {
    list: () => withFaults(folder.backups, () => listed(folder)),
    make: (why) => all.makeFor(why),
    makeFor: (why) => withFaults(folder.backups, () => make(parts, why)),
    async keepUp() {
      const scheduled = async () => (await all.list()).filter(({ why }) => why === "scheduled");
      const times = (await scheduled()).map(({ madeAt }) => madeAt);
      const made = isDue(times, now()) ? await all.makeFor("scheduled") : null;
      const keep = backupsToKeep(
        (await scheduled()).map(({ madeAt }) => madeAt),
        now(),
      );
      const out = (await scheduled()).filter(({ madeAt }) => !keep.has(madeAt));
      for (const { name } of out) await withFaults(folder.backups, () => rm(join(folder.backups, name)));
      return { made, takenOut: out.map(({ name }) => name) };
    },
    verify: async (name) => verifyBackup(await all.path(name)),
    path: async (name) => pathOf(folder, name),
  };
  return all;
}

/** Only names of backups lead anywhere: no path climbs out of the folder. */
function pathOf(folder: ShopFolder, name: string): string {
  const path = join(folder.backups, basename(name));
  if (NAME.test(name) && existsSync(path)) return path;
  throw new RecordsFault("notFound", `backup ${name}`);
}

async function listed({ backups: path }: ShopFolder): Promise<BackupFile[]> {
  if (!existsSync(path)) return [];
  const files: BackupFile[] = [];
  for (const name of (await readdir(path)).sort().reverse()) {
    const [, hours, minutes, seconds, why] = NAME.exec(name) ?? [];
    if (why === undefined) continue;
    const { size } = await stat(join(path, name));
    files.push({ name, madeAt: `${hours}:${minutes}:${seconds}`, bytes: size, why: why.replace("-", " ") as BackupFile["why"] });
  }
  return files;
}

/** Copies the database as of one moment while it is used, puts the copy and the files it speaks of into one file, and gives that its name last. */
async function make(parts: BackupParts, why: BackupFile["why"]): Promise<BackupFile> {
  const { folder, now } = parts;
  const madeAt = new Date(now()).toISOString();
  const name = `gritwright-${madeAt.replaceAll(":", "-")}-${why.replace(" ", "-")}.zip`;
  prepareBackups(folder);
  const making = join(folder.backups, `${name}.making`);
  const copy = join(folder.backups, `${name}.copy`);
  const zip = zipWriter(making);
  try {
    const manifest = await parts.withSnapshot(async (snapshot) => {
      await snapshot.copyTo(copy);
      return fill(zip, copy, snapshot, parts, { madeAt, why });
    });
    const { sha256 } = await zip.addText(MANIFEST, `${JSON.stringify(manifest, null, 1)}\n`);
    await zip.addText(MANIFEST_SUM, sha256);
    await zip.end();
    await rename(making, join(folder.backups, name));
    await syncFolder(folder.backups);
  } finally {
    zip.abandon();
    for (const left of [making, copy, `${copy}-wal`, `${copy}-shm`]) await rm(left, { force: true });
  }
  const { size } = await stat(join(folder.backups, name));
  return { name, madeAt, bytes: size, why };
}

async function fill(
  zip: ZipWriter,
  copy: string,
  snapshot: Snapshot,
  { programVersion }: BackupParts,
  about: Pick<Manifest, "madeAt" | "why">,
): Promise<Manifest> {
  const { db, raw } = openSqlite(copy);
  try {
    const { at } = await schemaState({ db, engine: "sqlite", chance: () => 0 }, STEPS);
    const counts = Object.fromEntries(THING_KINDS.map((kind) => [kind, countIn(raw, kind)]));
    const attached = attachedNames(raw);
    raw.pragma("journal_mode = DELETE");
    raw.close();
    const files: ZipEntry[] = [await zip.addFile("records.sqlite", copy, "deflate")];
    const missing: string[] = [];
    for (const name of attached) {
      const pieces = await snapshot.file(name);
      // A photo that was lost must not keep everything else from being backed up; the manifest says so.
      if (pieces === null) missing.push(name);
      else files.push(await zip.add(name, pieces, "store"));
    }
    const erasures = await snapshot.erasures();
    if (erasures.length > 0) files.push(await zip.addText("erasures.jsonl", ledgerText(erasures)));
    return { gritwright: BACKUP_VERSION, kind: "backup", ...about, programVersion, schema: at, counts, missing, files };
  } finally {
    await db.destroy();
  }
}

/** Nothing of a table that an older schema does not have yet. */
function countIn(raw: Database, kind: string): number {
  const exists = raw.prepare("select 1 from sqlite_master where type = 'table' and name = ?").get(kind);
  return exists === undefined ? 0 : (raw.prepare(`select count(*) as n from "${kind}"`).get() as { n: number }).n;
}

/** Files that rows speak of. */
function attachedNames(raw: Database): string[] {
  const of = (kind: "photos" | "profileFiles") =>
    (raw.prepare(`select body from "${kind}"`).all() as { body: string }[]).map(({ body }) => fileNameOf(JSON.parse(body)));
  return [...new Set([...of("photos"), ...of("profileFiles")])];
}
