/**
 * `npm run load -- [--minutes 60] [--database postgres://…]`: many counters at one server, on this machine, over loopback. Counters, writes
 * and plans come at a seeded pace; what was acknowledged is read again after the server was stopped and started. A whole hour writes its
 * part of docs/performance.md. Fails where an answer was an error or a write was lost.
 */
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { uniformSource } from "#engine/random";
import { readJobText } from "#exchange/jobFileText";
import { childServer } from "../tools/childServer.ts";
import { MACHINE, writeSection } from "../tools/performancePage.ts";
import { bundleWeb, compile, ROOT } from "../tools/setup.mjs";
import { asking, newLog } from "./load/asking.ts";
import { type LoadRun, loadReport } from "./load/loadReport.ts";
import { watchMemory } from "./load/memory.ts";
import { fillShop, lostOf, nothingYet } from "./load/shop.ts";
import { look, type Pace, plan, write } from "./load/working.ts";

const PACE: Pace = { counters: 200, lookEveryS: 3, writesPerS: 20, planEveryS: 15 };
const OPEN_TICKETS = 40;
const SEED = 1;
/** A trial does not take the place of what was measured. */
const WHOLE_MINUTES = 60;

const { values } = parseArgs({ options: { minutes: { type: "string", default: `${WHOLE_MINUTES}` }, database: { type: "string" } } });
if ((await compile()) !== 0 || (await bundleWeb()) !== 0) throw new Error("The program does not build.");
const run = await loaded(Number(values.minutes), values.database ?? null);
const report = loadReport(run);
if (Number(values.minutes) >= WHOLE_MINUTES)
  writeSection(
    `Many counters, ${run.database}`,
    `Written by \`npm run load\` on ${MACHINE}; server, database and counters on the same machine.\n\n${report}`,
  );
console.log(report);
if (run.log.errors.length > 0 || run.lost.length > 0) process.exitCode = 1;

async function loaded(minutes: number, database: string | null): Promise<LoadRun> {
  const data = mkdtempSync(join(tmpdir(), "gritwright-load-"));
  const start = () => childServer(["--own", "--data", data], database === null ? {} : { GRITWRIGHT_DATABASE: database });
  const log = newLog();
  const [plansMs, memoryMb, acknowledged] = [[] as number[], [] as number[], nothingYet()];
  let server = await start();
  let counters = asking(server.address, log);
  const shop = await fillShop(counters, OPEN_TICKETS);
  const ends = AbortSignal.timeout(60_000 * minutes);
  const job = readJobText(readFileSync(join(ROOT, "examples", "league-night.yaml"))) as object;
  await Promise.all([
    look(counters, PACE, uniformSource(SEED), ends),
    write(counters, shop, PACE, uniformSource(SEED + 1), acknowledged, ends),
    plan(counters, job, PACE, plansMs, ends),
    watchMemory(server.process.pid ?? 0, memoryMb, ends),
  ]);
  counters.close();
  await server.stop();
  server = await start();
  counters = asking(server.address, log);
  const lost = await lostOf(counters, acknowledged);
  counters.close();
  await server.stop();
  rmSync(data, { recursive: true });
  return {
    database: database === null ? "SQLite" : "PostgreSQL",
    minutes,
    pace: PACE,
    openTickets: OPEN_TICKETS,
    log,
    plansMs,
    memoryMb,
    acknowledged: acknowledged.writes,
    lost,
  };
}
