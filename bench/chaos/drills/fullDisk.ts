import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type ChildServer, childServer } from "../../../tools/childServer.ts";
import { asking, newLog } from "../../load/asking.ts";
import type { Drill, Outcome } from "../drill.ts";

const ROUNDS = { short: 1, long: 10 } as const;
/** Room for a new shop and some more, and for what was refused and a backup. */
const ROOM = { small: "3m", large: "64m" } as const;
/** Fills it within some hundred writes. */
const NOTE = "x".repeat(3900);
const MOST_WRITES = 5000;

/** A small file system is written full, on which a backup fails too; then there is room again. What was acknowledged must be there, and work goes on. */
export const fullDisk: Drill = {
  name: "Full disk",
  async run({ size }) {
    const sum = { acknowledged: 0, lost: 0, rounds: 0, broken: [] as string[] };
    for (let round = 0; round < ROUNDS[size]; round += 1) if (await drilled(sum)) sum.rounds += 1;
    const note = "a backup that failed is said, and one succeeds when there is room again";
    const outcome: Outcome = {
      on: "SQLite",
      rounds: sum.rounds,
      acknowledged: sum.acknowledged,
      lost: sum.lost,
      doubled: 0,
      longestFreezeMs: null,
      memoryMb: null,
      note: sum.rounds === 0 ? "left out: no file system may be mounted here" : note,
      broken: sum.broken,
    };
    return [outcome];
  },
};

interface Sum {
  acknowledged: number;
  lost: number;
  readonly broken: string[];
}

/** @returns false where no small file system can be had */
async function drilled(sum: Sum): Promise<boolean> {
  const data = mkdtempSync(join(tmpdir(), "gritwright-full-"));
  try {
    if (spawnSync("mount", ["-t", "tmpfs", "-o", `size=${ROOM.small}`, "tmpfs", data]).status !== 0) return false;
    try {
      const server = await childServer(["--own", "--data", data]);
      try {
        await filled(server, data, sum);
      } finally {
        await server.stop();
      }
      return true;
    } finally {
      spawnSync("umount", [data]);
    }
  } finally {
    rmSync(data, { recursive: true, force: true });
  }
}

async function filled(server: ChildServer, data: string, sum: Sum): Promise<void> {
  const { ask, close } = asking(server.address, newLog());
  const lastBackup = async () => ((await ask("health", "GET", "/api/health")).body as { lastBackup?: string } | null)?.lastBackup;
  const kept: string[] = [];
  let last = 0;
  for (let i = 0; i < MOST_WRITES && last !== 507; i += 1) {
    const { status, body } = await ask("keep a customer", "POST", "/api/bowlers", { name: `Invented ${i}`, notes: NOTE });
    if (status === 201) kept.push((body as { id: string }).id);
    else if (status !== 507) sum.broken.push(`on a full disk a write was answered with ${status}`);
    last = status;
  }
  if (last !== 507) sum.broken.push("the disk was never full");
  const backup = await ask("backup", "POST", "/api/backups");
  if (backup.status !== 507) sum.broken.push(`a backup on a full disk was answered with ${backup.status}`);
  if ((await lastBackup()) !== "failed") sum.broken.push("health does not say that the backup failed");
  spawnSync("mount", ["-o", `remount,size=${ROOM.large}`, data]);
  const { status } = await ask("keep a customer", "POST", "/api/bowlers", { name: "Invented, with room" });
  if (status !== 201) sum.broken.push(`with room again a write was answered with ${status}`);
  if ((await ask("backup", "POST", "/api/backups")).status !== 201) sum.broken.push("with room again no backup could be made");
  if ((await lastBackup()) !== "good") sum.broken.push("health does not say that the backup is good");
  for (const id of kept) if ((await ask("read again", "GET", `/api/bowlers/${id}`)).status !== 200) sum.lost += 1;
  sum.acknowledged += kept.length;
  close();
}
