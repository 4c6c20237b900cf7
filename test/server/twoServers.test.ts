import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ChildServer, childServer } from "../../tools/childServer.ts";
import { HOW_TO_GET_ONE, type TestPostgres, testPostgres } from "../records/postgres.ts";

/* Two servers of one shop over one database, as built. What one of them acknowledged outlives it; what the other writes is told at once. */

const WRITERS = 6;
/** So many writes are acknowledged before the one is killed. */
const ENOUGH = 40;

let postgres: TestPostgres;
const folder = mkdtempSync(join(tmpdir(), "gritwright-two-servers-"));
const started: ChildServer[] = [];

beforeAll(async () => {
  const found = await testPostgres();
  if (found === null) throw new Error(`No PostgreSQL: ${HOW_TO_GET_ONE}`);
  postgres = found;
});
afterAll(async () => {
  for (const server of started) await server.kill();
  await postgres.stop();
  rmSync(folder, { recursive: true, force: true });
});

async function start(database: string, name: string): Promise<ChildServer> {
  const server = await childServer(["--own", "--data", join(folder, name)], { GRITWRIGHT_DATABASE: database });
  started.push(server);
  return server;
}

/** What came back; null where nobody answered. */
async function keep(address: string, name: string): Promise<number | null> {
  const headers = { "content-type": "application/json", "idempotency-key": name };
  const asked = fetch(`${address}/api/bowlers`, { method: "POST", headers, body: JSON.stringify({ name }) });
  return asked.then(
    ({ status }) => status,
    () => null,
  );
}

async function bowlers(address: string): Promise<string[]> {
  const names: string[] = [];
  for (let after: string | null = ""; after !== null; ) {
    const path: string = `/api/bowlers?limit=200${after === "" ? "" : `&after=${after}`}`;
    const page = (await (await fetch(address + path)).json()) as { items: { name: string }[]; next: string | null };
    names.push(...page.items.map(({ name }) => name));
    after = page.next;
  }
  return names;
}

describe("two servers over one database", () => {
  test("one is killed in mid-write: nothing it acknowledged is lost, and what is sent again to the other is there once", {
    timeout: 120_000,
  }, async () => {
    const database = await postgres.newDatabase();
    const dying = await start(database, "dying");
    const staying = await start(database, "staying");
    const acknowledged: string[] = [];
    const unanswered: string[] = [];
    let isDead = false;
    const writer = async (number: number): Promise<void> => {
      for (let n = 0; !isDead; n += 1) {
        const name = `Invented-${number}-${n}`;
        const status = await keep(dying.address, name);
        if (status === 201) acknowledged.push(name);
        else unanswered.push(name);
      }
    };
    const writing = Array.from({ length: WRITERS }, (_, number) => writer(number));
    await expect.poll(() => acknowledged.length, { timeout: 60_000, interval: 20 }).toBeGreaterThan(ENOUGH);
    await dying.kill();
    isDead = true;
    await Promise.all(writing);
    // Each writer had one on its way: a counter sends it again, with its key, to the server that is left.
    expect(unanswered.length).toBeGreaterThan(0);
    for (const name of unanswered) expect(await keep(staying.address, name)).toBe(201);
    const there = await bowlers(staying.address);
    expect(there.toSorted()).toEqual([...acknowledged, ...unanswered].toSorted());
    // Both go on together, and a third that starts again sees the same.
    const again = await start(database, "dying");
    expect(await keep(again.address, "Invented-afterwards")).toBe(201);
    expect(await bowlers(staying.address)).toContain("Invented-afterwards");
    expect((await bowlers(again.address)).toSorted()).toEqual((await bowlers(staying.address)).toSorted());
  });

  test("what is written through one is told at once to pages that listen at the other", { timeout: 60_000 }, async () => {
    const database = await postgres.newDatabase();
    const one = await start(database, "one");
    const other = await start(database, "other");
    const keepAt = async (path: string, body: unknown) => {
      const headers = { "content-type": "application/json" };
      const reply = await fetch(`${one.address}${path}`, { method: "POST", headers, body: JSON.stringify(body) });
      expect(reply.status).toBe(201);
      return ((await reply.json()) as { id: string }).id;
    };
    const ballId = await keepAt("/api/balls", { name: "Grey Heron", cover: "solid" });
    const visitId = await keepAt("/api/visits", { arrivedAt: "2026-05-31T18:00:00.000Z", currency: "USD" });
    const gone = new AbortController();
    const heard = fetch(`${other.address}/api/queue/events`, { signal: gone.signal });
    let said = "";
    const hearing = heard.then(async ({ body }) => {
      for await (const chunk of body ?? []) said += Buffer.from(chunk).toString();
    });
    await expect.poll(() => said).toContain('"items":[]');
    await keepAt("/api/tickets", { visitId, ballId, receivedAt: "2026-05-31T18:00:00.000Z" });
    await expect.poll(() => said, { timeout: 10_000 }).toContain("Grey Heron");
    gone.abort();
    await hearing.catch(() => undefined);
  });
});
