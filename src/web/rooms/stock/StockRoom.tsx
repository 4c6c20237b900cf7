import { useEffect, useState } from "react";
import { csvText } from "#contract/csv";
import type { StockItem } from "#contract/records/stock";
import { TABLE } from "#words/en/rooms/pieces";
import { STOCK } from "#words/en/rooms/stock";
import { saveText } from "../../client/saveFile.ts";
import { LineField } from "../../pieces/PlainFields.tsx";
import { everyPage } from "../../shop/everyPage.ts";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { For } from "../../shop/useSession.tsx";
import { useRead } from "../../shop/useShop.ts";
import { NewItem } from "./NewItem.tsx";
import { StockLine } from "./StockLine.tsx";
import { useWaitingUse } from "./useWaitingUse.ts";
import { arranged } from "./waitingWork.ts";

/** What the bench uses up: what is left, what the waiting work will take, and two presses to write down what came or went. */
export function StockRoom() {
  const stock = useRead(["stock-items", "all"], () =>
    everyPage((after) => answered(shop["stock-items"].$get({ query: { limit: "200", order: "oldest first", ...after } }))),
  );
  useEffect(() => {
    document.title = STOCK.title;
  }, []);
  return (
    <main id="answer" className="room stock" tabIndex={-1}>
      <Reading of={stock}>{(items) => <Items items={items} />}</Reading>
    </main>
  );
}

function Items({ items }: { readonly items: readonly StockItem[] }) {
  const [words, setWords] = useState("");
  const kept = items.filter(({ state }) => state === "in use");
  const waiting = useWaitingUse(kept);
  const isFound = ({ name }: StockItem) => name.toLowerCase().includes(words.trim().toLowerCase());
  const found = kept.filter(isFound);
  const { pads, other } = arranged(found);
  return (
    <>
      <div className="room-head">
        <h1>{STOCK.title}</h1>
        <button type="button" className="button" disabled={items.length === 0} onClick={() => saveStock(items, waiting)}>
          {TABLE.csv}
        </button>
      </div>
      {kept.length > FEW && <LineField label={STOCK.find} type="search" value={words} onChange={setWords} />}
      {kept.length === 0 && <p className="nothing">{STOCK.none}</p>}
      {kept.length > 0 && found.length === 0 && <p className="nothing">{STOCK.noneFound}</p>}
      <div className="room-columns even-columns">
        <Group title={STOCK.pads} items={pads} waiting={waiting} />
        <div>
          <Group title={STOCK.other} items={other} waiting={waiting} />
          <For least="technician">
            <NewItem />
          </For>
          <Group title={STOCK.gone} items={items.filter((item) => item.state !== "in use" && isFound(item))} waiting={waiting} />
        </div>
      </div>
    </>
  );
}

/** Fewer lines than this are found by looking. */
const FEW = 8;

interface GroupProps {
  readonly title: string;
  readonly items: readonly StockItem[];
  readonly waiting: ReadonlyMap<string, number>;
}

function Group({ title, items, waiting }: GroupProps) {
  if (items.length === 0) return null;
  return (
    <section className="plate">
      <h2>{title}</h2>
      {items.map((item) => (
        <StockLine key={item.id} item={item} waiting={waiting.get(item.id) ?? 0} />
      ))}
    </section>
  );
}

function saveStock(items: readonly StockItem[], waiting: ReadonlyMap<string, number>): void {
  const { csv } = STOCK;
  const rows = items.map(({ id, name, kind, number, quantity, unit, reorderAt }) => [
    name,
    STOCK.kinds[kind],
    number,
    quantity,
    unit,
    reorderAt,
    waiting.get(id) ?? 0,
  ]);
  saveText(csvText(Object.values(csv), rows), "stock.csv", "text/csv");
}
