import { mkdirSync, readdirSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { restoreBackup } from "#records/backup/restoreBackup";
import { verifyBackup } from "#records/backup/verifyBackup";
import { shopFolder } from "#records/folder";
import { openRecords } from "#records/openRecords";
import { AWKWARD_PICTURES } from "./awkwardFiles.ts";
import { onTheCounter, refusal, type TestShop, testShop } from "./shop.ts";

/* When photos and files that lie beside backups go: long after the last backup that names them, whatever that is called. */

const DAY_MS = 86_400_000;

let shop: TestShop;
let backups: string;
beforeEach(async () => {
  shop = await testShop();
  ({ backups } = shopFolder(shop.parts.folder));
});
afterEach(() => shop.end());

/** A bowler's ball with photos of it, and a backup that somebody asked for. */
async function backedUp() {
  const { records, by } = shop;
  const { bowler, ball } = await onTheCounter(shop);
  const photos = [];
  for (const picture of AWKWARD_PICTURES) photos.push(await records.photos.add({ ballId: ball.id, of: "condition" }, picture, { by }));
  const { name } = await records.backups.make("asked");
  return { bowler, photos, path: join(backups, name) };
}

async function withoutPhotos(photos: readonly { id: string; version: number }[]): Promise<void> {
  for (const { id, version } of photos) await shop.records.photos.remove(id, { by: shop.by, expectedVersion: version });
}

/** What keeps up does so many days later: it makes the backup that is due. */
async function keptUpAfter(days: number): Promise<void> {
  const { parts } = shop;
  const later = await openRecords({ ...parts, now: () => parts.now() + days * DAY_MS });
  try {
    await later.backups.keepUp();
  } finally {
    await later.close();
  }
}

function blobCount(): number {
  return readdirSync(join(backups, "blobs")).filter((name) => /^[0-9a-f]{64}$/.test(name)).length;
}

describe("photos beside backups", () => {
  it.each(["my-backup.zip", "BEFORE THE MOVE.ZIP"])("stay while a backup names them that somebody renamed to %s", async (called) => {
    const { photos, path } = await backedUp();
    const renamed = join(backups, called);
    renameSync(path, renamed);
    await withoutPhotos(photos);
    for (const days of [0, 1, 40, 80]) await keptUpAfter(days);
    expect((await verifyBackup(renamed)).files).toBe(5);
  });

  it("stay, all of them, while there is a zip of which nobody can say what it names", async () => {
    const { photos, path } = await backedUp();
    rmSync(path);
    await withoutPhotos(photos);
    writeFileSync(join(backups, "my-backup.zip"), "cut short");
    for (const days of [0, 1, 40, 80]) await keptUpAfter(days);
    expect(blobCount()).toBe(4);
    rmSync(join(backups, "my-backup.zip"));
    mkdirSync(join(backups, "folder.zip"));
    await keptUpAfter(120);
    expect(blobCount()).toBe(4);
  });

  it("stay for thirty days after the last backup that named them, and are wanted again when it comes back", async () => {
    const { photos, path } = await backedUp();
    const away = join(shop.parts.folder, "away.zip");
    renameSync(path, away);
    await withoutPhotos(photos);
    for (const days of [0, 1, 29]) await keptUpAfter(days);
    renameSync(away, path);
    expect((await verifyBackup(path)).files).toBe(5);
    // Named again: the thirty days begin anew.
    await keptUpAfter(31);
    renameSync(path, away);
    for (const days of [33, 60]) await keptUpAfter(days);
    expect(blobCount()).toBe(4);
    await keptUpAfter(64);
    expect(readdirSync(join(backups, "blobs"))).toEqual(["lock.sqlite"]);
  });

  it("begin their thirty days anew where the note of them cannot be read, or is of a day to come", async () => {
    const { photos, path } = await backedUp();
    rmSync(path);
    await withoutPhotos(photos);
    await keptUpAfter(0);
    const note = join(backups, "blobs", "unnamed.json");
    for (const text of ["cut sh", "[]"]) {
      writeFileSync(note, text);
      await keptUpAfter(40);
      expect(blobCount()).toBe(4);
    }
    // The clock was wrong for a while.
    for (const name of readdirSync(backups).filter((one) => one.endsWith(".zip"))) rmSync(join(backups, name));
    await keptUpAfter(4);
    for (const days of [20, 33]) await keptUpAfter(days);
    expect(blobCount()).toBe(4);
    await keptUpAfter(35);
    expect(blobCount()).toBe(0);
  });
});

describe("an erasure", () => {
  it("names the day by which the photos beside a backup will have gone too, and zips of other names as what stays", async () => {
    const { records, by } = shop;
    const { bowler, path } = await backedUp();
    renameSync(path, join(backups, "my-backup.zip"));
    const { made } = await records.backups.keepUp();
    const { stillIn } = await records.personal.erase(bowler.id, { by });
    // Of May 2026 the last, which is kept for 24 months; then thirty days, and one until the backup after them.
    const scheduled = { name: made?.name, kind: "backup", madeAt: made?.madeAt, goneBy: "2028-06-01T00:00:00.000Z" };
    expect(stillIn).toEqual([
      scheduled,
      { name: "my-backup.zip", kind: "backup", madeAt: expect.stringContaining("2026-05-31"), goneBy: null },
    ]);
  });

  it("names photos that no backup names any more, until they will have gone; then they have", async () => {
    const { bowler, path } = await backedUp();
    rmSync(path);
    const { records, by } = shop;
    for (const { id, version } of (await records.photos.list()).items) await records.photos.remove(id, { by, expectedVersion: version });
    await keptUpAfter(0);
    for (const name of readdirSync(backups).filter((one) => one.endsWith(".zip"))) rmSync(join(backups, name));
    const { stillIn } = await records.personal.erase(bowler.id, { by });
    expect(stillIn).toEqual([{ name: "blobs", kind: "backup", madeAt: expect.any(String), goneBy: expect.stringContaining("2026-07-01") }]);
    for (const days of [1, 15, 30]) await keptUpAfter(days);
    expect(blobCount()).toBe(0);
  });
});

it("a damaged backup of ours is told where it keeps photos from going", async () => {
  const { path } = await backedUp();
  writeFileSync(path, "cut short");
  await refusal(shop.records.backups.keepUp());
  expect(blobCount()).toBe(4);
});

describe("a restore of a backup whose photos are not all beside it", () => {
  it("takes missing and damaged ones from today's records where those have the same bytes", async () => {
    const { photos, path } = await backedUp();
    const [first, second] = photos;
    rmSync(join(backups, "blobs", first.sha256));
    writeFileSync(join(backups, "blobs", second.sha256), "damaged");
    await shop.records.close();
    expect(await restoreBackup(path, shop.parts)).toMatchObject({ leftOut: [], report: { files: 5 } });
    const restored = await shop.reopen();
    for (const [i, { id }] of photos.entries()) expect(Buffer.from(await restored.photos.bytes(id))).toEqual(AWKWARD_PICTURES[i]);
  });

  it("is refused where one is nowhere, or today's has other bytes, and done without it where that is asked for", async () => {
    const { photos, path } = await backedUp();
    const [first, second, third] = photos;
    const live = join(shop.parts.folder, "live", "photos");
    for (const { sha256 } of [first, second]) rmSync(join(backups, "blobs", sha256));
    rmSync(join(live, `${first.sha256}.png`));
    writeFileSync(join(live, `${second.sha256}.png`), "other bytes");
    await shop.records.close();
    expect(await refusal(restoreBackup(path, shop.parts))).toMatchObject({
      kind: "badBackup",
      problems: [{ value: "2 of 4 missing" }, {}, {}],
    });
    const { leftOut } = await restoreBackup(path, { ...shop.parts, withoutLost: true });
    expect([...leftOut].sort()).toEqual([first, second].map(({ sha256 }) => `photos/${sha256}.png`).sort());
    const restored = await shop.reopen();
    expect(Buffer.from(await restored.photos.bytes(third.id))).toEqual(AWKWARD_PICTURES[2]);
    expect(await refusal(restored.photos.bytes(first.id))).toMatchObject({ kind: "damaged" });
    expect((await restored.bowlers.list()).items).toHaveLength(1);
  });
});
