import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { RecordsFault } from "#contract/records/fault";
import { uniformSource } from "#engine/random";
import { buildRecorder, layDown } from "./powerCut.ts";
import { testShop } from "./shop.ts";

/** 10 in the suite; `npm run statistics` takes 200, and ten times the power cuts. */
const KILLS = Number(process.env.KILLS ?? 10);
const CUTS = Number(process.env.CUTS ?? 6);
/** States of the disk that are made up from each cut: nothing unsynced is there, and so many by lot. */
const LOTS = 3;

const random = uniformSource(20260531);

/** Starts a process that writes, kills it after a while, and tells what it had acknowledged. */
async function writeUntilKilled(
  folder: string,
  runMs: number,
  planted: string | null,
  environment: Record<string, string>,
): Promise<string[]> {
  const writer = join(import.meta.dirname, "writer.ts");
  const args = ["--conditions=source", "--import", "tsx", writer, folder, ...(planted === null ? [] : [planted])];
  const child = spawn(process.execPath, args, { env: { ...process.env, ...environment }, stdio: ["ignore", "pipe", "inherit"] });
  let said = "";
  let kill: NodeJS.Timeout | undefined;
  child.stdout?.setEncoding("utf8").on("data", (text: string) => {
    said += text;
    // From the first acknowledged write on: by then a slow machine has written something too.
    if (kill === undefined && said.split("\n").length > 2) kill = setTimeout(() => child.kill("SIGKILL"), runMs);
  });
  await ended(child);
  // A line that was cut short was not acknowledged.
  return said.split("\n").slice(1, -1);
}

function ended(child: ChildProcess): Promise<void> {
  return new Promise((resolve) => child.once("close", () => resolve()));
}

/** How many of the acknowledged writes are not there; all of them where the database is damaged. */
async function lostOf(acknowledged: readonly string[], folder: string): Promise<number> {
  try {
    const shop = await testShop({ folder });
    const outcomes = await Promise.allSettled(
      acknowledged.map((line) => {
        const [kind, id] = line.split(" ");
        return kind === "photos" ? shop.records.photos.bytes(id) : shop.records.bowlers.get(id);
      }),
    );
    await shop.end();
    return outcomes.filter(({ status }) => status === "rejected").length;
  } catch (fault) {
    if (["damaged", "notReachable"].includes((fault as RecordsFault).kind)) return acknowledged.length;
    throw fault;
  }
}

it(`${KILLS} times kill −9 at a random moment: no acknowledged write is lost`, { timeout: KILLS * 10_000 }, async () => {
  let acknowledged = 0;
  for (let i = 0; i < KILLS; i += 1) {
    const folder = mkdtempSync(join(tmpdir(), "gritwright-kill-"));
    const said = await writeUntilKilled(folder, 20 + random() * 200, null, {});
    expect(await lostOf(said, folder), `kill ${i}`).toBe(0);
    acknowledged += said.length;
  }
  expect(acknowledged).toBeGreaterThan(KILLS);
});

const recorder = buildRecorder();

it(
  recorder === null ? "power cuts were left out: they want Linux and a C compiler (apt-get install gcc)" : "power cuts can be simulated",
  () => {
    expect(recorder !== null || process.env.CI !== "true").toBe(true);
  },
);

/** Writes, cuts the power, lays down what may be on the disk, and counts what is lost over all states. */
async function cutPower(
  library: string,
  planted: string | null,
): Promise<{ acknowledged: number; lost: number; states: number; losing: number }> {
  const root = mkdtempSync(join(tmpdir(), "gritwright-cut-"));
  const folder = join(root, "shop");
  const log = join(root, "log");
  const environment = { LD_PRELOAD: library, POWER_CUT_LOG: log, POWER_CUT_FOLDER: folder };
  const said = await writeUntilKilled(folder, 100 + random() * 300, planted, environment);
  const sum = { acknowledged: said.length, lost: 0, states: 0, losing: 0 };
  for (let lot = 0; lot <= LOTS; lot += 1) {
    const after = join(root, `after-${lot}`);
    layDown(log, folder, after, () => lot > 0 && random() < 0.5);
    const lost = await lostOf(said, after);
    sum.lost += lost;
    sum.states += 1;
    sum.losing += lost > 0 ? 1 : 0;
  }
  rmSync(root, { recursive: true, force: true });
  return sum;
}

describe.runIf(recorder !== null)("a power cut", () => {
  it(`${CUTS} times, ${LOTS + 1} states of the disk each: no acknowledged write is lost`, { timeout: CUTS * 20_000 }, async () => {
    for (let i = 0; i < CUTS; i += 1) {
      const { acknowledged, lost } = await cutPower(recorder ?? "", null);
      expect(acknowledged).toBeGreaterThan(0);
      expect(lost, `cut ${i}`).toBe(0);
    }
  });

  // A cut right after the database has written its log back loses nothing whatever was planted: it is cut until something is lost.
  it.each(["OFF", "NORMAL"])("is seen to lose acknowledged writes with synchronous=%s planted", { timeout: 120_000 }, async (planted) => {
    let losing = 0;
    for (let i = 0; i < 20 && losing === 0; i += 1) losing += (await cutPower(recorder ?? "", planted)).losing;
    expect(losing).toBeGreaterThan(0);
  });
});
