import { join } from "node:path";
import type { Compilable } from "kysely";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { changeFeedHere } from "#records/changeFeed/changeFeed";
import { type OpenSqlite, openSqlite } from "#records/database/sqlite";
import { filesInFolder } from "#records/files/inFolder";
import { rootSession } from "#records/rootSession";
import { idsQuery, lastTimeQuery } from "#records/search/find";
import type { Session } from "#records/session";
import { setAsideNotes } from "#records/things/setAside";
import { fill, type Sample } from "./manyThings.ts";
import { type TestShop, testShop } from "./shop.ts";

let shop: TestShop;
let sample: Sample;
let open: OpenSqlite;
let session: Session;

beforeAll(async () => {
  shop = await testShop();
  const { shopId } = await shop.records.settings.get();
  const file = join(shop.parts.folder, "live", "records.sqlite");
  sample = fill(file, shopId, shop.by, { balls: 2000, tickets: 6000 }, 3);
  open = openSqlite(file);
  const runner = { db: open.db, engine: "sqlite", chance: () => 0 } as const;
  session = rootSession({
    runner,
    shopId,
    files: filesInFolder(join(shop.parts.folder, "live")),
    changeFeed: changeFeedHere(),
    now: shop.parts.now,
    newId: () => "",
    setAside: setAsideNotes(),
    newerProgram: null,
  });
}, 60_000);
afterAll(async () => {
  await open.db.destroy();
  await shop.end();
});

/** How SQLite would go about it, one line a step. */
function planOf(query: Compilable): string[] {
  const { sql, parameters } = query.compile();
  return (open.raw.prepare(`explain query plan ${sql}`).all(...parameters) as { detail: string }[]).map(({ detail }) => detail);
}

/** A step that reads a whole table. */
const WHOLE_TABLE = /^SCAN /;

describe("nothing is found by reading a whole table", () => {
  it.each([
    ["one word", ["ba"], []],
    ["two words", ["bador"], ["el"]],
  ] as const)("search by %s", (_, [lead], others) => {
    const plan = planOf(idsQuery(session, "bowlers", lead, [...others], 20));
    expect(plan.filter((step) => WHOLE_TABLE.test(step))).toEqual([]);
    expect(plan[0]).toMatch(/^SEARCH terms USING .*INDEX .*term>\? AND term<\?\)/);
  });

  it("same as last time", () => {
    const plan = planOf(lastTimeQuery(session, sample.ballIds[0]));
    expect(plan.filter((step) => WHOLE_TABLE.test(step))).toEqual([]);
    expect(plan.join("\n")).toMatch(/SEARCH tickets USING INDEX ticketsBy_ballId \(ballId=\?\)/);
    expect(plan.join("\n")).toMatch(/SEARCH stagesDone USING INDEX stagesDoneBy_ticketId \(ticketId=\?\)/);
  });

  it("the queue", () => {
    const queue = session.db.selectFrom("tickets").selectAll().where("state", "=", "in work").orderBy("id", "desc").limit(51);
    expect(planOf(queue)).toEqual([expect.stringMatching(/^SEARCH tickets USING INDEX ticketsBy_state \(state=\?/)]);
  });
});

it("what was made is found: by name, serial, end of a serial, telephone number", async () => {
  const { records } = shop;
  for (const name of sample.names.slice(0, 5))
    expect((await records.search.find(name)).bowlers.map((bowler) => bowler.name)).toContain(name);
  for (const phone of sample.phones.slice(0, 5))
    expect((await records.search.find(phone)).bowlers.map((bowler) => bowler.phone)).toContain(phone);
  for (const serial of sample.serials.slice(0, 5)) {
    expect((await records.search.find(serial)).balls.map((ball) => ball.serial)).toContain(serial);
    expect((await records.search.find(serial.slice(-6))).balls.map((ball) => ball.serial)).toContain(serial);
  }
});
