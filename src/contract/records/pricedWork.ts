import { numberOf } from "#engine/surface/abrasives";
import { RESURFACED_FROM } from "#engine/surface/pads";
import type { PRICED_WORK } from "./fields.ts";
import type { Price } from "./money.ts";
import type { Ticket } from "./ticket.ts";
import type { Visit } from "./visit.ts";

export type PricedWork = (typeof PRICED_WORK)[number];

/** What there is to charge for in these stages, each once. A resurfacing goes down to a dull number and up again through others; one number put on anew is a refresh (common practice). */
export function workIn(stages: readonly Pick<Ticket["stages"][number], "kind" | "abrasive">[]): readonly PricedWork[] {
  const has = (wanted: Ticket["stages"][number]["kind"]) => stages.some(({ kind }) => kind === wanted);
  const cuts = stages.filter(({ kind }) => kind === "cut").map(({ abrasive }) => numberOf(abrasive) ?? Number.POSITIVE_INFINITY);
  const isResurfaced = cuts.length > 1 && Math.min(...cuts) <= RESURFACED_FROM;
  return [
    ...(cuts.length === 0 ? [] : [isResurfaced ? ("resurface" as const) : ("refresh" as const)]),
    ...(has("polish") ? (["polish"] as const) : []),
    ...(has("extract") ? (["extraction"] as const) : []),
    ...(has("plug") ? (["plug"] as const) : []),
  ];
}

/** Prices of the list that hold on a day. @param day where the shop is, 2026-05-31 */
export function pricesOn(prices: readonly Price[], day: string, currency: string): readonly Price[] {
  return prices.filter((price) => price.currency === currency && price.from <= day && (price.until === null || day <= price.until));
}

/**
 * What the work usually costs: the price of each kind of it. Null, to be priced by somebody, where there is none for the first kind, or two for any: a part
 * of the work would be charged as the whole. Polish and what else goes with a cut may have none; then it is in the price of the cut.
 */
export function usualPrices(work: readonly PricedWork[], prices: readonly Price[]): readonly Price[] | null {
  const found = work.map((kind) => prices.filter((price) => price.work === kind));
  if (found.length === 0 || found[0].length !== 1 || found.some(({ length }) => length > 1)) return null;
  return found.flat();
}

/** What the kinds of work are called in the price list that a shop begins with; a shop that renamed one says it its own way. */
export const WORK_NAMES: Readonly<Record<PricedWork, string>> = {
  refresh: "Refresh",
  resurface: "Resurface",
  polish: "Polish",
  extraction: "Oil extraction",
  plug: "Plug work",
};

/** The kind of work that a price or a bill's line is called by, where it still has its first name. */
export function namedWork(what: string): PricedWork | null {
  const name = what.split(": ")[0];
  return (Object.keys(WORK_NAMES) as PricedWork[]).find((work) => WORK_NAMES[work] === name) ?? null;
}

/** The line of a bill for a ball's work at a price of the list. */
export function lineAt(
  { name, eachCents, taxMillipercent }: Pick<Price, "name" | "eachCents" | "taxMillipercent">,
  ballName: string,
  ticketId: string,
) {
  return { what: `${name}: ${ballName}`.slice(0, 200), ticketId, eachCents, taxMillipercent };
}

/** States in which work is done, so that its price ought to be known. */
const DONE: ReadonlySet<Ticket["state"]> = new Set(["ready", "uncollected", "collected"]);

/** Whether a ball's work is charged, or free for a reason. A line that names no ticket is for all of the visit; work done again is free by itself. */
export function isPriced({ id, reworkOf }: Pick<Ticket, "id" | "reworkOf">, { charges, free }: Pick<Visit, "charges" | "free">): boolean {
  return (
    reworkOf !== null ||
    charges.some(({ ticketId }) => ticketId === null || ticketId === id) ||
    free.some(({ ticketId }) => ticketId === id)
  );
}

/** Tickets of a visit whose work is done, and neither charged nor free. */
export function notPriced<T extends Pick<Ticket, "id" | "reworkOf" | "state">>(
  visit: Pick<Visit, "charges" | "free">,
  tickets: readonly T[],
): T[] {
  return tickets.filter((ticket) => DONE.has(ticket.state) && !isPriced(ticket, visit));
}
