import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { API } from "#contract/routes/api";
import { paramNames, type Route } from "#contract/routes/route";
import { HOSTILE } from "../../../test/server/hostileJson.ts";
import { childServer } from "../../../tools/childServer.ts";
import { bystander } from "../bystander.ts";
import type { Drill, Outcome, Setting } from "../drill.ts";

/** Largest body that is sent, in bytes: just below what the server takes. */
const MOST_BYTES = 950_000;
/** A body of so many bytes on every route in the short form; in the long one up to the largest. */
const SHORT_BYTES = 60_000;
/** Nobody else may wait longer, ms. */
const FREEZE_MS = 1000;
const SIZES = [1000, 8000, 64_000];

/** Bodies that nobody sends who means well, in growing sizes, on every route; and how long somebody else waits meanwhile. */
export const hostileBodies: Drill = {
  name: "Hostile bodies, on every route",
  async run({ size }) {
    return [await sent(size)];
  },
};

async function sent(size: Setting["size"]): Promise<Outcome> {
  const data = mkdtempSync(join(tmpdir(), "gritwright-hostile-"));
  const server = await childServer(["--own", "--data", data]);
  const beside = bystander(server.address, server.process.pid ?? 0);
  const broken: string[] = [];
  let rounds = 0;
  for (const [name, route] of routesOf(size))
    for (const body of bodiesOf(route, size)) {
      rounds += 1;
      const status = await ask(server.address, route, body);
      if (status >= 500 && status !== 503) broken.push(`${name}: ${status}`);
    }
  if (server.process.exitCode !== null) broken.push("the server ended");
  const seen = await beside.end();
  if (seen.longestFreezeMs > FREEZE_MS) broken.push(`somebody else waited ${seen.longestFreezeMs} ms`);
  await server.stop();
  rmSync(data, { recursive: true, force: true });
  const note = `bodies of up to ${Math.round((size === "long" ? MOST_BYTES : SHORT_BYTES) / 1000)} kB, ${Object.keys(HOSTILE).length} kinds`;
  return { on: "SQLite", rounds, acknowledged: null, lost: null, doubled: null, ...seen, note, broken };
}

/** What gives a way in comes last: were it taken, the other routes would see nothing of their bodies. */
function routesOf(size: Setting["size"]): [string, Route][] {
  const withBody = (Object.entries(API) as [string, Route][]).filter(([, { body }]) => body?.kind === "json");
  const sorted = withBody.toSorted(([, a], [, b]) => Number(a.path.includes("sign-in")) - Number(b.path.includes("sign-in")));
  return size === "long" ? sorted : sorted.filter(([name], i) => i % 4 === 0 || name === "signIn");
}

function bodiesOf({ body }: Route, size: Setting["size"]): string[] {
  if (body?.kind !== "json") return [];
  const { schema } = body;
  const most = size === "long" ? MOST_BYTES : SHORT_BYTES;
  return Object.values(HOSTILE).flatMap((write) => {
    const written = SIZES.map((count) => ({ count, length: write(schema, 100).length * (count / 100) }))
      .filter(({ length }) => length < most)
      .map(({ count }) => count);
    const counts = size === "long" ? written : written.slice(-1);
    return counts.map((count) => write(schema, count));
  });
}

async function ask(address: string, route: Route, body: string): Promise<number> {
  const path = paramNames(route.path).reduce((at, param) => at.replace(`:${param}`, "none"), route.path as string);
  const headers = { "content-type": "application/json", "if-match": '"1"', "idempotency-key": crypto.randomUUID() };
  const response = await fetch(address + path, { method: route.method.toUpperCase(), headers, body });
  await response.arrayBuffer();
  return response.status;
}
