import { readFileSync } from "node:fs";
import { setTimeout as sleep } from "node:timers/promises";
import { median } from "../rows.ts";

/** Seconds between two looks at the memory. */
const EVERY_S = 5;

/** What a process keeps in memory, MB, looked at every few seconds. */
export async function watchMemory(pid: number, seen: number[], signal: AbortSignal): Promise<void> {
  while (!signal.aborted) {
    seen.push(residentMb(pid));
    await sleep(1000 * EVERY_S);
  }
}

/** From the kernel's own figures (proc(5)); Linux only. */
function residentMb(pid: number): number {
  const kb = /^VmRSS:\s+(\d+) kB$/m.exec(readFileSync(`/proc/${pid}/status`, "utf8"))?.[1];
  return Number(kb) / 1000;
}

/** Medians of four parts of the time, MB: what only warms up is over in the first. */
export function quarters(seen: readonly number[]): readonly number[] {
  const part = seen.length / 4;
  return [0, 1, 2, 3].map((i) => median(seen.slice(Math.floor(i * part), Math.max(Math.floor(i * part) + 1, Math.floor((i + 1) * part)))));
}
