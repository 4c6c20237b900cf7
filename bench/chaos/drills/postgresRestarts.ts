import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import pg from "pg";
import { uniformSource } from "#engine/random";
import type { TestPostgres } from "../../../test/records/postgres.ts";
import { type ChildServer, childServer } from "../../../tools/childServer.ts";
import type { Drill, Outcome } from "../drill.ts";
import { lostAndDoubled, type Writers, writers } from "../writers.ts";

const ROUNDS = { short: 2, long: 40 } as const;
const COUNTERS = 6;
/** Writes go on for so long between two rounds, ms; and a little more by lot. */
const BETWEEN_MS = 150;
/** The database is away for so long at most, ms. */
const DOWN_MS = 700;
/** After the database is there again, the shop must be served again within, ms. */
const BACK_WITHIN_MS = 2000;
/** Whoever is not back by then stays away, ms. */
const GIVE_UP_MS = 15_000;

/** PostgreSQL stopped and started, and its connections ended, while counters write. */
export const postgresRestarts: Drill = {
  name: "PostgreSQL stopped, and its connections ended, while writing",
  async run({ seed, size, postgres }) {
    return postgres === null ? [] : [await restarted(postgres, seed, ROUNDS[size])];
  },
};

type Blow = (postgres: TestPostgres, database: string, chance: () => number) => Promise<void>;

/** Both ways of stopping, and the end of every connection; each round takes the next. */
const BLOWS: readonly Blow[] = [
  (_, database) => endConnections(database),
  async ({ restart }, _, chance) => restart?.("fast", DOWN_MS * chance()),
  (_, database) => endConnections(database),
  async ({ restart }, _, chance) => restart?.("immediate", DOWN_MS * chance()),
];

/** @param rounds of each kind */
async function restarted(postgres: TestPostgres, seed: number, rounds: number): Promise<Outcome> {
  const chance = uniformSource(seed);
  const database = await postgres.newDatabase();
  const data = mkdtempSync(join(tmpdir(), "gritwright-restarts-"));
  const server = await childServer(["--own", "--data", data], { GRITWRIGHT_DATABASE: database });
  const writing = writers(() => server.address, COUNTERS);
  const [broken, backMs]: [string[], number[]] = [[], []];
  for (let round = 0; round < 2 * rounds && server.process.exitCode === null; round += 1) {
    await sleep(BETWEEN_MS * (1 + chance()));
    await BLOWS[round % BLOWS.length](postgres, database, chance);
    backMs.push(await untilServed(server, writing));
  }
  if (server.process.exitCode !== null) broken.push(`the server ended in round ${backMs.length}`);
  const slowest = Math.max(...backMs);
  if (slowest > BACK_WITHIN_MS) broken.push(`it was away for ${Math.round(slowest)} ms after the database was back`);
  if (writing.wrong.length > 0) broken.push(`${writing.wrong.length} wrong answers, the first ${writing.wrong[0]}`);
  const found = await counted(server, writing);
  if ((found.lost ?? 0) + (found.doubled ?? 0) > 0) broken.push(`${found.lost} lost, ${found.doubled} doubled`);
  await server.stop();
  rmSync(data, { recursive: true, force: true });
  return {
    on: "PostgreSQL",
    rounds: backMs.length,
    acknowledged: writing.acknowledged.length,
    ...found,
    longestFreezeMs: null,
    memoryMb: null,
    note: `served again ${(slowest / 1000).toFixed(1)} s after the database at most; ${writing.turnedAway()} requests told to try again`,
    broken,
  };
}

async function counted(server: ChildServer, writing: Writers): Promise<{ readonly lost: number | null; readonly doubled: number | null }> {
  if (server.process.exitCode !== null) {
    await writing.cut();
    return { lost: null, doubled: null };
  }
  await writing.end();
  return lostAndDoubled(server.address, writing.acknowledged);
}

async function endConnections(database: string): Promise<void> {
  const client = new pg.Client({ connectionString: database });
  await client.connect();
  await client.query(
    "select pg_terminate_backend(pid) from pg_stat_activity where application_name = 'gritwright' and datname = current_database()",
  );
  await client.end();
}

/** How long it takes until the next write is acknowledged, ms. */
async function untilServed({ process }: ChildServer, { acknowledged }: Writers): Promise<number> {
  const [before, start] = [acknowledged.length, performance.now()];
  while (acknowledged.length === before && process.exitCode === null && performance.now() - start < GIVE_UP_MS) await sleep(5);
  return performance.now() - start;
}
