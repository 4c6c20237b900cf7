import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, afterEach, describe, expect, test } from "vitest";
import { type ChildServer, childServer } from "../../tools/childServer.ts";

/* The real program, as built: started, written to, stopped, killed, started again. */

const data = mkdtempSync(join(tmpdir(), "gritwright-process-"));
afterAll(() => rmSync(data, { recursive: true, force: true }));

let running: ChildServer | null = null;
afterEach(() => running?.kill());

async function start(environment: Record<string, string> = {}, ...args: string[]): Promise<ChildServer> {
  running = await childServer(["--data", data, ...args], environment);
  return running;
}

async function keep(address: string, name: string, key: string): Promise<number> {
  const body = JSON.stringify({ name });
  return (
    await fetch(`${address}/api/houses`, { method: "POST", headers: { "content-type": "application/json", "idempotency-key": key }, body })
  ).status;
}

async function houses(address: string): Promise<string[]> {
  const { items } = (await (await fetch(`${address}/api/houses?limit=200`)).json()) as { items: { name: string }[] };
  return items.map(({ name }) => name);
}

describe("the program", () => {
  test("asked to stop, ends what is under way and itself; started again, everything is there", { timeout: 60_000 }, async () => {
    const first = await start({}, "--own");
    expect(await keep(first.address, "Nowhere Lanes", "1")).toBe(201);
    const listening = await fetch(`${first.address}/api/queue/events`);
    const events = listening.text();
    first.process.kill("SIGTERM");
    expect(await first.ended).toEqual([0, null]);
    expect(await events).toContain("event: queue");
    const second = await start({}, "--own");
    expect(await houses(second.address)).toEqual(["Nowhere Lanes"]);
  });

  test("killed at once after an answer, has kept what it answered for; the retry of the next start changes nothing", {
    timeout: 60_000,
  }, async () => {
    for (let round = 0; round < 5; round++) {
      const { address, process: child, ended } = await start({}, "--own");
      expect(await keep(address, `Killed after ${round}`, `kill-${round}`)).toBe(201);
      child.kill("SIGKILL");
      expect(await ended).toEqual([null, "SIGKILL"]);
    }
    const { address } = await start({}, "--own");
    for (let round = 0; round < 5; round++) expect(await keep(address, `Killed after ${round}`, `kill-${round}`)).toBe(201);
    expect((await houses(address)).filter((name) => name.startsWith("Killed"))).toHaveLength(5);
  });

  test("makes the invented shop in a folder of its own, and one's own is not touched by it", { timeout: 120_000 }, async () => {
    const demonstration = await start();
    expect(await (await fetch(`${demonstration.address}/api/health`)).json()).toMatchObject({ state: "well", invented: true });
    demonstration.process.kill("SIGTERM");
    await demonstration.ended;
    const own = await start({}, "--own");
    expect(await (await fetch(`${own.address}/api/health`)).json()).toMatchObject({ invented: false });
    const { items } = (await (await fetch(`${own.address}/api/bowlers`)).json()) as { items: unknown[] };
    expect(items).toEqual([]);
  });

  test("does not start with a configuration that it does not understand, and says where", { timeout: 60_000 }, async () => {
    await expect(start({ GRITWRIGHT_LIMITS_FILE_MB: "much" }, "--own")).rejects.toThrow(
      /GRITWRIGHT_LIMITS_FILE_MB: "much" is not allowed here/,
    );
    await expect(start({ GRITWRIGHT_DATTA: "x" }, "--own")).rejects.toThrow(/did you mean GRITWRIGHT_DATA\?/);
    await expect(start({}, "--demonstration", "--own")).rejects.toThrow(/not both/);
  });
});
