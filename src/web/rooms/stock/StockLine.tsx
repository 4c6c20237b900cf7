import type { StockItem, StockMovement } from "#contract/records/stock";
import { STOCK } from "#words/en/rooms/stock";
import { signed } from "#words/figures";
import { EditPlate } from "../../pieces/EditPlate.tsx";
import { Fold } from "../../pieces/Fold.tsx";
import { type Column, PlainTable } from "../../pieces/PlainTable.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { answered, madeOn, shop } from "../../shop/shopClient.ts";
import { figureText } from "../../shop/typedValues.ts";
import { type Typed, useEditing } from "../../shop/useEditing.ts";
import { For } from "../../shop/useSession.tsx";
import { useRead } from "../../shop/useShop.ts";
import { useShopTimes } from "../../shop/zone.ts";
import { ComeAndGo } from "./ComeAndGo.tsx";
import { ITEM_FIELDS, itemTyped, itemWritten, readItem } from "./stockForm.ts";

interface LineProps {
  readonly item: StockItem;
  /** What the waiting work will take of it. */
  readonly waiting: number;
}

/** One item in a line; pressed, what came or went can be written down. */
export function StockLine({ item, waiting }: LineProps) {
  return (
    <Fold title={item.name} summary={summaryOf(item, waiting)} startsOpen="never" level={3}>
      <p>{summaryOf(item, waiting)}</p>
      <For least="technician">
        <ComeAndGo item={item} />
      </For>
      <Movements item={item} />
      <AboutItem item={item} />
    </Fold>
  );
}

/** What is left in words: nothing here hangs on a colour. */
function summaryOf({ quantity, unit, reorderAt, state }: StockItem, waiting: number): string {
  const parts = [STOCK.left(figureText(quantity), STOCK.units[unit])];
  if (quantity < 0) parts.push(STOCK.belowNought);
  if (waiting > 0) parts.push(STOCK.waiting(figureText(waiting), figureText(quantity - waiting)));
  if (waiting > quantity) parts.push(STOCK.runsOut);
  if (state === "in use" && reorderAt !== null && quantity <= reorderAt) parts.push(STOCK.low(figureText(reorderAt)));
  return parts.join(" · ");
}

function AboutItem({ item }: { readonly item: StockItem }) {
  const editing = useEditing({
    memory: `gritwright.stock.${item.id}`,
    thing: item,
    typedOf: itemTyped,
    send: (typed, made) => change(item.id, made, typed),
    read: readItem,
    touches: ["stock-items", "stock"],
  });
  const rows: readonly (readonly [string, string])[] = [
    [STOCK.kind, STOCK.kinds[item.kind]],
    ...(item.number === null ? [] : [[STOCK.number, figureText(item.number)] as const]),
    ...(item.reorderAt === null ? [] : [[STOCK.reorderAt, figureText(item.reorderAt)] as const]),
    ...(item.perUse === null ? [] : [[STOCK.perUse, figureText(item.perUse)] as const]),
    ...(item.note === "" ? [] : [[STOCK.note, item.note] as const]),
  ];
  return <EditPlate least="technician" title={STOCK.about} rows={rows} fields={ITEM_FIELDS} editing={editing} />;
}

function change(id: string, made: { readonly version: number }, typed: Typed): Promise<StockItem> {
  const json = { ...itemWritten(typed), state: typed.state as StockItem["state"], note: typed.note };
  return answered(shop["stock-items"][":id"].$patch({ param: { id }, json, header: madeOn(made) }));
}

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
