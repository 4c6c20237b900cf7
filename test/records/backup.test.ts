import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { basename, dirname, join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { RecordsFault } from "#contract/records/fault";
import { uniformSource } from "#engine/random";
import { backups } from "#records/backup/makeBackup";
import { restoreBackup } from "#records/backup/restoreBackup";
import { backupsToKeep, isDue, keptUntil } from "#records/backup/retention";
import { verifyBackup } from "#records/backup/verifyBackup";
import { bringUpToDate } from "#records/bringUpToDate";
import { identityOf } from "#records/database/fileIdentity";
import type { Step } from "#records/database/migrations/step";
import { STEPS } from "#records/database/migrations/steps";
import { openSqlite } from "#records/database/sqlite";
import { openFile } from "#records/database/sqliteFile";
import { shopFolder } from "#records/folder";
import { openRecords } from "#records/openRecords";
import { PNG } from "./pictures.ts";
import { onTheCounter, refusal, type TestShop, testShop } from "./shop.ts";

/** What another program gets that opens the database now. */
function readIn(database: string): string {
  const other = openFile(database, { timeout: 0 });
  try {
    return String((other.prepare("select count(*) as shops from settings").get() as { shops: number }).shops);
  } catch (error) {
    return (error as { readonly code: string }).code;
  } finally {
    other.close();
  }
}

let shop: TestShop;
beforeEach(async () => {
  shop = await testShop();
});
afterEach(() => shop.end());

async function madeBackup(): Promise<string> {
  const { records } = shop;
  return records.backups.path((await records.backups.make("asked")).name);
}

describe("a backup", () => {
  it.skipIf(process.platform === "win32")("and what is restored from it, also into a new folder, are nobody else's to read", async () => {
    const path = await madeBackup();
    const others = (place: string) => statSync(place).mode & 0o077;
    expect([others(path), others(dirname(path))]).toEqual([0, 0]);
    const folder = join(shop.parts.folder, "elsewhere", "new");
    await restoreBackup(path, { ...shop.parts, folder });
    expect([folder, shopFolder(folder).live].map(others)).toEqual([0, 0]);
  });

  it("holds what was kept when it was made, while writing goes on", async () => {
    const { records, by } = shop;
    await onTheCounter(shop);
    const writing = Array.from({ length: 40 }, (_, i) => records.houses.create({ name: `House ${i}` }, { by }));
    const path = await madeBackup();
    await Promise.all(writing);
    const report = await verifyBackup(path);
    expect(report.counts).toMatchObject({ bowlers: 1, balls: 1, tickets: 1 });
    expect(report.missing).toEqual([]);
  });

  it("leaves nothing half made beside it", async () => {
    const path = await madeBackup();
    const folder = join(shop.parts.folder, "backups");
    expect(readdirSync(folder).sort()).toEqual(["blobs", basename(path), "last.json"]);
    expect(readdirSync(join(folder, "blobs"))).toEqual(["lock.sqlite"]);
  });

  it("names a photo that was lost, and keeps everything else", async () => {
    const { records, by, parts } = shop;
    const { ball } = await onTheCounter(shop);
    await records.photos.add({ ballId: ball.id, of: "serial" }, PNG, { by });
    const [name] = readdirSync(join(parts.folder, "live", "photos"));
    rmSync(join(parts.folder, "live", "photos", name));
    expect((await verifyBackup(await madeBackup())).missing).toEqual([`photos/${name}`]);
  });

  it("is found out when a byte of it is changed, wherever that is, or reads as it was", { timeout: 60_000 }, async () => {
    await onTheCounter(shop);
    const path = await madeBackup();
    const sound = readFileSync(path);
    const report = await verifyBackup(path);
    const random = uniformSource(7);
    let found = 0;
    for (let i = 0; i < 120; i += 1) {
      const damaged = Buffer.from(sound);
      damaged[Math.floor(random() * damaged.length)] ^= 1 << Math.floor(random() * 8);
      writeFileSync(path, damaged);
      const outcome = await verifyBackup(path).catch((fault: RecordsFault) => fault);
      if (outcome instanceof Error) {
        expect(outcome.kind).toBe("badBackup");
        found += 1;
      } else expect(outcome).toEqual(report);
    }
    // The rest: what nothing is read from, as the times of files, and noughts that are copied from other noughts than before.
    expect(found).toBeGreaterThan(80);
  });

  it.each([0, 1, 100, 0.5, 0.99])("is found out when it is cut short at %s", async (at) => {
    await onTheCounter(shop);
    const path = await madeBackup();
    const sound = readFileSync(path);
    writeFileSync(path, sound.subarray(0, at < 1 ? Math.floor(at * sound.length) : at));
    expect((await refusal<RecordsFault>(verifyBackup(path))).kind).toBe("badBackup");
  });
});

describe("a restore", () => {
  it("drill: everything is as it was at the backup, photos too, and what was there before lies beside it", async () => {
    const { records, by, parts } = shop;
    const { ball, ticket } = await onTheCounter(shop);
    const photo = await records.photos.add({ ballId: ball.id, of: "condition" }, PNG, { by });
    const path = await madeBackup();
    await records.balls.change(ball.id, { notes: "after the backup" }, { by, expectedVersion: 1 });
    await records.close();
    const { safetyCopy } = await restoreBackup(path, parts);
    const restored = await shop.reopen();
    expect(await restored.balls.get(ball.id)).toEqual(ball);
    expect(await restored.tickets.get(ticket.id)).toEqual(ticket);
    expect(Buffer.from(await restored.photos.bytes(photo.id))).toEqual(PNG);
    const before = openFile(join(safetyCopy ?? "", "records.sqlite"), { readonly: true });
    expect(before.prepare("select body from balls").get()).toMatchObject({ body: expect.stringContaining("after the backup") });
    before.close();
  });

  it("keeps today's records closed until the last rename: who comes in between would write into the copy that is put aside", async () => {
    const { records, parts } = shop;
    await onTheCounter(shop);
    const path = await madeBackup();
    await records.close();
    const { checked, database } = shopFolder(parts.folder);
    let isOver = false;
    const restoring = restoreBackup(path, parts).finally(() => {
      isOver = true;
    });
    const tried: string[] = [];
    while (!isOver) {
      if (existsSync(checked) && existsSync(database)) tried.push(readIn(database));
      await new Promise((resolve) => setImmediate(resolve));
    }
    await restoring;
    expect(tried.length).toBeGreaterThan(0);
    expect(tried.filter((what) => what !== "SQLITE_BUSY")).toEqual([]);
  });

  it("is refused while somebody has the records open, and changes nothing", async () => {
    const { records, parts } = shop;
    const { ball } = await onTheCounter(shop);
    const path = await madeBackup();
    expect((await refusal<RecordsFault>(restoreBackup(path, parts))).kind).toBe("busy");
    expect(await records.balls.get(ball.id)).toEqual(ball);
    expect(existsSync(join(parts.folder, "restoring"))).toBe(false);
  });

  it("of a damaged backup is refused, and changes nothing", async () => {
    const { records, parts } = shop;
    const { ball } = await onTheCounter(shop);
    const path = await madeBackup();
    const bytes = readFileSync(path);
    bytes.fill(0x55, 2000, 2100);
    writeFileSync(path, bytes);
    await records.close();
    expect((await refusal<RecordsFault>(restoreBackup(path, parts))).kind).toBe("badBackup");
    expect(await (await shop.reopen()).balls.get(ball.id)).toEqual(ball);
  });

  it("puts a damaged database right", async () => {
    const { records, parts } = shop;
    const { ball } = await onTheCounter(shop);
    const path = await madeBackup();
    await records.close();
    writeFileSync(
      join(parts.folder, "live", "records.sqlite"),
      "this is no database at all, but long enough to be taken for one".repeat(100),
    );
    expect((await refusal<RecordsFault>(openRecords(parts))).kind).toBe("damaged");
    await restoreBackup(path, parts);
    expect(await (await shop.reopen()).balls.get(ball.id)).toEqual(ball);
  });

  it("clears persons who were erased after the backup was made", async () => {
    const { records, by, parts } = shop;
    const { bowler } = await onTheCounter(shop);
    const path = await madeBackup();
    await records.personal.erase(bowler.id, { by });
    await records.close();
    await restoreBackup(path, parts);
    const restored = await shop.reopen();
    expect(await restored.bowlers.get(bowler.id)).toMatchObject({ name: "(erased)", phone: null });
    const bytes = readFileSync(join(parts.folder, "live", "records.sqlite")).toString("latin1");
    expect(bytes).not.toContain("Sandgrouse");
  });

  it("ends by itself when the power went between its two renames", async () => {
    const { records, parts } = shop;
    const { ball } = await onTheCounter(shop);
    await records.close();
    renameSync(join(parts.folder, "live"), join(parts.folder, "restored-and-checked"));
    expect(await (await shop.reopen()).balls.get(ball.id)).toEqual(ball);
  });
});

describe("a schema", () => {
  it("of an older program is backed up before it is brought up to date", async () => {
    const { records, parts } = shop;
    const { ball } = await onTheCounter(shop);
    await records.close();
    const folder = shopFolder(parts.folder);
    const { db } = openSqlite(folder.database);
    const runner = { db, engine: "sqlite", chance: () => 0 } as const;
    const { now, programVersion } = parts;
    const later: Step = {
      name: "998 invented for this test",
      async apply(inside) {
        await inside
          .insertInto("writers")
          .values({ name: "least writer", format: 998, program: "9.9.8" })
          .onConflict((conflict) => conflict.column("name").doUpdateSet({ format: 998, program: "9.9.8" }))
          .execute();
      },
    };
    await bringUpToDate(runner, backups({ folder, now, programVersion, from: { file: identityOf(folder.database) } }), [...STEPS, later], {
      now,
      programVersion,
    });
    await db.destroy();
    const name = readdirSync(folder.backups).find((one) => one.endsWith(".zip")) ?? "";
    expect(name).toMatch(/-before-migration\.zip$/);
    // A newer program wrote the records since, and asks this one only to read; the backup brings back what this one may write.
    const older = await openRecords(parts);
    expect(older.newerProgram).toBe("9.9.8");
    expect(await older.balls.get(ball.id)).toEqual(ball);
    expect((await refusal<RecordsFault>(older.houses.create({ name: "Reed Bank" }, { by: shop.by }))).kind).toBe("newerWriter");
    await older.close();
    await restoreBackup(join(folder.backups, name), parts);
    const restored = await shop.reopen();
    expect(await restored.balls.get(ball.id)).toEqual(ball);
    expect((await restored.lanes.list()).items).toEqual([]);
  });

  it("of a newer program that only added to it is gone on with; one that lacks steps of this program is refused by name, and left alone", async () => {
    const { records, parts } = shop;
    await records.close();
    const file = join(parts.folder, "live", "records.sqlite");
    const raw = openFile(file);
    raw.prepare("insert into schemaSteps values ('999 from the future', '2030-01-01T00:00:00.000Z')").run();
    const beside = await openRecords(parts);
    await beside.houses.create({ name: "Reed Bank" }, { by: shop.by });
    await beside.close();
    const [last] = raw.prepare("select * from schemaSteps where name like '005%'").all() as { name: string; at: string }[];
    raw.prepare("delete from schemaSteps where name = ?").run(last.name);
    const before = raw.prepare("select * from schemaSteps").all();
    const fault = await refusal<RecordsFault>(openRecords(parts));
    expect(fault).toMatchObject({ kind: "newerSchema", about: "999 from the future" });
    expect(raw.prepare("select * from schemaSteps").all()).toEqual(before);
    raw.prepare("insert into schemaSteps values (@name, @at)").run(last);
    raw.close();
    await shop.reopen();
  });
});

describe("which backups are kept", () => {
  const day = 86_400_000;
  const now = Date.UTC(2026, 4, 31, 20);
  const daily = Array.from({ length: 3 * 365 }, (_, i) => new Date(now - i * day).toISOString());

  it("of three years of daily ones: two weeks of days, two months of weeks, two years of months, the years", () => {
    const kept = [...backupsToKeep(daily, now)].sort().reverse();
    expect(kept.slice(0, 14)).toEqual(daily.slice(0, 14));
    // Sundays before that are the last of their week, and the last days of each month stay.
    expect(kept).toContain("2026-05-10T20:00:00.000Z");
    expect(kept).toContain("2025-02-28T20:00:00.000Z");
    expect(kept).toContain("2023-12-31T20:00:00.000Z");
    expect(kept).not.toContain("2026-03-12T20:00:00.000Z");
    expect(kept.length).toBeLessThan(50);
  });

  it("and until when each is kept, is told beforehand: day by day for two years it goes when that was said", { timeout: 120_000 }, () => {
    const start = Date.UTC(2026, 0, 1, 20);
    const all: string[] = [];
    let there = new Set<string>();
    const told = new Map<string, number>();
    for (let i = 0; i < 2 * 365; i += 1) {
      const today = start + i * day;
      const at = new Date(today).toISOString();
      all.push(at);
      const kept = backupsToKeep([...there, at], today);
      for (const gone of there) if (!kept.has(gone)) expect(told.get(gone), gone).toBeLessThanOrEqual(today);
      for (const one of kept) if (told.has(one)) expect(told.get(one), `${one} on ${at}`).toBeGreaterThan(today - day);
      there = kept;
      for (const one of there) if (!told.has(one)) told.set(one, keptUntil(one, [...there]));
    }
    expect(told.size).toBe(2 * 365);
  });

  it("the newest always, however old they are, and none is due twice a day", () => {
    const old = daily.slice(900, 903);
    expect(backupsToKeep(old, now)).toEqual(new Set(old));
    expect(isDue([daily[0]], now + 3600_000)).toBe(false);
    expect(isDue([daily[0]], now + day)).toBe(true);
    expect(isDue([], now)).toBe(true);
  });

  it("keeping up makes the one that is due and takes out what is not kept", async () => {
    const { records, parts } = shop;
    const { made, takenOut } = await records.backups.keepUp();
    expect(made?.why).toBe("scheduled");
    expect(takenOut).toEqual([]);
    const folder = join(parts.folder, "backups");
    // Five of one day a month ago, by their names.
    for (let hour = 10; hour < 15; hour += 1)
      copyFileSync(join(folder, made?.name ?? ""), join(folder, `gritwright-2026-04-29T${hour}-00-00.000Z-scheduled.zip`));
    const next = await records.backups.keepUp();
    expect(next.made).toBeNull();
    expect(next.takenOut).toHaveLength(3);
    expect((await records.backups.list()).map(({ name }) => name)).toContain("gritwright-2026-04-29T14-00-00.000Z-scheduled.zip");
  });

  it("keeping up takes out files that no row speaks of, when they have lain there for a day", async () => {
    const { records, by, parts } = shop;
    const { ball } = await onTheCounter(shop);
    await records.photos.add({ ballId: ball.id, of: "serial" }, PNG, { by });
    const folder = join(parts.folder, "live", "photos");
    const [kept] = readdirSync(folder);
    for (const [name, age] of [
      ["old.jpg", 2],
      ["new.jpg", 0.5],
      [kept, 30],
    ] as const) {
      if (name !== kept) writeFileSync(join(folder, name), "left over");
      const at = new Date(parts.now() - age * day);
      utimesSync(join(folder, name), at, at);
    }
    for (const name of ["before-restore-2026-04-30T10-00-00.000Z", "before-restore-2026-05-30T10-00-00.000Z"])
      mkdirSync(join(parts.folder, name));
    await records.backups.keepUp();
    expect(readdirSync(parts.folder).filter((name) => name.startsWith("before"))).toEqual(["before-restore-2026-05-30T10-00-00.000Z"]);
    expect(readdirSync(folder).sort()).toEqual([kept, "new.jpg"].sort());
  });

  it("no name leads out of the folder of backups", async () => {
    for (const name of ["../live/records.sqlite", "..", "gritwright-2026-04-29T10-00-00.000Z-asked.zip/../../live", ""])
      expect((await refusal<RecordsFault>(shop.records.backups.path(name))).kind).toBe("notFound");
  });
});
