import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { uniformSource } from "#engine/random";
import { childServer } from "../../../tools/childServer.ts";
import type { Drill, Outcome, Setting } from "../drill.ts";
import { lostAndDoubled, writers } from "../writers.ts";

const ROUNDS = { short: 3, long: 200 } as const;
const COUNTERS = 6;
/** Writes go on for so long at most before the server is killed, ms. */
const WRITING_MS = 400;

/** The server killed as a power cut would end it, while counters write and send again. */
export const killWhileWriting: Drill = {
  name: "Server killed (kill −9) while writing",
  async run(setting) {
    const onFile = await killed(setting, null);
    return setting.postgres === null ? [onFile] : [onFile, await killed(setting, await setting.postgres.newDatabase())];
  },
};

async function killed({ seed, size }: Setting, database: string | null): Promise<Outcome> {
  const chance = uniformSource(seed);
  const data = mkdtempSync(join(tmpdir(), "gritwright-killed-"));
  const start = () => childServer(["--own", "--data", data], database === null ? {} : { GRITWRIGHT_DATABASE: database });
  let server = await start();
  const writing = writers(() => server.address, COUNTERS);
  let slowest = 0;
  for (let round = 0; round < ROUNDS[size]; round += 1) {
    await sleep(WRITING_MS * chance());
    await server.kill();
    const away = performance.now();
    server = await start();
    const before = writing.acknowledged.length;
    while (writing.acknowledged.length === before) await sleep(5);
    slowest = Math.max(slowest, performance.now() - away);
  }
  await writing.end();
  const found = await lostAndDoubled(server.address, writing.acknowledged);
  await server.stop();
  rmSync(data, { recursive: true, force: true });
  return {
    on: database === null ? "SQLite" : "PostgreSQL",
    rounds: ROUNDS[size],
    acknowledged: writing.acknowledged.length,
    ...found,
    longestFreezeMs: null,
    memoryMb: null,
    note: `started again and writing within ${(slowest / 1000).toFixed(1)} s; ${writing.turnedAway()} requests sent again`,
    broken: writing.wrong.length === 0 ? [] : [`${writing.wrong.length} wrong answers, the first ${writing.wrong[0]}`],
  };
}
