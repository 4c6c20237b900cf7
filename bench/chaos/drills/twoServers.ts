import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { uniformSource } from "#engine/random";
import type { TestPostgres } from "../../../test/records/postgres.ts";
import { childServer } from "../../../tools/childServer.ts";
import type { Drill, Outcome } from "../drill.ts";
import { lostAndDoubled, writers } from "../writers.ts";

const ROUNDS = { short: 2, long: 40 } as const;
const COUNTERS = 4;
/** Writes go on for so long before the one is killed, ms; and as much again by lot. */
const BEFORE_MS = 200;

/** Two servers over one database, one of which is killed in the middle of writes; its counters go on at the other, with what was not answered. */
export const twoServers: Drill = {
  name: "Two servers of one shop, one of them killed while writing",
  async run({ seed, size, postgres }) {
    return postgres === null ? [] : [await killed(postgres, seed, ROUNDS[size])];
  },
};

async function killed(postgres: TestPostgres, seed: number, rounds: number): Promise<Outcome> {
  const chance = uniformSource(seed);
  const data = mkdtempSync(join(tmpdir(), "gritwright-two-"));
  const database = await postgres.newDatabase();
  const start = (name: string) => childServer(["--own", "--data", join(data, name)], { GRITWRIGHT_DATABASE: database });
  const staying = await start("staying");
  const acknowledged: string[] = [];
  const [wrong, broken]: string[][] = [[], []];
  for (let round = 0; round < rounds; round += 1) {
    const dying = await start("dying");
    let address = dying.address;
    const [moving, other] = [
      writers(() => address, COUNTERS, `Invented-moving-${round}`),
      writers(() => staying.address, COUNTERS, `Invented-staying-${round}`),
    ];
    await sleep(BEFORE_MS * (1 + chance()));
    await dying.kill();
    address = staying.address;
    await Promise.all([moving.end(), other.end()]);
    acknowledged.push(...moving.acknowledged, ...other.acknowledged);
    wrong.push(...moving.wrong, ...other.wrong);
  }
  if (wrong.length > 0) broken.push(`${wrong.length} wrong answers, the first ${wrong[0]}`);
  const found = await lostAndDoubled(staying.address, acknowledged);
  if (found.lost + found.doubled > 0) broken.push(`${found.lost} lost, ${found.doubled} doubled`);
  await staying.stop();
  rmSync(data, { recursive: true, force: true });
  const figures = { acknowledged: acknowledged.length, ...found, longestFreezeMs: null, memoryMb: null };
  return { on: "PostgreSQL", rounds, ...figures, note: "what the killed one had not answered was sent to the other, with its key", broken };
}
