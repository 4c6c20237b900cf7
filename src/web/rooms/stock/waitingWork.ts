import type { StockItem } from "#contract/records/stock";
import type { Ticket } from "#contract/records/ticket";
import { stockUse } from "../../benchWork/stockUse.ts";

/** A ticket whose work is not finished. */
export interface WaitingTicket {
  readonly stages: readonly Pick<Ticket["stages"][number], "abrasive">[];
  /** Of its stages, how many are signed: those took from the stock already. */
  readonly signed: number;
}

/** What the tickets that wait will take, by the id of the item, in the item's own unit. */
export function waitingUse(stock: readonly StockItem[], tickets: readonly WaitingTicket[]): ReadonlyMap<string, number> {
  const wanted = new Map<string, number>();
  for (const { stages, signed } of tickets)
    for (const { abrasive } of stages.slice(signed))
      for (const { stockItemId, quantity } of stockUse(stock, abrasive)) wanted.set(stockItemId, (wanted.get(stockItemId) ?? 0) + quantity);
  return wanted;
}

const DRY: ReadonlySet<StockItem["kind"]> = new Set(["pad", "wet paper"]);

/** Pads and paper by what is left, and apart from them whatever is poured or weighed, by name. */
export function arranged(items: readonly StockItem[]): { readonly pads: readonly StockItem[]; readonly other: readonly StockItem[] } {
  return {
    pads: items.filter(({ kind }) => DRY.has(kind)).toSorted((a, b) => a.quantity - b.quantity || (a.number ?? 0) - (b.number ?? 0)),
    other: items.filter(({ kind }) => !DRY.has(kind)).toSorted((a, b) => a.name.localeCompare(b.name)),
  };
}
