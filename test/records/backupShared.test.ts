import { spawn } from "node:child_process";
import { createCipheriv } from "node:crypto";
import { createWriteStream, mkdirSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, dirname, join } from "node:path";
import { pipeline } from "node:stream/promises";
import { setTimeout as sleep } from "node:timers/promises";
import { pathToFileURL } from "node:url";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { RecordsFault } from "#contract/records/fault";
import { withBackupsAlone } from "#records/backup/alone";
import { restoreBackup } from "#records/backup/restoreBackup";
import { verifyBackup } from "#records/backup/verifyBackup";
import { shopFolder } from "#records/folder";
import { openRecords } from "#records/openRecords";
import { AWKWARD_PICTURES, pictureHolding } from "./awkwardFiles.ts";
import { onTheCounter, refusal, type TestShop, testShop } from "./shop.ts";

/* Photos and files lie once beside all backups; a backup that does not read back is none. */

const PROGRAM = join(import.meta.dirname, "..", "..", "dist", "cli", "main.js");

let shop: TestShop;
let blobs: string;
beforeEach(async () => {
  shop = await testShop();
  blobs = join(shopFolder(shop.parts.folder).backups, "blobs");
});
afterEach(() => shop.end());

/** A picture of so many bytes that nothing squeezes. */
function noise(seed: number, bytes: number): Buffer {
  return pictureHolding(createCipheriv("aes-128-ctr", Buffer.alloc(16, seed), Buffer.alloc(16)).update(Buffer.alloc(bytes)));
}

async function photographed(pictures: readonly Buffer[]): Promise<{ id: string; version: number }[]> {
  const { records, by } = shop;
  const { ball } = await onTheCounter(shop);
  const photos = [];
  for (const picture of pictures) photos.push(await records.photos.add({ ballId: ball.id, of: "condition" }, picture, { by }));
  return photos;
}

async function madeBackup(form: "sharing" | "whole" = "sharing"): Promise<string> {
  const { records } = shop;
  return records.backups.path((await records.backups.make("asked", form)).name);
}

function blobNames(): string[] {
  return readdirSync(blobs).filter((name) => /^[0-9a-f]{64}$/.test(name));
}

