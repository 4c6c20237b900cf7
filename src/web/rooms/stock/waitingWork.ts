import type { StockItem } from "#contract/records/stock";
import type { Work } from "#engine/signed/work";
import { stockUse } from "../../benchWork/stockUse.ts";

/** What the work that waits will take, by the id of the item, in the item's own unit: stages that are signed took from the stock already. */
export function waitingUse(stock: readonly StockItem[], works: readonly Pick<Work, "stages">[]): ReadonlyMap<string, number> {
  const wanted = new Map<string, number>();
  for (const { stages } of works)
    for (const { abrasive } of stages.flatMap(({ stage, by }) => (by === null ? [stage] : [])))
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
