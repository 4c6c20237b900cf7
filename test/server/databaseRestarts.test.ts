import { afterAll, beforeAll, expect, test } from "vitest";
import { API } from "#contract/routes/api";
import { paramNames, type Route } from "#contract/routes/route";
import { postgresRestarts } from "../../bench/chaos/drills/postgresRestarts.ts";
import { HOW_TO_GET_ONE, type TestPostgres, testPostgres } from "../records/postgres.ts";
import { testShop } from "../records/shop.ts";
import { shopServer } from "./shopServer.ts";
import { answerOf } from "./wholeAnswer.ts";

const mustOf = (name: string): Record<string, string> =>
  name === "search" ? { words: "heron" } : name === "takings" ? { from: "2026-05-31", to: "2026-05-31" } : {};

/* The built server over a PostgreSQL that goes away in the middle of writes. `npm run chaos` does it more often, and says how long it was away. */

let postgres: TestPostgres;

beforeAll(async () => {
  const found = await testPostgres();
  if (found === null) throw new Error(`No PostgreSQL: ${HOW_TO_GET_ONE}`);
  postgres = found;
});
afterAll(() => postgres.stop());

test.each([1, 2, 3])(
  "PostgreSQL restarted and its connections ended under writes, lot %i: the server stays, and nothing is lost",
  async (seed) => {
    const [outcome] = await postgresRestarts.run({ seed, size: "short", postgres });
    expect(outcome.broken).toEqual([]);
    expect(outcome).toMatchObject({ lost: 0, doubled: 0 });
    expect(outcome.acknowledged).toBeGreaterThan(0);
  },
);

test("while the database is away, whatever is read is answered with 503 and when to ask again, or needs no database", async () => {
  const away = await testPostgres();
  if (away?.restart == null) throw new Error("This PostgreSQL is not ours to stop.");
  const shop = await testShop({ postgres: await away.newDatabase() });
  const server = await shopServer({ shop });
  await away.stop();
  for (const [name, route] of Object.entries(API) as [string, Route][]) {
    if (route.method !== "get" || route.answer.kind === "events") continue;
    const params = Object.fromEntries(paramNames(route.path).map((param) => [param, shop.by]));
    const { status, text } = await answerOf(server, route, { params, query: mustOf(name) });
    if (status === 503) expect(text, name).toMatch(/"retry-after","\d+"/);
    else expect([200, 404, 422], name).toContain(status);
  }
  await server.end();
});
