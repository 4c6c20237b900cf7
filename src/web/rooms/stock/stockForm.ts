import type { StockItem, StockItemWritten } from "#contract/records/stock";
import { STOCK } from "#words/en/rooms/stock";
import type { EditField } from "../../pieces/EditForm.tsx";
import { figureOrNull, typedOf } from "../../shop/typedValues.ts";
import type { Typed } from "../../shop/useEditing.ts";

const ABOUT: readonly EditField[] = [
  { path: "name", label: STOCK.name },
  { path: "kind", label: STOCK.kind, words: STOCK.kinds },
  { path: "number", label: STOCK.number, as: "number" },
  { path: "reorderAt", label: STOCK.reorderAt, as: "number" },
  { path: "perUse", label: STOCK.perUse, as: "number" },
];
/** What an item counts in is chosen once: its movements are figures of that unit. */
export const NEW_FIELDS: readonly EditField[] = [
  ...ABOUT,
  { path: "unit", label: STOCK.unit, words: STOCK.units },
  { path: "first", label: STOCK.first, as: "number" },
];
export const ITEM_FIELDS: readonly EditField[] = [
  ...ABOUT,
  { path: "state", label: STOCK.state, words: STOCK.states },
  { path: "note", label: STOCK.note },
];
export const NEW_ITEM: Typed = { name: "", kind: "pad", number: "", unit: "uses", reorderAt: "", perUse: "", first: "" };

export function itemTyped({ name, kind, number, reorderAt, perUse, state, note }: StockItem): Typed {
  return { name, kind, number: typedOf(number), reorderAt: typedOf(reorderAt), perUse: typedOf(perUse), state, note };
}

export function itemWritten(typed: Typed): Pick<StockItemWritten, "name" | "kind" | "number" | "reorderAt" | "perUse"> {
  return {
    name: typed.name.trim(),
    kind: typed.kind as StockItem["kind"],
    number: figureOrNull(typed.number),
    reorderAt: figureOrNull(typed.reorderAt),
    perUse: figureOrNull(typed.perUse),
  };
}

export async function readItem(current: unknown): Promise<StockItem | null> {
  const { stockItemKept } = await import("#contract/records/stock");
  return stockItemKept.safeParse(current).data ?? null;
}
