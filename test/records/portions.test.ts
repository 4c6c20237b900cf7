import { setImmediate as nextTurn } from "node:timers/promises";
import { afterAll, describe, expect, it } from "vitest";
import type { Records } from "#records/records";
import { testPostgres } from "./postgres.ts";
import { refusal, type TestShop, testShop } from "./shop.ts";

/* Long work that others are served beside: they are counted, not timed. */

const postgres = await testPostgres();
afterAll(() => postgres?.stop());
const ENGINES: readonly (readonly [string, () => Promise<TestShop>])[] = [
  ["SQLite", () => testShop()],
  ...(postgres === null ? [] : ([["PostgreSQL", async () => testShop({ postgres: await postgres.newDatabase() })]] as const)),
];
/** Fifteen portions. */
const ROWS = 3000;

const tableOf = (last: string) =>
  `name,phone\n${Array.from({ length: ROWS - 1 }, (_, i) => `Invented ${i},555 ${i}`).join("\n")}\n${last}\n`;

/** How often somebody else is answered while something is done. */
async function servedBeside(records: Records, work: Promise<unknown>): Promise<number> {
  let [served, isOver] = [0, false];
  const over = work.finally(() => {
    isOver = true;
  });
  for (; !isOver; served += 1) {
    await records.bowlers.list({ limit: 1 });
    // As a request comes in: by the turn of the program, not in the middle of what is under way.
    await nextTurn();
  }
  await over;
  return served;
}

describe.each(ENGINES)("on %s, a long list", (_, open) => {
  it("is taken in whole, or not at all, and given out again while others read", { timeout: 120_000 }, async () => {
    const shop = await open();
    const { records, by } = shop;
    const refused = records.lists.apply("bowlers", tableOf(",12"), undefined, { by });
    expect(await refusal(refused)).toMatchObject({ kind: "refused" });
    expect((await records.bowlers.list()).items).toEqual([]);
    const taken = records.lists.apply("bowlers", tableOf("Ana Plover,1"), undefined, { by }).then((done) => expect(done.added).toBe(ROWS));
    expect(await servedBeside(records, taken)).toBeGreaterThan(5);
    expect((await records.search.find("plover")).bowlers).toHaveLength(1);
    const given = records.lists.exportAll().then((files) => {
      const whole = JSON.parse(files.find(({ name }) => name === "everything.json")?.text ?? "");
      expect(whole.bowlers).toHaveLength(ROWS);
      expect(whole.audit.filter(({ kind }: { kind: string }) => kind === "bowlers")).toHaveLength(ROWS);
    });
    expect(await servedBeside(records, given)).toBeGreaterThan(5);
    await shop.end();
  });
});
