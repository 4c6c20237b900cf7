import { useState } from "react";
import type { Visit } from "#contract/records/visit";
import { MONEY } from "#words/en/rooms/money";
import { TICKET } from "#words/en/rooms/ticket";
import { LineField } from "../../pieces/PlainFields.tsx";
import { answered, madeOn, shop } from "../../shop/shopClient.ts";
import { centsOf } from "../../shop/typedValues.ts";
import { useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useShopTimes } from "../../shop/zone.ts";

/** An amount off the whole bill, with its reason; or the one that was given taken back. @param mostCents what the lines come to */
export function Discount({ visit, mostCents }: { readonly visit: Visit; readonly mostCents: number }) {
  const times = useShopTimes();
  const [typed, setTyped] = useState<string | null>(null);
  const [why, setWhy] = useState("");
  const write = useWrite(
    (discount: Pick<Visit, "discountCents" | "discountWhy">) =>
      answered(shop.visits[":id"].$patch({ param: { id: visit.id }, json: discount, header: madeOn(visit) })),
    ["visits"],
  );
  const cents = typed === null ? null : centsOf(typed);
  const fits = cents !== null && cents <= mostCents;
  if (typed === null)
    return (
      <div className="buttons">
        <button type="button" className="button quiet" onClick={() => setTyped("")}>
          {TICKET.discountOpen}
        </button>
        {visit.discountCents > 0 && (
          <button
            type="button"
            className="button quiet"
            disabled={write.isPending}
            onClick={() => write.mutate({ discountCents: 0, discountWhy: "" })}
          >
            {TICKET.discountNone}
          </button>
        )}
        <WriteFault error={write.error} />
      </div>
    );
  return (
    <form
      className="amount-form"
      aria-label={TICKET.discountOpen}
      onSubmit={(event) => {
        event.preventDefault();
        if (fits && why.trim() !== "") write.mutate({ discountCents: cents, discountWhy: why.trim() }, { onSuccess: () => setTyped(null) });
      }}
    >
      <div className="field-row">
        <LineField
          label={MONEY.amount(visit.currency)}
          inputMode="decimal"
          value={typed}
          problem={typed === "" || fits ? undefined : MONEY.amountAllowed(times.money(mostCents))}
          onChange={setTyped}
        />
        <LineField label={MONEY.why} value={why} onChange={setWhy} />
      </div>
      <div className="buttons">
        <button type="submit" className="button" disabled={!fits || why.trim() === "" || write.isPending}>
          {TICKET.discountTake}
        </button>
        <button type="button" className="button" onClick={() => setTyped(null)}>
          {MONEY.leave}
        </button>
      </div>
      <WriteFault error={write.error} />
    </form>
  );
}
