import { type ChildProcess, spawn } from "node:child_process";
import { randomBytes } from "node:crypto";
import { existsSync, mkdirSync, mkdtempSync, readdirSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { afterAll, beforeEach, describe, expect, test } from "vitest";
import type { RecordsFault } from "#contract/records/fault";
import { openRecords } from "#records/openRecords";
import { type Config, USUAL } from "#server/config/configSchema";
import { moveShop } from "#server/place/moveShop";
import { type PlaceParts, placed } from "#server/place/placed";
import { userFolder } from "#server/place/userFolder";
import { refusal, testShop } from "../records/shop.ts";

const scratch = mkdtempSync(join(tmpdir(), "gritwright-place-"));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

describe("the folder for a user's data", () => {
  test.each([
    // XDG Base Directory Specification 0.8: "$HOME/.local/share should be used"; relative paths are to be ignored.
    ["linux", {}, "/home/kit", "/home/kit/.local/share/gritwright"],
    ["linux", { XDG_DATA_HOME: "/srv/data" }, "/home/kit", "/srv/data/gritwright"],
    ["linux", { XDG_DATA_HOME: "data" }, "/home/kit", "/home/kit/.local/share/gritwright"],
    ["linux", { XDG_DATA_HOME: "" }, "/home/kit", "/home/kit/.local/share/gritwright"],
    ["darwin", { XDG_DATA_HOME: "/srv" }, "/Users/kit", "/Users/kit/Library/Application Support/Gritwright"],
    ["win32", { LOCALAPPDATA: "D:\\Local" }, "C:\\Users\\kit", "D:\\Local\\Gritwright"],
    ["win32", {}, "C:\\Users\\kit", "C:\\Users\\kit\\AppData\\Local\\Gritwright"],
  ])("%s %j", (platform, environment, home, folder) => {
    expect(userFolder({ platform, environment, home })).toBe(folder);
  });
});

describe("a shop of before, in the folder that the program was started from", () => {
  const config: Config = { ...USUAL, shop: "own" };
  let [users, started, older] = ["", "", ""];
  let said: string[] = [];
  beforeEach(() => {
    const own = mkdtempSync(join(scratch, "own-"));
    [users, started, older] = [join(own, "users"), join(own, "started"), join(own, "started", "gritwright-data", "shop")];
    said = [];
  });
  const parts = (move: boolean): PlaceParts => ({
    users,
    startedFrom: [started],
    today: "2026-05-31",
    move: async () => move,
    say: (words) => said.push(words),
  });

  async function withHouse(folder: string, name: string): Promise<void> {
    const shop = await testShop({ folder });
    await shop.records.houses.create({ name }, { by: shop.by });
    await shop.records.close();
  }
  async function housesIn(folder: string): Promise<string[]> {
    const records = await openRecords({ folder, now: Date.now, randomBytes, programVersion: "0.0.0-test" });
    const { items } = await records.houses.list({});
    await records.close();
    return items.map(({ name }) => name);
  }

  test("none is there: the user's folder, without a word", async () => {
    expect((await placed(config, parts(true))).data).toBe(users);
    expect(said).toEqual([]);
  });

  test("a folder that is stated is taken, whatever lies where", async () => {
    await withHouse(older, "Old Lanes");
    expect((await placed({ ...config, data: "elsewhere" }, parts(true))).data).toBe("elsewhere");
    expect(said).toEqual([]);
  });

  test("is opened where it is until somebody wants it moved, and that is said each time", async () => {
    await withHouse(older, "Old Lanes");
    for (let time = 0; time < 2; time++) expect((await placed(config, parts(false))).data).toBe(join(started, "gritwright-data"));
    expect(said.join("\n")).toContain("--move-records");
    expect(existsSync(users)).toBe(false);
    expect(await housesIn(older)).toEqual(["Old Lanes"]);
  });

  test("is moved where that is wanted, and what was copied stays under another name", async () => {
    await withHouse(older, "Old Lanes");
    expect((await placed(config, parts(true))).data).toBe(users);
    expect(await housesIn(join(users, "shop"))).toEqual(["Old Lanes"]);
    expect(readdirSync(join(started, "gritwright-data"))).toEqual(["shop.moved-2026-05-31"]);
    said = [];
    expect((await placed(config, parts(false))).data).toBe(users);
    expect(said).toEqual([]);
  });

  test("beside one in the user's folder, neither is passed over in silence or written over", async () => {
    await withHouse(older, "Old Lanes");
    await withHouse(join(users, "shop"), "New Lanes");
    expect((await placed(config, parts(true))).data).toBe(users);
    expect(said).toEqual([expect.stringContaining(`Another lies in ${older}`)]);
    expect((await refusal<RecordsFault>(moveShop(older, join(users, "shop"), "2026-05-31"))).kind).toBe("refused");
    expect([await housesIn(older), await housesIn(join(users, "shop"))]).toEqual([["Old Lanes"], ["New Lanes"]]);
  });

  test("the invented shop in the user's folder is no reason to begin an empty one of one's own", async () => {
    await withHouse(older, "Old Lanes");
    mkdirSync(join(users, "demonstration"), { recursive: true });
    expect((await placed(config, parts(false))).data).toBe(join(started, "gritwright-data"));
  });

  test("while a program has it open, it is not moved", async () => {
    const shop = await testShop({ folder: older });
    expect((await refusal<RecordsFault>(placed(config, parts(true)))).kind).toBe("busy");
    await shop.records.houses.create({ name: "Still there" }, { by: shop.by });
    await shop.records.close();
    expect(await housesIn(older)).toEqual(["Still there"]);
    expect(existsSync(users)).toBe(false);
  });

  test("a place that cannot be written to leaves all as it was", async () => {
    await withHouse(older, "Old Lanes");
    writeFileSync(users, "a file where a folder should be");
    expect((await refusal<RecordsFault>(placed(config, parts(true)))).kind).toBe("notReachable");
    expect(await housesIn(older)).toEqual(["Old Lanes"]);
  });

  test("a move that was cut is ended only where nobody has written to the old one since", async () => {
    await withHouse(older, "Old Lanes");
    await placed(config, parts(true));
    const aside = join(started, "gritwright-data", "shop.moved-2026-05-31");
    renameSync(aside, older);
    await placed(config, parts(false));
    expect(said.at(-1)).toContain("has been ended");
    renameSync(aside, older);
    const shop = await testShop({ folder: older });
    await shop.records.houses.create({ name: "Written since" }, { by: shop.by });
    await shop.records.close();
    said = [];
    await placed(config, parts(false));
    expect(said).toEqual([expect.stringContaining("is not opened")]);
    expect((await housesIn(older)).toSorted()).toEqual(["Old Lanes", "Written since"]);
  });

  test("killed at any moment, one of the two is whole, and the next call ends it", { timeout: 120_000 }, async () => {
    await withHouse(older, "Old Lanes");
    mkdirSync(join(older, "backups"));
    for (let n = 0; n < 40; n++) writeFileSync(join(older, "backups", `of-${n}.zip`), randomBytes(300_000));
    const [data, target, making] = [join(started, "gritwright-data"), join(users, "shop"), join(users, "shop.moving")];
    const copied = () => (existsSync(join(making, "backups")) ? readdirSync(join(making, "backups")).length : -1);
    let cutShort = 0;
    for (const wanted of [0, 2, 8, 16, 24, 32, 40, 41]) {
      const child = mover(older, target);
      const ended = new Promise((resolve) => child.once("exit", resolve));
      while (child.exitCode === null && copied() < wanted && !existsSync(target)) await sleep(1);
      child.kill("SIGKILL");
      await ended;
      const whole = existsSync(target) ? target : older;
      expect(readdirSync(join(whole, "backups")).filter((name) => name.startsWith("of-"))).toHaveLength(40);
      if (whole === target) {
        // Cut after the new one had its name: it is opened, and nobody opens the old one before the move is ended.
        expect(await housesIn(target)).toEqual(["Old Lanes"]);
        break;
      }
      if (existsSync(making)) cutShort += 1;
    }
    expect(cutShort).toBeGreaterThan(0);
    await placed(config, parts(true));
    expect(existsSync(older)).toBe(false);
    expect(readdirSync(data)).toEqual(["shop.moved-2026-05-31"]);
    expect(readdirSync(users)).toEqual(["shop"]);
    expect(await housesIn(target)).toEqual(["Old Lanes"]);
  });
});

function mover(from: string, to: string): ChildProcess {
  const module = new URL("../../dist/server/place/moveShop.js", import.meta.url).href;
  const code = `import(${JSON.stringify(module)}).then(({ moveShop }) => moveShop(${JSON.stringify(from)}, ${JSON.stringify(to)}, "2026-05-31"))`;
  return spawn(process.execPath, ["-e", code], { stdio: "ignore" });
}