describe("photos and files beside backups", () => {
  it("lie there once, however many backups there are, and the backups stay small", async () => {
    await photographed([noise(1, 60_000), ...AWKWARD_PICTURES]);
    const paths = [await madeBackup(), await madeBackup(), await madeBackup()];
    expect(blobNames()).toHaveLength(5);
    for (const path of paths) {
      expect(statSync(path).size).toBeLessThan(50_000);
      expect((await verifyBackup(path)).files).toBe(6);
    }
    expect(statSync(join(blobs, blobNames()[0])).mode & 0o077).toBe(process.platform === "win32" ? 0o066 : 0);
  });

  it("that are not where a backup was taken to are told by name, with how many", async () => {
    const [photo] = await photographed(AWKWARD_PICTURES);
    const path = await madeBackup();
    const elsewhere = join(shop.parts.folder, "stick");
    mkdirSync(elsewhere);
    const moved = join(elsewhere, basename(path));
    renameSync(path, moved);
    const fault = await refusal<RecordsFault>(verifyBackup(moved));
    expect(fault).toMatchObject({ kind: "badBackup", problems: [{ path: "blobs", value: "4 of 4 missing" }, {}, {}, {}, {}] });
    const { sha256 } = await shop.records.photos.get(photo.id);
    expect(fault.problems.map(({ path: name }) => name)).toContain(`photos/${sha256}.png`);
    await shop.records.close();
    // Another machine has none of them either.
    const another = { ...shop.parts, folder: join(elsewhere, "new") };
    expect((await refusal<RecordsFault>(restoreBackup(moved, another))).kind).toBe("badBackup");
    // Together with them it is a backup anywhere.
    renameSync(blobs, join(elsewhere, "blobs"));
    await restoreBackup(moved, shop.parts);
    expect(Buffer.from(await (await shop.reopen()).photos.bytes(photo.id))).toEqual(AWKWARD_PICTURES[0]);
  });

  it("that went bad are found, and copied anew by the next backup; those that the shop lost are still there", async () => {
    const photos = await photographed(AWKWARD_PICTURES);
    const path = await madeBackup();
    const [bad] = blobNames();
    const bytes = readFileSync(join(blobs, bad));
    bytes[20] ^= 4;
    writeFileSync(join(blobs, bad), bytes);
    expect(await refusal<RecordsFault>(verifyBackup(path))).toMatchObject({
      problems: [{ value: "1 of 4 damaged" }, { allowed: `blobs/${bad}, as it was` }],
    });
    rmSync(
      join(
        shop.parts.folder,
        "live",
        "photos",
        readdirSync(join(shop.parts.folder, "live", "photos")).find((name) => !name.startsWith(bad)) ?? "",
      ),
    );
    const next = await madeBackup();
    for (const one of [path, next]) expect((await verifyBackup(one)).missing).toEqual([]);
    await shop.records.close();
    await restoreBackup(next, shop.parts);
    const restored = await shop.reopen();
    for (const [i, { id }] of photos.entries()) expect(Buffer.from(await restored.photos.bytes(id))).toEqual(AWKWARD_PICTURES[i]);
  });

  it("are in a whole backup, and in one that is handed out: those want nothing beside them", async () => {
    const [photo] = await photographed(AWKWARD_PICTURES);
    const whole = await madeBackup("whole");
    const { name, stream } = await shop.records.backups.send(basename(await madeBackup()));
    const sent = join(shop.parts.folder, name);
    await pipeline(stream, createWriteStream(sent));
    rmSync(blobs, { recursive: true });
    for (const path of [whole, sent]) {
      expect((await verifyBackup(path)).files).toBe(5);
      const folder = mkdtempSync(join(tmpdir(), "gritwright-restored-"));
      const { postgres: _, ...parts } = { ...shop.parts, folder };
      await restoreBackup(path, parts);
      const restored = await openRecords(parts);
      expect(Buffer.from(await restored.photos.bytes(photo.id))).toEqual(AWKWARD_PICTURES[0]);
      await restored.close();
      rmSync(folder, { recursive: true });
    }
  });

  it("go when no kept backup names them, with what a killed program left; where one cannot be read, nothing goes", async () => {
    const { records, by, parts } = shop;
    const [first] = await photographed(AWKWARD_PICTURES);
    const old = await madeBackup();
    await records.photos.remove(first.id, { by, expectedVersion: 1 });
    writeFileSync(join(blobs, "0123456789ab.making"), "cut");
    const { backups } = shopFolder(parts.folder);
    writeFileSync(join(backups, "gritwright-2026-05-30T18-00-00.000Z-asked.zip"), "no backup");
    await refusal(records.backups.keepUp());
    expect(blobNames()).toHaveLength(4);
    rmSync(join(backups, "gritwright-2026-05-30T18-00-00.000Z-asked.zip"));
    rmSync(old);
    for (const [days, left] of [
      [1, 4],
      [32, 3],
    ]) {
      const later = await openRecords({ ...parts, now: () => parts.now() + days * 86_400_000 });
      await later.backups.keepUp();
      await later.close();
      expect(blobNames()).toHaveLength(left);
    }
    expect(readdirSync(blobs)).toHaveLength(4);
    for (const { name } of await records.backups.list()) expect((await verifyBackup(await records.backups.path(name))).missing).toEqual([]);
  });

  it("are not taken from under a backup that is being made: whoever comes second waits", async () => {
    await photographed(AWKWARD_PICTURES);
    await madeBackup();
    let isMade = false;
    let making = Promise.resolve("");
    await withBackupsAlone(blobs, async () => {
      making = madeBackup();
      void making.then(() => {
        isMade = true;
      });
      await sleep(600);
      expect(isMade).toBe(false);
    });
    expect((await verifyBackup(await making)).missing).toEqual([]);
    expect((await refusal<RecordsFault>(withBackupsAlone(blobs, () => withBackupsAlone(blobs, async () => {}, 100)))).kind).toBe("busy");
  });

  it("survive two programs that make backups and thin them out at once", { timeout: 120_000 }, async () => {
    const { records, by, parts } = shop;
    const photos = await photographed(Array.from({ length: 12 }, (_, i) => noise(i + 10, 3000)));
    const other = (async () => {
      for (let i = 0; i < 4; i += 1) expect(await ended("backup", parts.folder)).toBe(0);
    })();
    for (const [i, photo] of photos.entries()) {
      await records.photos.remove(photo.id, { by, expectedVersion: photo.version });
      if (i % 3 !== 0) continue;
      const later = await openRecords({ ...parts, now: () => parts.now() + (i + 1) * 86_400_000 });
      await later.backups.keepUp();
      await later.close();
    }
    await other;
    const made = await records.backups.list();
    expect(made.length).toBeGreaterThan(7);
    for (const { name } of made) expect((await records.backups.verify(name)).missing).toEqual([]);
  });
});

