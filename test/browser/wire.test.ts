import { expect, test } from "@playwright/test";
import { wireOf } from "../../tools/wire.ts";

/** What a first visit may cost: kB as they are sent, and requests. A shop's second counter is often a telephone on a weak network. */
const ROOMS = [
  { name: "Today", path: "/", kb: 180, requests: 25 },
  { name: "finish plan", path: "/plan", kb: 225, requests: 31 },
  { name: "Lanes", path: "/lanes", kb: 216, requests: 30 },
  { name: "Stock", path: "/stock", kb: 223, requests: 30 },
  { name: "Take in", path: "/intake", kb: 248, requests: 38 },
] as const;

for (const { name, path, kb, requests } of ROOMS) {
  test(`a first visit to ${name} takes at most ${kb} kB in ${requests} requests`, async ({ browser, baseURL }) => {
    const wire = await wireOf(browser, `${baseURL}${path}`);
    // Less than this is no page at all.
    expect(wire.kb).toBeGreaterThan(100);
    expect(wire.kb).toBeLessThanOrEqual(kb);
    expect(wire.requests).toBeLessThanOrEqual(requests);
  });
}
