import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import Sqlite from "better-sqlite3";
import { uniformSource } from "#engine/random";
import { childServer } from "../../../tools/childServer.ts";
import { bystander } from "../bystander.ts";
import type { Drill, Outcome } from "../drill.ts";
import { lostAndDoubled, writers } from "../writers.ts";

const ROUNDS = { short: 2, long: 20 } as const;
const COUNTERS = 4;
/** Another program holds the write lock for so long at most, ms: longer than a write waits (4 s). */
const HELD_MS = 6000;
const SHORT_HELD_MS = 800;
/** Nobody who only reads waits for another program, ms. */
const FREEZE_MS = 1000;
const DAY_MS = 86_400_000;
/** The clock is set so far back and forth, ms: over an hour that is there twice, a night, a year. */
const SHIFTS = [-3_600_000, 3_600_000, -400 * DAY_MS, 400 * DAY_MS, 0];
const SHIFT_MS = { short: 150, long: 1000 } as const;

/** A lock that another program holds on the database file, and a clock that is set back and forth, while counters write. */
export const lockAndClock: Drill = {
  name: "A held lock, and a clock set back and forth, while writing",
  async run({ seed, size }) {
    const held = size === "long" ? HELD_MS : SHORT_HELD_MS;
    return [await lockHeld(seed, ROUNDS[size], held), await clockSet(ROUNDS[size], SHIFT_MS[size])];
  },
};

async function lockHeld(seed: number, rounds: number, mostMs: number): Promise<Outcome> {
  const chance = uniformSource(seed);
  return worked(rounds, `another program holds the write lock for up to ${mostMs / 1000} s`, {}, async (data) => {
    const other = new Sqlite(join(data, "shop", "live", "records.sqlite"), { timeout: 10_000, fileMustExist: true });
    other.exec("begin immediate");
    await sleep(mostMs * (0.5 + 0.5 * chance()));
    other.exec("rollback");
    other.close();
    await sleep(200);
  });
}

/** The clock of the program alone is set: that of the machine is everybody's. */
function clockSet(rounds: number, eachMs: number): Promise<Outcome> {
  const folder = mkdtempSync(join(tmpdir(), "gritwright-clock-"));
  const [shim, shift] = [join(folder, "clock.cjs"), join(folder, "shift")];
  writeFileSync(shift, "0");
  writeFileSync(
    shim,
    `const { readFileSync } = require("node:fs");
const now = Date.now;
const Plain = Date;
let shift = 0;
setInterval(() => { shift = Number(readFileSync(${JSON.stringify(shift)}, "utf8")) || shift; }, 20).unref();
globalThis.Date = class extends Plain { constructor(...given) { if (given.length === 0) super(now() + shift); else super(...given); } static now() { return now() + shift; } };
`,
  );
  return worked(rounds, "an hour, and 400 days, back and forth", { NODE_OPTIONS: `--require=${shim}` }, async () => {
    for (const by of SHIFTS) {
      writeFileSync(shift, String(by === 0 ? 1 : by));
      await sleep(eachMs);
    }
  }).finally(() => rmSync(folder, { recursive: true, force: true }));
}

async function worked(
  rounds: number,
  note: string,
  environment: Readonly<Record<string, string>>,
  blow: (data: string) => Promise<void>,
): Promise<Outcome> {
  const data = mkdtempSync(join(tmpdir(), "gritwright-lock-"));
  const server = await childServer(["--own", "--data", data], environment);
  const counters = writers(() => server.address, COUNTERS);
  const beside = bystander(server.address, server.process.pid ?? 0);
  for (let round = 0; round < rounds; round += 1) await blow(data);
  await counters.end();
  const seen = await beside.end();
  const found = await lostAndDoubled(server.address, counters.acknowledged);
  const broken = [
    ...(found.lost + found.doubled > 0 ? [`${found.lost} lost, ${found.doubled} doubled`] : []),
    ...(seen.longestFreezeMs > FREEZE_MS ? [`somebody else waited ${seen.longestFreezeMs} ms`] : []),
    ...(server.process.exitCode === null ? [] : ["the server ended"]),
    ...counters.wrong.slice(0, 1),
  ];
  await server.stop();
  rmSync(data, { recursive: true, force: true });
  const said = `${note}; ${counters.turnedAway()} requests told to try again`;
  return { on: "SQLite", rounds, acknowledged: counters.acknowledged.length, ...found, ...seen, note: said, broken };
}
