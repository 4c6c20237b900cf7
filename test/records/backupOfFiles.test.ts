import { copyFileSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { restoreBackup } from "#records/backup/restoreBackup";
import { verifyBackup } from "#records/backup/verifyBackup";
import { openRecords } from "#records/openRecords";
import { AWKWARD_PICTURES, ZIP_IN_ITSELF } from "./awkwardFiles.ts";
import { onTheCounter, type TestShop, testShop } from "./shop.ts";

/* Files whose bytes look like pieces of a zip, in backups. */

let shop: TestShop;
beforeEach(async () => {
  shop = await testShop();
});
afterEach(() => shop.end());

async function madeBackup(): Promise<string> {
  const { records } = shop;
  return records.backups.path((await records.backups.make("asked")).name);
}

describe("a backup of awkward files", () => {
  it("with an X3P, which is a zip in itself, reads back and is restored", async () => {
    const { records, by, parts } = shop;
    const { ball } = await onTheCounter(shop);
    const file = await records.profileFiles.add({ ballId: ball.id, name: "invented.x3p" }, ZIP_IN_ITSELF, { by });
    const path = await madeBackup();
    expect((await verifyBackup(path)).missing).toEqual([]);
    await records.close();
    await restoreBackup(path, parts);
    expect(Buffer.from(await (await shop.reopen()).profileFiles.bytes(file.id))).toEqual(ZIP_IN_ITSELF);
  });

  it.each(AWKWARD_PICTURES.map((picture, i) => [i, picture] as const))(
    "with a photo whose bytes hold a signature of zips (%s) reads back and is restored",
    async (_, picture) => {
      const { records, by, parts } = shop;
      const { ball } = await onTheCounter(shop);
      const photo = await records.photos.add({ ballId: ball.id, of: "condition" }, picture, { by });
      const path = await madeBackup();
      expect((await verifyBackup(path)).missing).toEqual([]);
      await records.close();
      await restoreBackup(path, parts);
      expect(Buffer.from(await (await shop.reopen()).photos.bytes(photo.id))).toEqual(picture);
    },
  );

  it("made by version 0.1.0 with all of them in it, which that version could not read back, is read and restored", async () => {
    // Made by 0.1.0, as it was when backups had no files beside them yet.
    const path = join(shop.parts.folder, "kept elsewhere.zip");
    copyFileSync(join(import.meta.dirname, "released", "0.1.0", "backup.zip"), path);
    const report = await verifyBackup(path);
    expect(report).toMatchObject({ programVersion: "0.0.0-test", missing: [], counts: { photos: 4, profileFiles: 1, bowlers: 2 } });
    const folder = mkdtempSync(join(tmpdir(), "gritwright-restored-"));
    const { postgres: _, ...parts } = { ...shop.parts, folder };
    await restoreBackup(path, parts);
    const restored = await openRecords(parts);
    const photos = await restored.photos.list({ order: "oldest first" });
    const bytes = await Promise.all(photos.items.map(async ({ id }) => Buffer.from(await restored.photos.bytes(id))));
    expect(bytes).toEqual(AWKWARD_PICTURES);
    const [file] = (await restored.profileFiles.list()).items;
    expect(Buffer.from(await restored.profileFiles.bytes(file.id))).toEqual(ZIP_IN_ITSELF);
    expect((await restored.bowlers.list({ order: "oldest first" })).items.map(({ name }) => name)).toEqual([
      "Ottilie Sandgrouse",
      "(erased)",
    ]);
    await restored.close();
    rmSync(folder, { recursive: true });
  });
});
