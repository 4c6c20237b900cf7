import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { uniformSource } from "#engine/random";
import { verifyBackup } from "#records/backup/verifyBackup";
import { moveRecords } from "#records/move/move";
import { fill, type Sizes } from "../../../test/records/manyThings.ts";
import { testShop } from "../../../test/records/shop.ts";
import { childServer } from "../../../tools/childServer.ts";
import { asking, newLog } from "../../load/asking.ts";
import { fillShop, lostOf, nothingYet } from "../../load/shop.ts";
import { look, type Pace, write } from "../../load/working.ts";
import type { Drill, Outcome, Setting } from "../drill.ts";

const PACE: Pace = { counters: 20, lookEveryS: 1, writesPerS: 20, planEveryS: 0 };
const OPEN_TICKETS = 20;
/** Long: a database of about 134 MB. */
const SIZES: Readonly<Record<Setting["size"], Sizes>> = {
  short: { balls: 600, tickets: 3000 },
  long: { balls: 7500, tickets: 37_500 },
};
const BACKUPS = { short: 1, long: 3 } as const;
/** Work without a backup, before the first and between two, ms. */
const BREATH_MS = { short: 500, long: 5000 } as const;
/** What is aimed at with the long size, ms. */
const AIM = { backupMs: 10_000, othersP99Ms: 250 } as const;

/** Backups are made one after the other while counters look and write: how long each took, and how long the others waited meanwhile. */
export const backupUnderWrites: Drill = {
  name: "Backup under writes",
  async run(setting) {
    const { postgres } = setting;
    const onFile = await drilled(setting, null);
    return postgres === null ? [onFile] : [onFile, await drilled(setting, await postgres.newDatabase())];
  },
};

async function drilled({ seed, size }: Setting, database: string | null): Promise<Outcome> {
  const data = mkdtempSync(join(tmpdir(), "gritwright-backup-"));
  try {
    await filled(join(data, "shop"), database, SIZES[size], seed);
    const server = await childServer(["--own", "--data", data], database === null ? {} : { GRITWRIGHT_DATABASE: database });
    const log = newLog();
    const counters = asking(server.address, log);
    const shop = await fillShop(counters, OPEN_TICKETS);
    log.took.clear();
    const acknowledged = nothingYet();
    const ends = new AbortController();
    const working = [
      look(counters, PACE, uniformSource(seed), ends.signal),
      write(counters, shop, PACE, uniformSource(seed + 1), acknowledged, ends.signal),
    ];
    // How long they wait without a backup, on this machine at this moment.
    await sleep(BREATH_MS[size]);
    const before = at([...log.took.values()].flat(), 0.99);
    log.took.clear();
    const tooks: number[] = [];
    for (let i = 0; i < BACKUPS[size]; i += 1) {
      tooks.push(await backedUp(server.address, log.errors));
    }
    ends.abort();
    await Promise.all(working);
    const memoryMb = memoryOf(server.process.pid);
    const others = [...log.took.values()].flat();
    const lost = await lostOf(counters, acknowledged);
    counters.close();
    await server.stop();
    const { megabytes, wrong } = await verified(join(data, "shop", "backups"));
    const p99 = at(others, 0.99);
    const longest = Math.max(...tooks);
    return {
      on: database === null ? "SQLite" : "PostgreSQL",
      rounds: tooks.length,
      acknowledged: acknowledged.writes,
      lost: lost.length,
      doubled: 0,
      longestFreezeMs: Math.round(Math.max(...others)),
      memoryMb,
      note: `${megabytes} MB of database: ${tooks.map((ms) => (ms / 1000).toFixed(1)).join(", ")} s; others' p99 ${Math.round(p99)} ms, before ${Math.round(before)} ms`,
      broken: [
        ...log.errors,
        ...lost,
        ...wrong,
        ...(size === "long" && longest > AIM.backupMs ? [`a backup took ${Math.round(longest)} ms, more than ${AIM.backupMs}`] : []),
        ...(size === "long" && p99 > AIM.othersP99Ms
          ? [`others' p99 was ${Math.round(p99)} ms, above ${AIM.othersP99Ms} (${Math.round(before)} ms before the backups)`]
          : []),
      ],
    };
  } finally {
    rmSync(data, { recursive: true, force: true });
  }
}

async function filled(folder: string, database: string | null, sizes: Sizes, seed: number): Promise<void> {
  const shop = await testShop({ folder });
  const { shopId } = await shop.records.settings.get();
  await shop.records.close();
  fill(join(folder, "live", "records.sqlite"), shopId, shop.by, sizes, seed);
  if (database === null) return;
  const { now, randomBytes } = shop.parts;
  await moveRecords({ from: folder, to: database, now, randomBytes, tell: () => {} });
  rmSync(folder, { recursive: true });
}

/** One backup as the page asks for it, ms; what went wrong is noted. */
async function backedUp(address: string, errors: string[]): Promise<number> {
  const start = performance.now();
  const response = await fetch(`${address}/api/backups`, { method: "POST" });
  const text = await response.text();
  if (response.status !== 201) errors.push(`the backup: ${response.status} ${text}`);
  return performance.now() - start;
}

/** Reads every backup again; and how large the database in them is, as it lies in the folder of the shop. */
async function verified(backups: string): Promise<{ megabytes: string; wrong: string[] }> {
  const wrong: string[] = [];
  for (const name of readdirSync(backups).filter((one) => one.endsWith(".zip")))
    await verifyBackup(join(backups, name)).catch((fault: Error) => wrong.push(`${name}: ${fault.message}`));
  const live = join(backups, "..", "live", "records.sqlite");
  return { megabytes: statSync(live, { throwIfNoEntry: false }) === undefined ? "as many" : (statSync(live).size / 1e6).toFixed(0), wrong };
}

/** Most memory that a process has kept, MB; null where the system does not say. */
function memoryOf(pid: number | undefined): number | null {
  if (process.platform !== "linux") return null;
  const [, kb] = /VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, "utf8")) ?? [];
  return Math.round(Number(kb) / 1024);
}

function at(times: readonly number[], share: number): number {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.floor(share * (sorted.length - 1))] ?? 0;
}
