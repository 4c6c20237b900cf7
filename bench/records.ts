/** `npm run bench-records`: how long it takes to find something among very many, and to keep one thing more. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fill } from "../test/records/manyThings.ts";
import { testShop } from "../test/records/shop.ts";
import type { Row } from "./rows.ts";

/** What a chain of shops gathers in decades. */
const SIZES = { balls: 100_000, tickets: 500_000 };
const ROUNDS = 200;

/** Looking things up among very many, and one write, on the database of a shop. Making them takes about two minutes. */
async function recordsRows(): Promise<readonly Row[]> {
  const folder = mkdtempSync(join(tmpdir(), "gritwright-bench-"));
  const shop = await testShop({ folder });
  const { shopId } = await shop.records.settings.get();
  await shop.records.close();
  const { names, serials, phones, ballIds } = fill(join(folder, "live", "records.sqlite"), shopId, shop.by, SIZES, 1);
  const records = await shop.reopen();
  const pick = (from: readonly string[], i: number) => from[(i * 7919) % from.length];
  const rows = [
    await timed("search by a whole serial", (i) => records.search.find(pick(serials, i))),
    await timed("search by the last five of a serial", (i) => records.search.find(pick(serials, i).slice(-5))),
    await timed("search by three letters of a name", (i) => records.search.find(pick(names, i).slice(0, 3))),
    await timed("search by first and last name", (i) => records.search.find(pick(names, i))),
    await timed("search by a telephone number", (i) => records.search.find(pick(phones, i))),
    await timed("same as last time", (i) => records.search.lastTime(pick(ballIds, i))),
    await timed("the queue of tickets in work", () => records.tickets.list({ where: { state: "in work" } })),
    await timed("a thing kept, synced", (i) => records.houses.create({ name: `House ${i}` }, { by: shop.by })),
  ];
  await records.close();
  rmSync(folder, { recursive: true });
  return rows;
}

async function timed(what: string, work: (i: number) => Promise<unknown>): Promise<Row> {
  const times: number[] = [];
  for (let i = 0; i < ROUNDS; i += 1) {
    const start = performance.now();
    await work(i);
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  const at = (share: number) => `${times[Math.floor(share * (times.length - 1))].toFixed(1)} ms`;
  return {
    what: `${what}, of ${SIZES.balls.toLocaleString("en")} balls and ${SIZES.tickets.toLocaleString("en")} tickets`,
    value: `p50 ${at(0.5)}, p95 ${at(0.95)} (aim 50 ms)`,
    ratio: null,
  };
}

for (const { what, value } of await recordsRows()) console.log(`${what}: ${value}`);
