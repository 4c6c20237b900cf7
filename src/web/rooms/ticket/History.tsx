import { useState } from "react";
import type { Ticket } from "#contract/records/ticket";
import { putBackTo } from "#contract/records/ticketStates";
import { TICKET } from "#words/en/rooms/ticket";
import { TICKET_STATE_WORDS } from "#words/en/rooms/today";
import { LineField } from "../../pieces/PlainFields.tsx";
import { useTicketWrites } from "../../shop/ticketWrites.ts";
import { For } from "../../shop/useDoor.tsx";
import { usePeople } from "../../shop/usePeople.ts";
import { useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useShopTimes } from "../../shop/zone.ts";

/** Where the ticket has been and who put it there; the last step can be put back, with a reason that stays. */
export function History({ ticket }: { readonly ticket: Ticket }) {
  const times = useShopTimes();
  const people = usePeople().data ?? [];
  const initials = (by: string) => people.find(({ id }) => id === by)?.initials ?? "–";
  return (
    <section className="plate">
      <h2>{TICKET.history}</h2>
      <ol className="history">
        {[...ticket.been.entries()].map(([i, { state, at, by, signedVersion, why }]) => (
          <li key={i}>
            {times.at(at)} · {TICKET_STATE_WORDS[state]} · {initials(by)}
            {signedVersion !== null && ` · ${TICKET.bySigning}`}
            {why !== "" && ` · ${why}`}
          </li>
        ))}
      </ol>
      <For least="counter">
        <PutBack ticket={ticket} />
      </For>
    </section>
  );
}

function PutBack({ ticket }: { readonly ticket: Ticket }) {
  const to = putBackTo(ticket.been);
  const [why, setWhy] = useState<string | null>(null);
  const { move } = useTicketWrites();
  const back = useWrite(
    async (reason: string) => {
      if (to !== null) await move(ticket, to, reason);
      setWhy(null);
    },
    ["tickets", "queue", "balls", "visits"],
  );
  if (to === null) return null;
  if (why === null)
    return (
      <button type="button" className="button" onClick={() => setWhy("")}>
        {TICKET.putBack(TICKET_STATE_WORDS[to])}
      </button>
    );
  return (
    <form
      className="take-back"
      onSubmit={(event) => {
        event.preventDefault();
        if (why.trim() !== "") back.mutate(why.trim());
      }}
    >
      <LineField label={TICKET.putBackWhy} value={why} onChange={setWhy} />
      <button type="submit" className="button" disabled={why.trim() === "" || back.isPending}>
        {TICKET.putBackIt}
      </button>
      <WriteFault error={back.error} />
    </form>
  );
}
