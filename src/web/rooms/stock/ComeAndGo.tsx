import { useState } from "react";
import type { StockItem, StockMovementWritten } from "#contract/records/stock";
import { STOCK } from "#words/en/rooms/stock";
import { signed } from "#words/figures";
import { LineField } from "../../pieces/PlainFields.tsx";
import { emptied } from "../../shop/emptied.ts";
import { answered, shop } from "../../shop/shopClient.ts";
import { figureOrNull } from "../../shop/typedValues.ts";
import { useOnce } from "../../shop/useOnce.ts";
import { useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";

type Act = keyof typeof STOCK.acts;
const ACTS = Object.keys(STOCK.acts) as Act[];
const MOST = 1_000_000;

/** What came or went, in two presses: a figure, and what happened. A mistake is taken back by a movement the other way. */
export function ComeAndGo({ item }: { readonly item: StockItem }) {
  const [typed, setTyped] = useState("");
  const [once, renew] = useOnce();
  const [last, setLast] = useState<Pick<StockMovementWritten, "change" | "why"> | null>(null);
  const write = useWrite(
    (json: Pick<StockMovementWritten, "change" | "why" | "note">) =>
      answered(shop["stock-movements"].$post({ json: { ...json, stockItemId: item.id, at: once.at } }, { headers: once.headers })),
    ["stock-items", "stock-movements", "stock"],
  );
  const amount = amountOf(typed);
  const keep = (json: Pick<StockMovementWritten, "change" | "why" | "note">, then: typeof last) =>
    write.mutate(json, {
      onSuccess: () => {
        setTyped(emptied(typed, ""));
        renew();
        setLast(then);
      },
    });
  const press = (why: Act) => {
    if (amount === null) return;
    const json = { why, change: changeBy(why, amount, item.quantity) };
    keep(json, json);
  };
  return (
    <div className="come-and-go">
      <LineField
        label={STOCK.amount(STOCK.units[item.unit])}
        inputMode="decimal"
        help={STOCK.amountHelp}
        value={typed}
        problem={typed !== "" && amount === null ? STOCK.amountAllowed : undefined}
        onChange={setTyped}
      />
      <div className="buttons">
        {ACTS.map((why) => (
          <button
            key={why}
            type="button"
            className="button"
            disabled={amount === null || (amount === 0 && why !== "counted") || write.isPending}
            onClick={() => press(why)}
          >
            {STOCK.acts[why]}
          </button>
        ))}
      </div>
      {last !== null && (
        <p role="status">
          {STOCK.kept(STOCK.whys[last.why], signed(last.change, 0))}{" "}
          <button
            type="button"
            className="button"
            disabled={write.isPending}
            onClick={() => keep({ why: last.why, change: -last.change, note: STOCK.undone }, null)}
          >
            {STOCK.undo}
          </button>
        </p>
      )}
      <WriteFault error={write.error} />
    </div>
  );
}

function amountOf(typed: string): number | null {
  const amount = figureOrNull(typed);
  return typeof amount === "number" && amount >= 0 && amount <= MOST ? amount : null;
}

/** A count says what lies there, so that what is written down is the difference to what should have. */
function changeBy(why: Act, amount: number, there: number): number {
  if (why === "counted") return amount - there;
  return why === "delivered" ? amount : -amount;
}
