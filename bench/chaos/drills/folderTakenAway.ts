import { cpSync, existsSync, mkdtempSync, renameSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { uniformSource } from "#engine/random";
import { childServer } from "../../../tools/childServer.ts";
import { asking, newLog } from "../../load/asking.ts";
import type { Drill, Outcome } from "../drill.ts";

const ROUNDS = { short: 2, long: 20 } as const;
const WRITERS = 4;
/** How long is written before and after, ms. */
const WRITE_MS = 300;

/** The folder of the records is moved away, or changed for a copy, while counters write; then it is put back. What was acknowledged must be in it. */
export const folderTakenAway: Drill = {
  name: "Folder taken away, or changed for a copy, while writing",
  async run({ seed, size }) {
    if (process.platform === "win32") return [];
    const random = uniformSource(seed);
    const sum = { acknowledged: 0, lost: 0, refused: 0, broken: [] as string[] };
    for (let round = 0; round < ROUNDS[size]; round += 1) await drilled(round % 2 === 0 ? "moved" : "swapped", random, sum);
    const outcome: Outcome = {
      on: "SQLite",
      rounds: ROUNDS[size],
      acknowledged: sum.acknowledged,
      lost: sum.lost,
      doubled: 0,
      longestFreezeMs: null,
      memoryMb: null,
      note: `${sum.refused} writes refused meanwhile`,
      broken: sum.broken,
    };
    return [outcome];
  },
};

interface Sum {
  acknowledged: number;
  lost: number;
  refused: number;
  readonly broken: string[];
}

async function drilled(how: "moved" | "swapped", random: () => number, sum: Sum): Promise<void> {
  const data = mkdtempSync(join(tmpdir(), "gritwright-away-"));
  const [live, elsewhere] = [join(data, "shop", "live"), join(data, "elsewhere")];
  let server = await childServer(["--own", "--data", data]);
  try {
    const names: string[] = [];
    const stop = new AbortController();
    const writing = Promise.all(Array.from({ length: WRITERS }, (_, i) => write(server.address, i, names, sum, stop.signal)));
    await pause(WRITE_MS * (0.5 + random()));
    if (how === "swapped") cpSync(live, `${live}-copy`, { recursive: true });
    renameSync(live, elsewhere);
    if (how === "swapped") renameSync(`${live}-copy`, live);
    await pause(WRITE_MS);
    const health = await fetch(`${server.address}/api/health`);
    if (health.status !== 503) sum.broken.push(`${how}: health says ${health.status}`);
    if (how === "swapped") rmSync(live, { recursive: true });
    if (existsSync(live)) sum.broken.push(`${how}: something was written where the folder had been`);
    renameSync(elsewhere, live);
    await pause(WRITE_MS);
    stop.abort();
    await writing;
    await server.stop();
    server = await childServer(["--own", "--data", data]);
    const there = await namesIn(server.address);
    sum.acknowledged += names.length;
    sum.lost += names.filter((name) => !there.has(name)).length;
    if (names.length < WRITERS) sum.broken.push(`${how}: hardly anything was written`);
  } finally {
    await server.stop();
    rmSync(data, { recursive: true, force: true });
  }
}

/** Keeps one customer after the other, and notes which were acknowledged. */
async function write(address: string, writer: number, names: string[], sum: Sum, signal: AbortSignal): Promise<void> {
  const { ask, close } = asking(address, newLog());
  for (let i = 0; !signal.aborted; i += 1) {
    const name = `Invented ${writer} ${i}`;
    const { status } = await ask("keep a customer", "POST", "/api/bowlers", { name });
    if (status === 201) names.push(name);
    else if (status === 503) sum.refused += 1;
    else sum.broken.push(`a write was answered with ${status}`);
  }
  close();
}

async function namesIn(address: string): Promise<Set<string>> {
  const names = new Set<string>();
  for (let after: string | null = ""; after !== null; ) {
    const page = await fetch(`${address}/api/bowlers?limit=200${after === "" ? "" : `&after=${after}`}`);
    const { items, next } = (await page.json()) as { items: { name: string }[]; next: string | null };
    for (const { name } of items) names.add(name);
    after = next;
  }
  return names;
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}
