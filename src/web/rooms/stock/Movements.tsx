import type { StockItem, StockMovement } from "#contract/records/stock";
import { STOCK } from "#words/en/rooms/stock";
import { signed } from "#words/figures";
import { type Column, PlainTable } from "../../pieces/PlainTable.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead } from "../../shop/useShop.ts";
import { useShopTimes } from "../../shop/zone.ts";

const LATEST = "200";

/** What came and went of an item, the latest two hundred. */
export function Movements({ item }: { readonly item: StockItem }) {
  const times = useShopTimes();
  const movements = useRead(["stock-movements", item.id], () =>
    answered(shop["stock-movements"].$get({ query: { stockItemId: item.id, limit: LATEST } })),
  );
  const columns: readonly Column<StockMovement>[] = [
    { name: STOCK.columns.at, kind: "day", cell: ({ at }) => times.at(at) },
    { name: STOCK.columns.why, cell: ({ why, note }) => (note === "" ? STOCK.whys[why] : `${STOCK.whys[why]}, ${note}`) },
    { name: STOCK.columns.change, kind: "figure", cell: ({ change }) => signed(change, Number.isInteger(change) ? 0 : 1) },
  ];
  return (
    <details className="add-stop">
      <summary>{STOCK.movements}</summary>
      <Reading of={movements} isEmpty={({ items }) => items.length === 0} empty={STOCK.noMovements}>
        {({ items }) => <PlainTable name={STOCK.movements} columns={columns} rows={items} keyOf={({ id }) => id} />}
      </Reading>
    </details>
  );
}
