import type { StockItemWritten } from "#contract/records/stock";
import {
  type StockItem,
  type StockMovement,
  stockItemKept,
  stockItemWritten,
  stockMovementKept,
  stockMovementWritten,
} from "#contract/records/stock";
import type { Changeable } from "../records.ts";
import type { Session } from "../session.ts";
import type { Definition } from "./definition.ts";
import { checkedFields } from "./rows.ts";
import { store } from "./store.ts";

export const itemKind: Definition<StockItem> = {
  kind: "stockItems",
  written: stockItemWritten,
  kept: stockItemKept,
  lookups: { kind: null, state: null },
};

/** Millionths: sums of decimal fractions would otherwise end in 0.30000000000000004. */
const FINEST = 1e6;

export const movementKind: Definition<StockMovement> = {
  kind: "stockMovements",
  written: stockMovementWritten,
  kept: stockMovementKept,
  lookups: { stockItemId: "stockItems", stageDoneId: "stagesDone" },
  async alsoWrite({ stockItemId, change }, _before, session, by) {
    const items = store(session, itemKind);
    const item = await items.get(stockItemId);
    const quantity = Math.round((item.quantity + change) * FINEST) / FINEST;
    await items.alter(stockItemId, () => ({ quantity }), { by, expectedVersion: item.version });
  },
};

export function stockItems(session: Session): Changeable<StockItem, StockItemWritten, "kind" | "state"> {
  const { get, list, change, make } = store(session, itemKind);
  return {
    get,
    list,
    change,
    create: async (written, write) => make(checkedFields(stockItemWritten, written, "stockItems"), { quantity: 0 }, write),
  };
}