/** Runs the built program, and tells with what it ends. */
function ended(...args: string[]): Promise<number | null> {
  const child = spawn(process.execPath, [PROGRAM, ...args], { stdio: ["ignore", "ignore", "ignore"] });
  return new Promise((resolve) => child.once("close", resolve));
}

/** Does it while every program that is started has a disk that stores a bit of a backup otherwise than it was told. */
async function onBadDisk<Answer>(done: () => Promise<Answer>): Promise<Answer> {
  vi.stubEnv("NODE_OPTIONS", `--import ${pathToFileURL(join(import.meta.dirname, "badDisk.mjs"))}`);
  try {
    return await done();
  } finally {
    vi.unstubAllEnvs();
  }
}

describe("a backup that does not read back", () => {
  it("is none: it is not listed, said to have failed until one succeeds, and nothing of it stays", async () => {
    const { records, parts } = shop;
    await photographed([noise(3, 60_000)]);
    const { backups } = shopFolder(parts.folder);
    expect(await onBadDisk(() => refusal(records.backups.make("asked", "whole")))).toMatchObject({ kind: "badBackup" });
    expect(await records.backups.list()).toEqual([]);
    expect(await records.backups.state()).toMatchObject({ lastMadeAt: null, failed: { why: "asked", fault: "badBackup" } });
    expect(readdirSync(backups).sort()).toEqual(["blobs", "failed.json"]);
    // Another program knows it too.
    const again = await openRecords(parts);
    expect((await again.backups.state()).failed).toMatchObject({ fault: "badBackup" });
    await again.close();
    const path = await madeBackup();
    expect(await records.backups.state()).toEqual({ lastMadeAt: expect.stringContaining("2026-05-31"), failed: null, lostFiles: 0 });
    expect(readdirSync(dirname(path))).not.toContain("failed.json");
  });

  it("ends the command with 3", async () => {
    await photographed([noise(3, 60_000)]);
    expect(await ended("backup", shop.parts.folder, "--whole")).toBe(0);
    expect(await onBadDisk(() => ended("backup", shop.parts.folder, "--whole"))).toBe(3);
    expect((await shop.records.backups.state()).failed).toMatchObject({ fault: "badBackup" });
  });

  it("nor can one be made where there is no room: said the same way, also by the schedule", async () => {
    const { records, parts } = shop;
    const { backups } = shopFolder(parts.folder);
    mkdirSync(backups, { recursive: true });
    // No file can be made where a file of that name is a folder.
    writeFileSync(join(backups, "blobs"), "in the way");
    await refusal(records.backups.keepUp());
    expect((await records.backups.state()).failed).toMatchObject({ why: "scheduled" });
  });
});
