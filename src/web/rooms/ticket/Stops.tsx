import { useState } from "react";
import type { Ticket } from "#contract/records/ticket";
import { TICKET } from "#words/en/rooms/ticket";
import { LineField } from "../../pieces/PlainFields.tsx";
import { emptied } from "../../shop/emptied.ts";
import { For } from "../../shop/useSession.tsx";
import { useChangeTicket } from "../../shop/useTicket.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useShopTimes } from "../../shop/zone.ts";

/** Reasons not to work on the ball: shown first and large, cleared one by one, and new ones added. */
export function Stops({ ticket, isAdding }: { readonly ticket: Ticket; readonly isAdding: boolean }) {
  const times = useShopTimes();
  const change = useChangeTicket(ticket);
  const [why, setWhy] = useState("");
  const clear = (at: string, clearedWhy: string) =>
    change.mutate({
      stops: ticket.stops.map((stop) => (stop.at === at ? { ...stop, clearedAt: new Date().toISOString(), clearedWhy } : stop)),
    });
  return (
    <>
      {ticket.stops.map(({ at, why: reason, clearedAt, clearedWhy }) => (
        <div key={at} className={clearedAt === null ? "stop" : "note"} role={clearedAt === null ? "alert" : undefined}>
          <p>
            {TICKET.stops}: {reason} {clearedAt !== null && TICKET.stopCleared(times.at(clearedAt), clearedWhy)}
          </p>
          {clearedAt === null && (
            <For least="counter">
              <ClearStop isPending={change.isPending} onClear={(clearedWhy) => clear(at, clearedWhy)} />
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

/** Whoever says that work may go on says why: it stands with the stop. */
function ClearStop({ isPending, onClear }: { readonly isPending: boolean; onClear(why: string): void }) {
  const [why, setWhy] = useState<string | null>(null);
  if (why === null)
    return (
      <button type="button" className="button" onClick={() => setWhy("")}>
        {TICKET.clearStop}
      </button>
    );
  return (
    <div className="add-stop">
      <LineField label={TICKET.clearWhy} value={why} onChange={setWhy} />
      <button type="button" className="button" disabled={why.trim() === "" || isPending} onClick={() => onClear(why.trim())}>
        {TICKET.clearStop}
      </button>
    </div>
  );
}
