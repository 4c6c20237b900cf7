import { createHash } from "node:crypto";
import { createReadStream, existsSync } from "node:fs";
import { copyFile, mkdir, open, readdir, rename, rm, stat } from "node:fs/promises";
import { dirname, join, relative } from "node:path";
import { RecordsFault } from "#contract/records/fault";
import { withFaults } from "#records/database/driverFault";
import { holdAlone } from "#records/database/holdAlone";
import { syncFolder, writeSynced } from "#records/files/syncedFile";
import { shopFolder } from "#records/folder";
import { MOVED_FROM, movedFrom } from "./movedFrom.ts";

/** Personal data are nobody else's to read on this machine. */
const OWNER_ONLY = 0o700;

/**
 * Moves a shop's folder elsewhere, also to another disk: copied under another name, every file compared, given its name, and only then the old one set
 * aside under another name. Killed at any point, either the old folder or the new one is whole under its name, and the same call goes on.
 *
 * @returns where the old one lies now; it is left to whoever sees that everything is there
 * @throws {RecordsFault} `busy` while somebody has the shop open or has written meanwhile, `full`, `readOnly`, `damaged` where a copy is not what it was
 *   copied from; the old folder is then as it was
 */
export function moveShop(from: string, to: string, today: string): Promise<string> {
  return withFaults(to, async () => {
    if (existsSync(to))
      throw new RecordsFault("refused", to, { problems: [{ path: to, value: null, allowed: "a folder that is not there" }] });
    const { database } = shopFolder(from);
    if (existsSync(database)) holdAlone(shopFolder(from))();
    const making = `${to}.moving`;
    await rm(making, { recursive: true, force: true });
    try {
      const before = await sumsOf(from);
      await copyTree(from, making, [...before.keys()]);
      mustBeAlike(before, await sumsOf(making), making, "damaged");
      // Whoever opened the shop meanwhile has left a trace in its files.
      mustBeAlike(before, await sumsOf(from), from, "busy");
      await writeSynced(join(making, MOVED_FROM), Buffer.from(JSON.stringify({ from, database: await databaseSum(from) })));
    } catch (error) {
      await rm(making, { recursive: true, force: true });
      throw error;
    }
    await rename(making, to);
    await syncFolder(dirname(to));
    return setAside(from, today);
  });
}

/**
 * Ends a move that was cut after the new folder had its name.
 *
 * @returns where the old one lies now; null where somebody has written there since, so that neither may be passed over
 */
export async function endMove(from: string, to: string, today: string): Promise<string | null> {
  return (await databaseSum(from)) === movedFrom(to)?.database ? setAside(from, today) : null;
}

/** What the database of a shop that nobody has open holds; null where it is a server's. */
async function databaseSum(folder: string): Promise<string | null> {
  const { database } = shopFolder(folder);
  if (!existsSync(database)) return null;
  const log = `${database}-wal`;
  return `${await sumOf(database)}${existsSync(log) ? await sumOf(log) : ""}`;
}

async function sumOf(path: string): Promise<string> {
  const hash = createHash("sha256");
  for await (const bytes of createReadStream(path)) hash.update(bytes);
  return hash.digest("hex");
}

/** Gives what was moved a name by which no program opens it. */
async function setAside(folder: string, today: string): Promise<string> {
  for (let count = 1; ; count++) {
    const aside = `${folder}.moved-${today}${count === 1 ? "" : `-${count}`}`;
    if (existsSync(aside)) continue;
    await rename(folder, aside);
    await syncFolder(dirname(folder));
    return aside;
  }
}

/** Checksum of every file under a folder, by its path from there. */
async function sumsOf(folder: string): Promise<Map<string, string>> {
  const sums = new Map<string, string>();
  for (const entry of await readdir(folder, { recursive: true, withFileTypes: true })) {
    const path = join(entry.parentPath, entry.name);
    // Where the photos lie on another disk, a link leads there: what it leads to is what is moved.
    if (entry.isDirectory() || (await stat(path)).isDirectory()) continue;
    sums.set(relative(folder, path), await sumOf(path));
  }
  return sums;
}

async function copyTree(from: string, to: string, files: readonly string[]): Promise<void> {
  const folders = new Set([to, ...files.map((file) => dirname(join(to, file)))]);
  await mkdir(dirname(to), { recursive: true, mode: OWNER_ONLY });
  for (const folder of folders) await mkdir(folder, { recursive: true, mode: OWNER_ONLY });
  for (const file of files) {
    await copyFile(join(from, file), join(to, file));
    const copy = await open(join(to, file), "r+");
    await copy.sync().finally(() => copy.close());
  }
  for (const folder of folders) await syncFolder(folder);
}

function mustBeAlike(
  wanted: ReadonlyMap<string, string>,
  found: ReadonlyMap<string, string>,
  about: string,
  kind: "damaged" | "busy",
): void {
  const isAlike = wanted.size === found.size && [...wanted].every(([path, sum]) => found.get(path) === sum);
  if (!isAlike) throw new RecordsFault(kind, about);
}
