import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import type { RecordsFault } from "#contract/records/fault";
import { failureMark } from "#records/backup/failure";
import { shopFolder } from "#records/folder";
import { refusal, testShop } from "./shop.ts";

/* A backup that failed because the disk is full is not forgotten, although the disk is full. */

const folder = mkdtempSync(join(tmpdir(), "gritwright-small-"));
const isMounted = spawnSync("mount", ["-t", "tmpfs", "-o", "size=4m", "tmpfs", folder]).status === 0;
afterAll(() => {
  if (isMounted) spawnSync("umount", [folder]);
  rmSync(folder, { recursive: true, force: true });
});

/** Writes until nothing more can be written, not even a byte. */
function fill(path: string): void {
  for (let i = 0, bytes = 1_000_000; bytes >= 1; i += 1)
    try {
      writeFileSync(join(path, `filler-${i}`), Buffer.alloc(bytes, 1));
    } catch {
      rmSync(join(path, `filler-${i}`), { force: true });
      bytes = Math.floor(bytes / 4);
    }
}

describe.runIf(isMounted)("a backup on a full disk (a small file system, where we may mount one)", () => {
  it("is known to have failed by every other program too, until one succeeds", { timeout: 60_000 }, async () => {
    const shop = await testShop({ folder });
    await shop.records.backups.make("asked");
    fill(folder);
    expect((await refusal<RecordsFault>(shop.records.backups.make("scheduled" as "asked"))).kind).toBe("full");
    const other = failureMark(shopFolder(folder));
    expect(await other.get()).toMatchObject({ why: "scheduled", fault: "full" });
    spawnSync("mount", ["-o", "remount,size=32m", folder]);
    await shop.records.backups.make("asked");
    expect(await failureMark(shopFolder(folder)).get()).toBeNull();
    await shop.records.close();
  });
});

it("the state since the last good backup is overwritten in place, and one that cannot be read says nothing", async () => {
  const shop = await testShop();
  const path = join(shopFolder(shop.parts.folder).backups, "last.json");
  await shop.records.backups.make("asked");
  const { ino, size } = statSync(path);
  await failureMark(shopFolder(shop.parts.folder)).clear(0);
  expect(statSync(path)).toMatchObject({ ino, size });
  writeFileSync(path, "cut sh");
  expect(await failureMark(shopFolder(shop.parts.folder)).get()).toBeNull();
  await shop.end();
});
