import { setTimeout as sleep } from "node:timers/promises";
import type { Asking } from "./asking.ts";
import type { Acknowledged, LoadShop } from "./shop.ts";

export interface Pace {
  readonly counters: number;
  /** Seconds between two looks of a counter at the queue. */
  readonly lookEveryS: number;
  readonly writesPerS: number;
  /** Seconds between two plans. */
  readonly planEveryS: number;
}

/** How often a plan that is being computed is asked after, ms. */
const ASK_PLAN_MS = 500;

/** Every counter looks at the queue again and again, each in its own step. */
export async function look({ ask }: Asking, { counters, lookEveryS }: Pace, chance: () => number, signal: AbortSignal): Promise<void> {
  const one = async (): Promise<void> => {
    await sleep(1000 * lookEveryS * chance());
    while (!signal.aborted) {
      await ask("look at the queue", "GET", "/api/queue");
      await sleep(1000 * lookEveryS * (0.5 + chance()));
    }
  };
  await Promise.all(Array.from({ length: counters }, one));
}

/**
 * Writes at an even pace, whether or not the answer before is there: a slow server does not slow the counters down.
 * Half are changes of tickets, a third is stock that came or went, the rest new customers. What was answered is noted.
 */
export async function write(
  asking: Asking,
  { tickets, stockItem }: LoadShop,
  { writesPerS }: Pace,
  chance: () => number,
  acknowledged: Acknowledged,
  signal: AbortSignal,
): Promise<void> {
  const free = [...tickets];
  const under: Promise<void>[] = [];
  const start = performance.now();
  for (let n = 0; !signal.aborted; n += 1) {
    const kind = chance();
    const ticket = kind < 0.5 ? free.shift() : undefined;
    if (ticket !== undefined) under.push(findings(asking, ticket, n, acknowledged).finally(() => free.push(ticket)));
    else if (kind < 0.85) under.push(movement(asking, stockItem, n, acknowledged));
    else under.push(customer(asking, n, acknowledged));
    await sleep(Math.max(0, start + (1000 * (n + 1)) / writesPerS - performance.now()));
  }
  await Promise.all(under);
}

async function findings({ ask }: Asking, id: string, n: number, acknowledged: Acknowledged): Promise<void> {
  const { body } = await ask("read a ticket", "GET", `/api/tickets/${id}`);
  const text = `Looked at again, ${n}`;
  const headers = { "if-match": `"${(body as { version: number } | null)?.version}"`, "idempotency-key": `load-ticket-${n}` };
  const { status } = await ask("change a ticket", "PATCH", `/api/tickets/${id}`, { findings: text }, headers);
  if (status !== 200) return;
  acknowledged.findings.set(id, text);
  acknowledged.writes += 1;
}

async function movement({ ask }: Asking, stockItemId: string, n: number, acknowledged: Acknowledged): Promise<void> {
  const json = { stockItemId, at: "2026-05-31T18:00:00.000Z", change: n % 2 === 0 ? 1 : -1, why: n % 2 === 0 ? "delivered" : "used" };
  const { status, body } = await ask("write down stock", "POST", "/api/stock-movements", json, { "idempotency-key": `load-stock-${n}` });
  if (status !== 201) return;
  acknowledged.movements.add((body as { id: string }).id);
  acknowledged.writes += 1;
}

async function customer({ ask }: Asking, n: number, acknowledged: Acknowledged): Promise<void> {
  const json = { name: `Invented customer ${n}`, phone: `+1 555 ${n}` };
  const { status, body } = await ask("keep a customer", "POST", "/api/bowlers", json, { "idempotency-key": `load-bowler-${n}` });
  if (status !== 201) return;
  acknowledged.bowlers.add((body as { id: string }).id);
  acknowledged.writes += 1;
}

/** One plan after the other, a new one every so often; how long each took goes into the log, ms. */
export async function plan({ ask }: Asking, job: object, { planEveryS }: Pace, plansMs: number[], signal: AbortSignal): Promise<void> {
  for (let seed = 1; !signal.aborted; seed += 1) {
    const start = performance.now();
    const asked = (await ask("ask for a plan", "POST", "/api/plans", { ...job, seed })).body as { id: string } | null;
    for (let state = "waiting"; asked !== null && (state === "waiting" || state === "running") && !signal.aborted; ) {
      await sleep(ASK_PLAN_MS);
      state = ((await ask("look at a plan", "GET", `/api/plans/${asked.id}`)).body as { state: string } | null)?.state ?? state;
      if (state === "done") plansMs.push(performance.now() - start);
    }
    await sleep(Math.max(0, start + 1000 * planEveryS - performance.now()));
  }
}
