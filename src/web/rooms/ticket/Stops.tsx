import { useState } from "react";
import type { Ticket } from "#contract/records/ticket";
import { TICKET } from "#words/en/rooms/ticket";
import { LineField } from "../../pieces/PlainFields.tsx";
import { emptied } from "../../shop/emptied.ts";
import { For } from "../../shop/useDoor.tsx";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useShopTimes } from "../../shop/zone.ts";
import { useChangeTicket } from "./useTicket.ts";

/** Reasons not to work on the ball: shown first and large, cleared one by one, and new ones added. */
export function Stops({ ticket, isAdding }: { readonly ticket: Ticket; readonly isAdding: boolean }) {
  const times = useShopTimes();
  const change = useChangeTicket(ticket);
  const [why, setWhy] = useState("");
  const clear = (at: string) =>
    change.mutate({ stops: ticket.stops.map((stop) => (stop.at === at ? { ...stop, clearedAt: new Date().toISOString() } : stop)) });
  return (
    <>
      {ticket.stops.map(({ at, why: reason, clearedAt }) => (
        <div key={at} className={clearedAt === null ? "stop" : "note"} role={clearedAt === null ? "alert" : undefined}>
          <p>
            {TICKET.stops}: {reason} {clearedAt !== null && TICKET.stopCleared(times.at(clearedAt))}
          </p>
          {clearedAt === null && (
            <For least="counter">
              <button type="button" className="button" disabled={change.isPending} onClick={() => clear(at)}>
                {TICKET.clearStop}
              </button>
            </For>
          )}
        </div>
      ))}
      <For least="counter">
        {isAdding && (
          <div className="add-stop no-print">
            <LineField label={TICKET.stopWhy} value={why} onChange={setWhy} />
            <button
              type="button"
              className="button"
              disabled={why.trim() === "" || change.isPending}
              onClick={() =>
                change.mutate(
                  { stops: [...ticket.stops, { at: new Date().toISOString(), why: why.trim(), clearedAt: null }] },
                  { onSuccess: () => setWhy(emptied(why, "")) },
                )
              }
            >
              {TICKET.stopIt}
            </button>
          </div>
        )}
      </For>
      <WriteFault error={change.error} />
    </>
  );
}
