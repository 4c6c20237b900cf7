import { readFileSync } from "node:fs";
import { Agent, request } from "node:http";
import { setTimeout as sleep } from "node:timers/promises";

const EVERY_MS = 20;

export interface Bystander {
  /** Stops asking. */
  end(): Promise<{ readonly longestFreezeMs: number; readonly memoryMb: number }>;
}

/**
 * Somebody else who asks for `/api/health` every 20 ms over a connection that stays open, and how long the longest answer took. What this process
 * itself stands still is in the figure. Beside it the most memory that the server kept (VmRSS of proc(5); Linux).
 */
export function bystander(address: string, pid: number): Bystander {
  const agent = new Agent({ keepAlive: true, maxSockets: 1 });
  let [isOver, longestFreezeMs, memoryMb] = [false, 0, 0];
  const asking = (async () => {
    while (!isOver) {
      const start = performance.now();
      await answered(agent, address);
      longestFreezeMs = Math.max(longestFreezeMs, performance.now() - start);
      memoryMb = Math.max(memoryMb, residentMb(pid));
      await sleep(EVERY_MS);
    }
  })();
  return {
    async end() {
      isOver = true;
      await asking;
      agent.destroy();
      return { longestFreezeMs: Math.round(longestFreezeMs), memoryMb: Math.round(memoryMb) };
    },
  };
}

function answered(agent: Agent, address: string): Promise<void> {
  return new Promise((resolve) => {
    const asked = request(new URL("/api/health", address), { agent }, (response) => {
      response.on("end", resolve);
      response.on("error", () => resolve());
      response.resume();
    });
    asked.on("error", () => resolve());
    asked.end();
  });
}

function residentMb(pid: number): number {
  try {
    return Number(/^VmRSS:\s+(\d+) kB$/m.exec(readFileSync(`/proc/${pid}/status`, "utf8"))?.[1] ?? 0) / 1000;
  } catch {
    return 0;
  }
}
