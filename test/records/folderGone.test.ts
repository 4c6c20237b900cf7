import { cpSync, existsSync, readdirSync, renameSync, rmSync } from "node:fs";
import { dirname, join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { RecordsFault } from "#contract/records/fault";
import { shopFolder } from "#records/folder";
import { shopServer } from "../server/shopServer.ts";
import { PNG } from "./pictures.ts";
import { onTheCounter, refusal, type TestShop, testShop } from "./shop.ts";

/* The folder, or the file of the database, is taken away or changed for another while the program runs. Windows lets nobody do that. */

let shop: TestShop;
beforeEach(async () => {
  shop = await testShop();
});
afterEach(async () => {
  await shop.end();
  rmSync(`${shop.parts.folder}-elsewhere`, { recursive: true, force: true });
});

const removals: readonly (readonly [string, (live: string) => void])[] = [
  ["the file of the database is deleted", (live) => rmSync(join(live, "records.sqlite"))],
  ["its log of writes is deleted", (live) => rmSync(join(live, "records.sqlite-wal"))],
  ["the folder is deleted", (live) => rmSync(live, { recursive: true })],
  ["the folder is moved away", (live) => renameSync(live, `${live}-elsewhere`)],
  [
    "the folder is changed for a copy of itself",
    (live) => {
      cpSync(live, `${live}-copy`, { recursive: true });
      renameSync(live, `${live}-elsewhere`);
      renameSync(`${live}-copy`, live);
    },
  ],
  ["the folder's parent is moved away", (live) => renameSync(dirname(live), `${dirname(live)}-elsewhere`)],
];

describe.skipIf(process.platform === "win32")("when", () => {
  it.each(removals)("%s, writes are refused, not acknowledged", async (_, remove) => {
    const { records, by, parts } = shop;
    const { ball } = await onTheCounter(shop);
    remove(shopFolder(parts.folder).live);
    const writes = [
      () => records.houses.create({ name: "House" }, { by }),
      () => records.balls.change(ball.id, { notes: "later" }, { by, expectedVersion: 1 }),
      () => records.photos.add({ ballId: ball.id, of: "serial" }, PNG, { by }),
    ];
    for (const write of writes) expect((await refusal<RecordsFault>(write())).kind).toBe("folderGone");
    expect((await refusal<RecordsFault>(records.health())).kind).toBe("folderGone");
  });

  it.each(removals)("%s, no backup of something else is made, and it is said to have failed", async (_, remove) => {
    const { records, parts } = shop;
    await onTheCounter(shop);
    const { live, database } = shopFolder(parts.folder);
    remove(live);
    const wasThere = existsSync(database);
    await refusal(records.backups.keepUp());
    expect((await records.backups.state()).failed).toMatchObject({ fault: "folderGone" });
    expect(await records.backups.list()).toEqual([]);
    expect(existsSync(database)).toBe(wasThere);
  });

  it("what was taken away comes back, writing goes on, and nothing that was acknowledged is missing", async () => {
    const { records, by, parts } = shop;
    const { ball } = await onTheCounter(shop);
    const { live } = shopFolder(parts.folder);
    renameSync(live, `${live}-elsewhere`);
    await refusal(records.houses.create({ name: "Refused" }, { by }));
    renameSync(`${live}-elsewhere`, live);
    const house = await records.houses.create({ name: "Kept" }, { by });
    const again = await shop.reopen();
    expect(await again.balls.get(ball.id)).toEqual(ball);
    expect((await again.houses.list()).items).toEqual([house]);
    expect(readdirSync(live)).toContain("records.sqlite");
  });

  it("it is gone, the server answers 503 with what to do, and so does health", async () => {
    const server = await shopServer({ shop });
    renameSync(shopFolder(shop.parts.folder).live, join(shop.parts.folder, "elsewhere"));
    for (const reply of [await server.ask("createHouse", { body: { name: "House" } }), await server.ask("health")]) {
      expect(reply.status).toBe(503);
      expect(reply.body.detail).toContain("folder");
    }
    await server.close();
  });
});
