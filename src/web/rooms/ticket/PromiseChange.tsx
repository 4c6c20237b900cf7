import { useState } from "react";
import type { Ticket } from "#contract/records/ticket";
import { PROMISE } from "#words/en/rooms/promise";
import { PromiseFields } from "../../pieces/PromiseFields.tsx";
import { answered, madeOn, shop } from "../../shop/shopClient.ts";
import { useRead, useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useShopTimes } from "../../shop/zone.ts";

/** Another promise for a ball, with the reason; what was promised before stays readable. */
export function PromiseChange({ ticket }: { readonly ticket: Ticket }) {
  const times = useShopTimes();
  const { id, visitId } = ticket;
  const visit = useRead(["visits", visitId], () => answered(shop.visits[":id"].$get({ param: { id: visitId } }))).data;
  const [draft, setDraft] = useState<{ readonly at: string; readonly why: string } | null>(null);
  const [tried, setTried] = useState(false);
  const write = useWrite(
    async ({ at: promisedFor, why }: { readonly at: string; readonly why: string }) => {
      const read = await answered(shop.visits[":id"].$get({ param: { id: visitId } }));
      const entry = { at: new Date().toISOString(), ticketId: id, promisedFor, why: why.trim() };
      const last = read.promises.findLast(({ ticketId }) => ticketId === id);
      // Sent again after a fault, the reason may be written already.
      if (last?.promisedFor !== promisedFor || last.why !== entry.why) {
        const json = { promises: [...read.promises, entry] };
        await answered(shop.visits[":id"].$patch({ param: { id: visitId }, json, header: madeOn(read) }));
      }
      await answered(shop.tickets[":id"].$patch({ param: { id }, json: { promisedFor }, header: madeOn(ticket) }));
      setDraft(null);
    },
    ["visits", "tickets", "queue"],
  );
  const told = (visit?.promises ?? []).filter(({ ticketId }) => ticketId === null || ticketId === id);
  return (
    <div className="promise-change">
      {told.map(({ at, promisedFor, why }) => (
        <p key={at} className="note">
          {PROMISE.was(times.at(promisedFor), why)}
        </p>
      ))}
      {draft === null ? (
        <button type="button" className="button" onClick={() => setDraft({ at: ticket.promisedFor ?? new Date().toISOString(), why: "" })}>
          {PROMISE.other}
        </button>
      ) : (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            setTried(true);
            if (draft.why.trim() !== "") write.mutate(draft);
          }}
        >
          <PromiseFields {...draft} tried={tried} onChange={(change) => setDraft({ ...draft, ...change })} />
          <div className="buttons">
            <button type="submit" className="button primary" disabled={write.isPending}>
              {PROMISE.keep}
            </button>
            <button type="button" className="button" onClick={() => setDraft(null)}>
              {PROMISE.leave}
            </button>
          </div>
        </form>
      )}
      <WriteFault error={write.error} />
    </div>
  );
}
