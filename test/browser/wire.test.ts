import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "@playwright/test";
import type { ChildServer } from "../../tools/childServer.ts";
import { wireOf } from "../../tools/wire.ts";
import { ownServer } from "./shopServer.ts";

/**
 * What a first visit may cost: kB of files as they are sent, and requests. A shop's second counter is often a telephone on a weak network. What a room asks of
 * the records beside that grows with the shop: of the demonstration's some 10 to 40 kB.
 */
const ROOMS = [
  { name: "Today", path: "/", kb: 162, requests: 25 },
  { name: "finish plan", path: "/plan", kb: 219, requests: 31 },
  { name: "Lanes", path: "/lanes", kb: 205, requests: 31 },
  { name: "Stock", path: "/stock", kb: 212, requests: 32 },
  // Two to five of its pieces come after it is quiet, or just before.
  { name: "Take in", path: "/intake", kb: 237, requests: 40 },
] as const;

const ASKED_KB = 60;

// What other tests write asks for pieces that a first visit to this shop does not: its server is this file's own.
let data: string;
let server: ChildServer;
test.beforeAll(async () => {
  data = mkdtempSync(join(tmpdir(), "gritwright-wire-"));
  server = await ownServer(data, 0);
});
test.afterAll(async () => {
  await server.kill();
  rmSync(data, { recursive: true, force: true });
});

for (const { name, path, kb, requests } of ROOMS) {
  test(`a first visit to ${name} takes at most ${kb} kB of files in ${requests} requests`, async ({ browser }) => {
    const wire = await wireOf(browser, `${server.address}${path}`);
    // Less than this is no page at all.
    const files = wire.kb - wire.askedKb;
    expect(files).toBeGreaterThan(100);
    expect(files).toBeLessThanOrEqual(kb);
    expect(wire.askedKb).toBeLessThanOrEqual(ASKED_KB);
    expect(wire.requests).toBeLessThanOrEqual(requests);
  });
}
