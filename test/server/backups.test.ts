import { mkdirSync, mkdtempSync, readdirSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { verifyBackup } from "#records/backup/verifyBackup";
import { shopFolder } from "#records/folder";
import { AWKWARD_PICTURES } from "../records/awkwardFiles.ts";
import { type TestShop, testShop } from "../records/shop.ts";
import { type ShopServer, shopServer } from "./shopServer.ts";

let kept: TestShop;
let shop: ShopServer;
beforeEach(async () => {
  kept = await testShop();
  shop = await shopServer({ shop: kept });
});
afterEach(() => shop.end());

describe("a backup over the wire", () => {
  test("is one file with the photos in it, whatever lies beside it at the server", async () => {
    for (const picture of AWKWARD_PICTURES) await kept.records.photos.add({ of: "other" }, picture, { by: kept.by });
    const { body: made } = await shop.ask("makeBackup");
    const { bytes } = await shop.ask("backupBytes", { params: { name: made.name } });
    const folder = mkdtempSync(join(tmpdir(), "gritwright-stick-"));
    writeFileSync(join(folder, "saved.zip"), bytes);
    expect(await verifyBackup(join(folder, "saved.zip"))).toMatchObject({ counts: { photos: 4 }, files: 5, missing: [] });
    rmSync(folder, { recursive: true });
  });

  test("that breaks off while it is sent does not end as if it were whole", async () => {
    await kept.records.photos.add({ of: "other" }, AWKWARD_PICTURES[0], { by: kept.by });
    const { body: made } = await shop.ask("makeBackup");
    rmSync(join(shopFolder(kept.parts.folder).backups, "blobs"), { recursive: true });
    await expect(shop.ask("backupBytes", { params: { name: made.name } })).rejects.toThrow();
  });
});

describe("a backup that failed", () => {
  test("is said by health without why, in the list with it, and by the metrics, until one succeeds", async () => {
    const { backups } = shopFolder(kept.parts.folder);
    const metrics = async () => new TextDecoder().decode((await shop.ask("metrics")).bytes);
    expect((await shop.ask("health")).body.lastBackup).toBe("none");
    mkdirSync(backups, { recursive: true });
    writeFileSync(join(backups, "blobs"), "in the way");
    expect((await shop.ask("makeBackup")).status).toBeGreaterThanOrEqual(500);
    const { body: health } = await shop.ask("health");
    const well = { state: "well", version: "0.0.0-test", invented: false, unreadable: 0, lostFiles: 0, mayWrite: true };
    expect(health).toEqual({ ...well, lastBackup: "failed" });
    expect((await shop.ask("listBackups")).body).toMatchObject({ items: [], failed: { why: "asked" } });
    expect(await metrics()).toContain("\ngritwright_backup_failed 1\n");
    rmSync(join(backups, "blobs"));
    const { body: made } = await shop.ask("makeBackup");
    expect((await shop.ask("health")).body.lastBackup).toBe("good");
    expect((await shop.ask("listBackups")).body).toEqual({ items: [made], failed: null });
    expect(await metrics()).toContain("\ngritwright_backup_failed 0\n");
    expect(await metrics()).toContain(`\ngritwright_backup_last_made_seconds ${Date.parse(made.madeAt) / 1000}\n`);
  });
});

test("photos that were lost before the last backup are counted by health, until a backup has all again", async () => {
  const { records, by, parts } = kept;
  const lost = async () => (await shop.ask("health")).body.lostFiles;
  for (const picture of AWKWARD_PICTURES.slice(0, 2)) await records.photos.add({ of: "other" }, picture, { by });
  expect(await lost()).toBe(0);
  const photos = join(parts.folder, "live", "photos");
  for (const name of readdirSync(photos)) rmSync(join(photos, name));
  await shop.ask("makeBackup");
  expect(await lost()).toBe(2);
  // A backup that failed says nothing of them.
  const { backups } = shopFolder(parts.folder);
  renameSync(join(backups, "blobs"), join(backups, "aside"));
  writeFileSync(join(backups, "blobs"), "in the way");
  expect((await shop.ask("makeBackup")).status).toBeGreaterThanOrEqual(500);
  expect(await lost()).toBe(2);
  rmSync(join(backups, "blobs"));
  for (const { id, version } of (await records.photos.list()).items) await records.photos.remove(id, { by, expectedVersion: version });
  await shop.ask("makeBackup");
  expect(await lost()).toBe(0);
});
