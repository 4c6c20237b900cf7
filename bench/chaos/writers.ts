import { Agent, request } from "node:http";
import { setTimeout as sleep } from "node:timers/promises";

/** What a counter waits before it sends again what was not kept, ms. */
const AGAIN_MS = 20;
const PAGE = 200;

export interface Writers {
  /** Names of the bowlers whose keeping was acknowledged. */
  readonly acknowledged: readonly string[];
  /** Answers that were neither success nor "try again, in so many seconds", in words. */
  readonly wrong: readonly string[];
  /** How many requests were told to try again, or got no answer. */
  turnedAway(): number;
  /** Lets every write that is on its way be acknowledged, and begins no other. */
  end(): Promise<void>;
  /** Leaves what is on its way as it is. */
  cut(): Promise<void>;
}

/**
 * Counters that keep one invented bowler after the other, each with a key, and send again what was not acknowledged, as the page does.
 *
 * @param address of the server; asked anew for each try, so that a server that starts again elsewhere is found
 */
export function writers(address: () => string, count: number, prefix = "Invented"): Writers {
  const agent = new Agent({ keepAlive: true });
  const [acknowledged, wrong]: string[][] = [[], []];
  let [isEnding, isCut, turnedAway] = [false, false, 0];
  const keep = async (name: string): Promise<void> => {
    while (!isCut) {
      const reply = await sent(agent, address(), name);
      if (reply?.status === 201) return void acknowledged.push(name);
      if (reply !== null && (reply.status !== 503 || reply.retryAfter === null))
        wrong.push(`${reply.status}, Retry-After ${reply.retryAfter}`);
      turnedAway += 1;
      await sleep(AGAIN_MS);
    }
  };
  const one = async (_: unknown, number: number): Promise<void> => {
    for (let n = 0; !isEnding && !isCut; n += 1) await keep(`${prefix}-${number}-${n}`);
  };
  const working = Promise.all(Array.from({ length: count }, one));
  return {
    acknowledged,
    wrong,
    turnedAway: () => turnedAway,
    async end() {
      isEnding = true;
      await working;
      agent.destroy();
    },
    async cut() {
      isCut = true;
      await working;
      agent.destroy();
    },
  };
}

/** Null where nobody answered. */
function sent(
  agent: Agent,
  address: string,
  name: string,
): Promise<{ readonly status: number; readonly retryAfter: string | null } | null> {
  const body = JSON.stringify({ name });
  const headers = { "content-type": "application/json", "content-length": Buffer.byteLength(body), "idempotency-key": name };
  return new Promise((resolve) => {
    const asked = request(new URL("/api/bowlers", address), { agent, method: "POST", headers }, (response) => {
      response.on("error", () => resolve(null));
      response.on("end", () => resolve({ status: response.statusCode ?? 0, retryAfter: response.headers["retry-after"] ?? null }));
      response.resume();
    });
    asked.on("error", () => resolve(null));
    asked.end(body);
  });
}

/** Of what was acknowledged: how many are not there, and how many are there more than once. */
export async function lostAndDoubled(
  address: string,
  acknowledged: readonly string[],
): Promise<{ readonly lost: number; readonly doubled: number }> {
  const times = new Map<string, number>();
  for (let after: string | null = ""; after !== null; ) {
    const path: string = `/api/bowlers?limit=${PAGE}&order=oldest%20first${after === "" ? "" : `&after=${after}`}`;
    const page = (await (await fetch(address + path)).json()) as { items: { name: string }[]; next: string | null };
    for (const { name } of page.items) times.set(name, (times.get(name) ?? 0) + 1);
    after = page.next;
  }
  const found = acknowledged.map((name) => times.get(name) ?? 0);
  return { lost: found.filter((count) => count === 0).length, doubled: found.filter((count) => count > 1).length };
}
