import type { Asking } from "./asking.ts";

/** What the counters of the load work on. */
export interface LoadShop {
  readonly tickets: readonly string[];
  readonly stockItem: string;
}

const AT = "2026-05-31T18:00:00.000Z";

/**
 * Fills a new shop with open tickets of invented bowlers, and an item of the stock.
 *
 * @param open how many balls are waiting
 */
export async function fillShop({ ask }: Asking, open: number): Promise<LoadShop> {
  const make = async (path: string, body: unknown): Promise<string> => {
    const reply = await ask("filling", "POST", path, body);
    if (reply.status !== 201) throw new Error(`The shop could not be filled: ${JSON.stringify(reply.body)}`);
    return (reply.body as { id: string }).id;
  };
  const tickets: string[] = [];
  for (let i = 0; i < open; i += 1) {
    const bowlerId = await make("/api/bowlers", { name: `Invented bowler ${i}` });
    const ballId = await make("/api/balls", { name: `Invented ball ${i}`, serial: `L${i}`, cover: "solid", bowlerId });
    const visitId = await make("/api/visits", { bowlerId, arrivedAt: AT, currency: "USD" });
    tickets.push(await make("/api/tickets", { visitId, ballId, receivedAt: AT, complaint: "Hooks early" }));
  }
  const stockItem = await make("/api/stock-items", { name: "Invented pads", kind: "pad", number: 1000, unit: "uses" });
  return { tickets, stockItem };
}

/** What was acknowledged, to be looked for afterwards. */
export interface Acknowledged {
  /** What each ticket's findings say last, by its id. */
  readonly findings: Map<string, string>;
  readonly movements: Set<string>;
  readonly bowlers: Set<string>;
  /** How many writes were acknowledged in all: a ticket is changed many times, and only its last change can be looked for. */
  writes: number;
}

export function nothingYet(): Acknowledged {
  return { findings: new Map(), movements: new Set(), bowlers: new Set(), writes: 0 };
}

/** Reads everything again, and names each acknowledged write that is not there. */
export async function lostOf({ ask }: Asking, { findings, movements, bowlers }: Acknowledged): Promise<readonly string[]> {
  const lost: string[] = [];
  for (const [id, text] of findings) {
    const { body } = await ask("reading again", "GET", `/api/tickets/${id}`);
    if ((body as { findings?: string } | null)?.findings !== text) lost.push(`findings of ticket ${id}`);
  }
  for (const [kind, ids] of [
    ["stock-movements", movements],
    ["bowlers", bowlers],
  ] as const) {
    const there = await everyId(ask, kind);
    for (const id of ids) if (!there.has(id)) lost.push(`${kind} ${id}`);
  }
  return lost;
}

async function everyId(ask: Asking["ask"], kind: string): Promise<ReadonlySet<string>> {
  const ids = new Set<string>();
  for (let after: string | null = ""; after !== null; ) {
    const path: string = `/api/${kind}?limit=200&order=oldest%20first${after === "" ? "" : `&after=${after}`}`;
    const page = (await ask("reading again", "GET", path)).body as { items: readonly { id: string }[]; next: string | null };
    for (const { id } of page.items) ids.add(id);
    after = page.next;
  }
  return ids;
}
