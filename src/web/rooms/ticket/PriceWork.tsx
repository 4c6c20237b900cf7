import { type ReactNode, useState } from "react";
import type { Ball } from "#contract/records/ball";
import { usualPrices, workIn } from "#contract/records/pricedWork";
import type { Ticket } from "#contract/records/ticket";
import { ChargeChoice } from "../../pieces/ChargeChoice.tsx";
import { chosenPricing, FREE, type PricingDraft, priceWork, usePricesToday } from "../../shop/pricing.ts";
import { useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useSettings } from "../../shop/zone.ts";

interface PriceWorkProps {
  readonly ticket: Ticket;
  readonly ball: Ball;
  /** What happens besides, on the button. */
  readonly act: string;
  /** What follows once it is priced. Part of the write: the form may be gone by then. */
  then(): Promise<unknown>;
  readonly children: ReactNode;
}

/** What a ball's work costs, asked where nobody has said it yet. */
export function PriceWork({ ticket, ball, act, then, children }: PriceWorkProps) {
  const prices = usePricesToday();
  const taxMillipercent = useSettings().data?.taxMillipercent ?? 0;
  const [draft, setDraft] = useState<PricingDraft>({ priceId: "", freeWhy: "" });
  const [tried, setTried] = useState(false);
  const write = useWrite(
    async (chosen: ReturnType<typeof chosenPricing>) => {
      await priceWork(ticket.visitId, { id: ticket.id, ballName: ball.name }, chosen);
      await then();
    },
    ["visits"],
  );
  const usual = usualPrices(workIn(ticket.stages), prices ?? []);
  return (
    <form
      className="price-work"
      onSubmit={(event) => {
        event.preventDefault();
        setTried(true);
        const chosen = chosenPricing(draft, prices ?? [], usual, taxMillipercent);
        if (chosen !== null) write.mutate(chosen);
      }}
    >
      <div className="field-row">
        <ChargeChoice
          draft={draft}
          prices={prices ?? []}
          usual={usual}
          tried={tried}
          byHand
          onChange={(change) => setDraft((old) => ({ ...old, ...change }))}
        />
      </div>
      <div className="buttons">
        <button
          type="submit"
          className="button primary"
          disabled={write.isPending || (draft.priceId !== FREE && chosenPricing(draft, prices ?? [], usual, taxMillipercent) === null)}
        >
          {act}
        </button>
        {children}
      </div>
      <WriteFault error={write.error} />
    </form>
  );
}
