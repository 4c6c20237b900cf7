import { copyFileSync, cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, dirname, join } from "node:path";
import type { RecordsFault } from "#contract/records/fault";
import { uniformSource } from "#engine/random";
import { restoreBackup } from "#records/backup/restoreBackup";
import { verifyBackup } from "#records/backup/verifyBackup";
import { openRecords } from "#records/openRecords";
import type { RecordsParts } from "#records/records";
import { AWKWARD_PICTURES, ZIP_IN_ITSELF } from "../../../test/records/awkwardFiles.ts";
import { onTheCounter, type TestShop, testShop } from "../../../test/records/shop.ts";
import type { Drill, Outcome, Setting } from "../drill.ts";

const FLIPS = { short: 60, long: 200 } as const;
const CUTS = { short: 10, long: 40 } as const;
/** With photos beside it, and in it. */
const FORMS = ["sharing", "whole"] as const;
/** Which part of the flipped bits is in a photo that lies beside a backup. */
const IN_A_PHOTO = 0.3;

/** Backups of files that look like pieces of a zip are put back; then bits of them are flipped, and they are cut short. */
export const damagedBackups: Drill = {
  name: "Backups of awkward files: restored, bits flipped, cut short",
  async run({ seed, size, postgres }) {
    const onFile = await drilled({ seed, size }, null);
    return postgres === null ? [onFile] : [onFile, await drilled({ seed, size }, await postgres.newDatabase())];
  },
};

async function drilled({ seed, size }: Pick<Setting, "seed" | "size">, database: string | null): Promise<Outcome> {
  const shop = await testShop(database === null ? {} : { postgres: database });
  const scratch = mkdtempSync(join(tmpdir(), "gritwright-damaged-"));
  const broken: string[] = [];
  try {
    const files = await awkward(shop);
    const paths = [await madeBackup(shop, FORMS[0]), await madeBackup(shop, FORMS[1])];
    await shop.records.close();
    for (const path of paths) {
      broken.push(...(await restored(path, shop.parts, join(scratch, "restored"), files)));
      if (database !== null) broken.push(...(await restored(path, shop.parts, null, files)));
    }
    const random = uniformSource(seed);
    const tally = { found: 0, harmless: 0 };
    for (let i = 0; i < FLIPS[size]; i += 1)
      broken.push(...(await flipped(paths[i % 2], FORMS[i % 2], join(scratch, "flipped"), random, tally)));
    for (let i = 0; i < CUTS[size]; i += 1) broken.push(...(await cut(paths[i % 2], join(scratch, "cut"), random)));
    return {
      on: database === null ? "SQLite" : "PostgreSQL",
      rounds: FLIPS[size] + CUTS[size] + paths.length,
      acknowledged: null,
      lost: null,
      doubled: null,
      longestFreezeMs: null,
      memoryMb: null,
      note: `bits flipped: ${tally.found} found, ${tally.harmless} harmless; cut: all found; ${files.length} awkward files restored`,
      broken,
    };
  } finally {
    await shop.end();
    rmSync(scratch, { recursive: true, force: true });
  }
}

interface AwkwardFile {
  readonly kind: "photos" | "profileFiles";
  readonly id: string;
  readonly bytes: Buffer;
}

async function awkward(shop: TestShop): Promise<AwkwardFile[]> {
  const { records, by } = shop;
  const { ball } = await onTheCounter(shop);
  const files: AwkwardFile[] = [];
  for (const bytes of AWKWARD_PICTURES) {
    const { id } = await records.photos.add({ ballId: ball.id, of: "condition" }, bytes, { by });
    files.push({ kind: "photos", id, bytes });
  }
  for (const [name, bytes] of [["invented.x3p", ZIP_IN_ITSELF] as const, ["end.zip", ZIP_IN_ITSELF.subarray(-22)] as const]) {
    const { id } = await records.profileFiles.add({ ballId: ball.id, name }, bytes, { by });
    files.push({ kind: "profileFiles", id, bytes });
  }
  return files;
}

async function madeBackup({ records }: TestShop, form: (typeof FORMS)[number]): Promise<string> {
  return records.backups.path((await records.backups.make("asked", form)).name);
}

/** @param folder null: in the place of the PostgreSQL database */
async function restored(path: string, parts: RecordsParts, folder: string | null, files: readonly AwkwardFile[]): Promise<string[]> {
  const { postgres: _, ...inFolder } = parts;
  const where: RecordsParts = folder === null ? parts : { ...inFolder, folder };
  await restoreBackup(path, where);
  const records = await openRecords(where);
  const wrong: string[] = [];
  for (const { kind, id, bytes } of files)
    if (!bytes.equals(await records[kind].bytes(id).catch(() => Buffer.alloc(0)))) wrong.push(`${kind} ${id} was not restored as it was`);
  await records.close();
  if (folder !== null) rmSync(folder, { recursive: true });
  return wrong;
}

/** A copy of a backup with what lies beside it, in one file of which one bit is another: it is found, or reads as it was. */
async function flipped(
  path: string,
  form: (typeof FORMS)[number],
  folder: string,
  random: () => number,
  tally: { found: number; harmless: number },
): Promise<string[]> {
  cpSync(dirname(path), folder, { recursive: true });
  const copy = join(folder, basename(path));
  const sound = await verifyBackup(copy);
  const blobs = readdirSync(join(folder, "blobs")).filter((name) => /^[0-9a-f]{64}$/.test(name));
  const inBlob = form === "sharing" && random() < IN_A_PHOTO;
  const victim = inBlob ? join(folder, "blobs", blobs[Math.floor(random() * blobs.length)]) : copy;
  const bytes = readFileSync(victim);
  const at = Math.floor(random() * bytes.length);
  bytes[at] ^= 1 << Math.floor(random() * 8);
  writeFileSync(victim, bytes);
  const outcome = await verifyBackup(copy).catch((fault: RecordsFault) => fault);
  rmSync(folder, { recursive: true });
  if (outcome instanceof Error) tally.found += 1;
  else tally.harmless += 1;
  if (outcome instanceof Error) return outcome.kind === "badBackup" ? [] : [`a bit at ${at}: ${outcome.message}`];
  return JSON.stringify(outcome) === JSON.stringify(sound) ? [] : [`a bit at ${at} was not found, and something else is read`];
}

async function cut(path: string, folder: string, random: () => number): Promise<string[]> {
  cpSync(join(dirname(path), "blobs"), join(folder, "blobs"), { recursive: true });
  const copy = join(folder, basename(path));
  copyFileSync(path, copy);
  const length = Math.floor(random() * statSync(path).size);
  writeFileSync(copy, readFileSync(copy).subarray(0, length));
  const outcome = await verifyBackup(copy).catch((fault: RecordsFault) => fault);
  rmSync(folder, { recursive: true });
  return outcome instanceof Error ? [] : [`cut short at ${length} it was taken for sound`];
}
