import { median } from "../rows.ts";
import type { Log } from "./asking.ts";
import { quarters } from "./memory.ts";
import type { Pace } from "./working.ts";

export interface LoadRun {
  readonly database: string;
  readonly minutes: number;
  readonly pace: Pace;
  readonly openTickets: number;
  readonly log: Log;
  readonly plansMs: readonly number[];
  readonly memoryMb: readonly number[];
  readonly acknowledged: number;
  readonly lost: readonly string[];
}

/** What one load run came to, as a piece of docs/performance.md. */
export function loadReport(run: LoadRun): string {
  const { minutes, pace, openTickets, log, plansMs, memoryMb, acknowledged, lost } = run;
  const rows = [...log.took].filter(([kind]) => kind !== "filling" && kind !== "reading again").map(([kind, times]) => row(kind, times));
  const memory = quarters(memoryMb).map((mb) => Math.round(mb));
  return `${minutes} min, ${pace.counters} counters that look at the queue of ${openTickets} balls every ${pace.lookEveryS} s, ${pace.writesPerS} writes a second, a plan every ${pace.planEveryS} s (${plansMs.length} done, median ${plansMs.length === 0 ? "–" : (median(plansMs) / 1000).toFixed(1)} s).

| request | how many | p50, ms | p95, ms | p99, ms | longest, ms |
|---|---:|---:|---:|---:|---:|
${rows.join("\n")}

Errors: ${log.errors.length}. Writes acknowledged: ${acknowledged}; not there when read again after the server was stopped and started: ${lost.length}. Memory of the server, medians of the four quarters of the time: ${memory.join(", ")} MB.
${log.errors.slice(0, 3).join("\n")}`;
}

function row(kind: string, times: readonly number[]): string {
  const sorted = times.toSorted((a, b) => a - b);
  const at = (share: number) => sorted[Math.floor(share * (sorted.length - 1))].toFixed(1);
  return `| ${kind} | ${times.length} | ${at(0.5)} | ${at(0.95)} | ${at(0.99)} | ${at(1)} |`;
}
