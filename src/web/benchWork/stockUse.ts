import type { StockItem } from "#contract/records/stock";
import { type Abrasive, knownAbrasive } from "#engine/surface/abrasives";

const STOCK_KIND: Readonly<Partial<Record<Abrasive["kind"], string>>> = {
  foamPad: "pad",
  wetPaper: "wet paper",
  cuttingPolish: "polish",
  slipPolish: "polish",
  compound: "compound",
};

/**
 * What a stage takes out of the stock: one use of its abrasive where the shop counts it in uses or pieces; of what is poured or weighed
 * as much as the shop says one stage takes, and nothing where it does not say.
 */
export function stockUse(stock: readonly StockItem[], abrasive: string | null): { stockItemId: string; quantity: number }[] {
  const known = knownAbrasive(abrasive);
  if (known === null) return [];
  const item = stock.find((one) => isOf(one, known) && takenOf(one) !== null);
  return item === undefined ? [] : [{ stockItemId: item.id, quantity: takenOf(item) ?? 0 }];
}

function isOf({ kind, number }: StockItem, abrasive: Abrasive): boolean {
  return STOCK_KIND[abrasive.kind] === kind && (abrasive.grade?.number ?? null) === number;
}

function takenOf({ unit, perUse }: StockItem): number | null {
  return unit === "uses" || unit === "pieces" ? 1 : perUse;
}
