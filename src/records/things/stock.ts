import type { StageDone } from "#contract/records/stageDone";
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
import { stageRead } from "./stageRead.ts";
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

export const stageKind: Definition<StageDone> = {
  ...stageRead,
  async check({ id, ticketId, takesBack }, _before, session) {
    if (takesBack === null) return [];
    const stages = store(session, stageRead);
    const taken = await stages.get(takesBack);
    const { items } = await stages.list({ where: { ticketId }, limit: ALL });
    const isFree = items.every((one) => one.id === id || one.takesBack !== takesBack);
    return taken.ticketId === ticketId && taken.takesBack === null && isFree
      ? []
      : [{ path: "takesBack", value: takesBack, allowed: "an entry of the same ticket that stands" }];
  },
  async alsoWrite({ id, doneAt, used, takesBack }, _before, session, by) {
    const movements = store(session, movementKind);
    const move = (uses: StageDone["used"], sign: 1 | -1) =>
      uses.map(({ stockItemId, quantity }) => ({ stockItemId, at: doneAt, change: sign * quantity, why: "used", stageDoneId: id }));
    // What was signed by mistake was not used.
    const returned = takesBack === null ? [] : (await store(session, stageRead).get(takesBack)).used;
    for (const movement of [...move(used, -1), ...move(returned, 1)]) await movements.create(movement, { by });
  },
};

/** More entries of one ticket than there will ever be. */
const ALL = 500;

export function stockItems(session: Session): Changeable<StockItem, StockItemWritten, "kind" | "state"> {
  const { get, list, change, make } = store(session, itemKind);
  return {
    get,
    list,
    change,
    create: async (written, write) => make(checkedFields(stockItemWritten, written, "stockItems"), { quantity: 0 }, write),
  };
}
