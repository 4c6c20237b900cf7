import { existsSync } from "node:fs";
import { readdir, rm, stat } from "node:fs/promises";
import { basename, join } from "node:path";
import { RecordsFault } from "#contract/records/fault";
import { withFaults } from "../database/driverFault.ts";
import type { ShopFolder } from "../folder.ts";
import type { RecordsParts } from "../records.ts";
import type { BackupSource } from "./backupJob.ts";
import { backupName, backupNameParts } from "./backupName.ts";
import { backupProcesses } from "./backupProcesses.ts";
import type { BackupFile, Backups } from "./backups.ts";
import { failureMark, isFailure } from "./failure.ts";
import { backupsToKeep, isDue } from "./retention.ts";
import { wholeCopy } from "./wholeCopy.ts";

interface BackupParts extends Pick<RecordsParts, "now" | "programVersion"> {
  readonly from: BackupSource;
  /** Throws where what is to be backed up is not where it was. */
  readonly mustBeThere?: () => void;
  readonly folder: ShopFolder;
}

export interface AllBackups extends Backups {
  makeFor(why: BackupFile["why"], form?: "sharing" | "whole"): Promise<BackupFile>;
  /** Ends what is under way. */
  close(): Promise<void>;
}

export function backups({ folder, now, programVersion, from, mustBeThere = () => {} }: BackupParts): AllBackups {
  const processes = backupProcesses();
  const failures = failureMark(folder);
  const make = async (why: BackupFile["why"], form: "sharing" | "whole"): Promise<BackupFile> => {
    const madeAt = new Date(now()).toISOString();
    const name = backupName({ madeAt, why });
    try {
      mustBeThere();
      const asked = { name, madeAt, why, isWhole: form === "whole", programVersion };
      const { bytes, lostFiles } = await processes.run({ does: "make", folder, from, asked });
      await failures.clear(lostFiles);
      return { name, madeAt, bytes, why };
    } catch (error) {
      if (isFailure(error)) await failures.set({ at: madeAt, why, fault: error instanceof RecordsFault ? error.kind : "broken" });
      throw error;
    }
  };
  const scheduled = async () => (await all.list()).filter(({ why }) => why === "scheduled");
  const all: AllBackups = {
    list: () => withFaults(folder.backups, () => listed(folder)),
    async state() {
      const [newest] = await withFaults(folder.backups, () => names(folder));
      return { lastMadeAt: newest?.madeAt ?? null, failed: await failures.get(), lostFiles: await failures.lostFiles() };
    },
    make: (why, form) => all.makeFor(why, form),
    makeFor: (why, form = "sharing") => withFaults(folder.backups, () => make(why, form)),
    async keepUp() {
      const times = (await scheduled()).map(({ madeAt }) => madeAt);
      const made = isDue(times, now()) ? await all.makeFor("scheduled") : null;
      const there = await scheduled();
      const keep = backupsToKeep(
        there.map(({ madeAt }) => madeAt),
        now(),
      );
      const out = there.filter(({ madeAt }) => !keep.has(madeAt));
      for (const { name } of out) await withFaults(folder.backups, () => rm(join(folder.backups, name)));
      if (made !== null || out.length > 0) await processes.run({ does: "free", folder, now: now() });
      return { made, takenOut: out.map(({ name }) => name) };
    },
    verify: async (name) => processes.run({ does: "verify", path: await all.path(name) }),
    path: async (name) => pathOf(folder, name),
    send: (name) => withFaults(name, async () => ({ name, stream: await wholeCopy(pathOf(folder, name)) })),
    close: processes.close,
  };
  return all;
}

/** Only names of backups lead anywhere: no path climbs out of the folder. */
function pathOf(folder: ShopFolder, name: string): string {
  const path = join(folder.backups, basename(name));
  if (backupNameParts(name) !== null && existsSync(path)) return path;
  throw new RecordsFault("notFound", `backup ${name}`);
}

/** Newest first. */
async function names({ backups: path }: ShopFolder): Promise<Omit<BackupFile, "bytes">[]> {
  if (!existsSync(path)) return [];
  return (await readdir(path))
    .sort()
    .reverse()
    .flatMap((name) => {
      const parts = backupNameParts(name);
      return parts === null ? [] : [{ name, ...parts }];
    });
}

async function listed(folder: ShopFolder): Promise<BackupFile[]> {
  const files = await names(folder);
  return Promise.all(files.map(async (file) => ({ ...file, bytes: (await stat(join(folder.backups, file.name))).size })));
}
