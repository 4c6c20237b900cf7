import { mkdtempSync, rmSync } from "node:fs";
import { connect, type Socket } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { type ChildServer, childServer } from "../../../tools/childServer.ts";
import { bystander } from "../bystander.ts";
import type { Drill, Outcome, Setting } from "../drill.ts";
import { lostAndDoubled, writers } from "../writers.ts";

/** Where what is hostile comes from; all of 127.0.0.0/8 is this machine (RFC 1122, 3.2.1.3), and counts as another address. */
const ELSEWHERE = "127.0.0.2";
const FREEZE_MS = 1000;
/** The server may keep so much, MB: some 170 at rest, what may be under way of bodies, and what thousands of writes beside it leave to be cleared. */
const MEMORY_MB = 400;
const HOLD_MS = { short: 300, long: 15_000 } as const;
const COUNTS = { short: { halves: 400, open: 600, streams: 60 }, long: { halves: 4800, open: 5000, streams: 1000 } } as const;
const HALF_BYTES = 200_000;
/** What stops must be gone by then, ms. */
const STOP_MS = 4500;
const AT_ONCE = 40;

/** Bodies half sent, connections that say nothing, streams that are hoarded: what it costs the server, and how long the others wait. */
export const slowSenders: Drill = {
  name: "Half-sent bodies, half-open connections, hoarded streams",
  async run({ size }) {
    const { halves, open, streams } = COUNTS[size];
    return [
      await under("half-sent bodies of 200 kB", halves, size, (port) => halfBody(port)),
      await under("connections that say nothing", open, size, (port) => [port, ""]),
      await under("event streams", streams, size, (port) => [port, `GET /api/queue/events HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\n\r\n`]),
    ];
  },
};

type Said = readonly [port: number, words: string];

function halfBody(port: number): Said {
  const head = `POST /api/bowlers HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nContent-Type: application/json\r\nContent-Length: ${HALF_BYTES + 1}\r\n\r\n`;
  return [port, head + "x".repeat(HALF_BYTES)];
}

async function under(what: string, count: number, size: Setting["size"], said: (port: number) => Said): Promise<Outcome> {
  const data = mkdtempSync(join(tmpdir(), "gritwright-slow-"));
  const server = await childServer(["--own", "--data", data]);
  const beside = bystander(server.address, server.process.pid ?? 0);
  const counters = writers(() => server.address, 2);
  const sockets: Socket[] = [];
  for (let i = 0; i < count; i += 1) {
    sockets.push(opened(said(Number(new URL(server.address).port))));
    if (i % AT_ONCE === AT_ONCE - 1) await sleep(10);
  }
  await sleep(HOLD_MS[size]);
  await counters.end();
  const seen = await beside.end();
  const held = sockets.filter(({ destroyed }) => !destroyed).length;
  const found = await lostAndDoubled(server.address, counters.acknowledged);
  // In the short form only what is half sent is waited for: it is what takes longest.
  const stopMs = size === "long" || what.includes("bodies") ? await stopped(server) : null;
  if (stopMs === null) await server.kill();
  for (const socket of sockets) socket.destroy();
  rmSync(data, { recursive: true, force: true });
  const broken = [
    ...(seen.longestFreezeMs > FREEZE_MS ? [`somebody else waited ${seen.longestFreezeMs} ms`] : []),
    ...(seen.memoryMb > MEMORY_MB ? [`${seen.memoryMb} MB kept`] : []),
    ...(found.lost + found.doubled > 0 ? [`${found.lost} lost, ${found.doubled} doubled`] : []),
    ...((stopMs ?? 0) > STOP_MS ? [`stopping took ${stopMs} ms`] : []),
    ...counters.wrong.slice(0, 1),
  ];
  const note = `${count} ${what}, ${held} of them still open at the end${stopMs === null ? "" : `; stopped in ${(stopMs / 1000).toFixed(1)} s under them`}`;
  return { on: "SQLite", rounds: 1, acknowledged: counters.acknowledged.length, ...found, ...seen, note, broken };
}

function opened([port, words]: Said): Socket {
  const socket = connect({ port, host: "127.0.0.1", localAddress: ELSEWHERE });
  socket.on("error", () => undefined);
  socket.resume();
  if (words !== "") socket.write(words);
  return socket;
}

async function stopped(server: ChildServer): Promise<number> {
  const start = performance.now();
  await server.stop();
  return Math.round(performance.now() - start);
}
