import type { StockItem } from "#contract/records/stock";
import { ABRASIVES, type Abrasive } from "#engine/surface/abrasives";

const STOCK_KIND: Readonly<Partial<Record<Abrasive["kind"], string>>> = {
  foamPad: "pad",
  wetPaper: "wet paper",
  cuttingPolish: "polish",
  slipPolish: "polish",
  compound: "compound",
};

/** What a stage takes out of the stock: one use of its abrasive, where the shop keeps it by uses or pieces. What is counted in millilitres is not guessed. */
export function stockUse(stock: readonly StockItem[], abrasive: string | null): { stockItemId: string; quantity: number }[] {
  const item = stock.find((one) => isUsedBy(one, abrasive));
  return item === undefined ? [] : [{ stockItemId: item.id, quantity: 1 }];
}

function isUsedBy({ kind, number, unit }: StockItem, abrasive: string | null): boolean {
  const known: Abrasive | undefined = abrasive === null ? undefined : (ABRASIVES as Readonly<Record<string, Abrasive>>)[abrasive];
  if (known === undefined || (unit !== "uses" && unit !== "pieces")) return false;
  return STOCK_KIND[known.kind] === kind && (known.grade?.number ?? null) === number;
}
