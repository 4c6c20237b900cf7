import { randomBytes } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeEach, describe, expect, test } from "vitest";
import type { RecordsFault } from "#contract/records/fault";
import { moveRecords } from "#records/move/move";
import { addShopTo } from "#records/shopsOf";
import { type PlacedConfig, USUAL } from "#server/config/configSchema";
import { openShop } from "#server/openShop";
import { testPostgres } from "../records/postgres.ts";
import { refusal } from "../records/shop.ts";

const postgres = await testPostgres();
afterAll(() => postgres?.stop());

describe.runIf(postgres !== null)("one's own shop in a database", () => {
  let config: PlacedConfig;
  let database = "";
  const said: string[] = [];
  const parts = { now: Date.now, randomBytes, programVersion: "0.0.0-test", say: (words: string) => said.push(words) };
  beforeEach(async () => {
    database = (await postgres?.newDatabase()) ?? "";
    const data = mkdtempSync(join(tmpdir(), "gritwright-open-"));
    config = { ...USUAL, data, shop: "own", database };
    said.length = 0;
    return () => rmSync(data, { recursive: true });
  });

  test("is made at the first start under the name that was asked for; where it lies is said without the password", async () => {
    const secret = database.replace("tests@", "tests:secret@");
    const records = await openShop({ ...config, database: secret, shopName: "East Side" }, parts);
    expect((await records.settings.get()).shopName).toBe("East Side");
    expect(await records.health()).toMatchObject({ engine: "postgres" });
    await records.close();
    expect(said).toEqual([`The records lie in ${database.replace("tests@", "tests:…@")}`]);
  });

  test("is not begun anew while one lies in the folder: it is moved, or a new one is asked for", async () => {
    const inFolder = await openShop({ ...config, database: null }, parts);
    const { id } = await inFolder.settings.get();
    await inFolder.close();
    const fault = await refusal<RecordsFault>(openShop(config, parts));
    expect(fault.problems[0]).toMatchObject({ path: "database", allowed: expect.stringContaining("gritwright move --from") });
    await moveRecords({ ...parts, from: join(config.data, "shop"), to: database, tell: () => {} });
    const moved = await openShop(config, parts);
    expect((await moved.settings.get()).id).toBe(id);
    await moved.close();
    const other = (await postgres?.newDatabase()) ?? "";
    await addShopTo({ ...parts, place: other }, "Another");
    const another = await openShop({ ...config, database: other }, parts);
    expect((await another.settings.get()).shopName).toBe("Another");
    await another.close();
  });
});
