import { Link } from "wouter";
import { statesAfter } from "#contract/records/ticketStates";
import { BENCH } from "#words/en/rooms/bench";
import { type OnTheBench, workHere } from "../../benchWork/onTheBench.ts";
import { useTicketWrites } from "../../shop/ticketWrites.ts";
import { useOutbox } from "../../shop/useOutbox.tsx";
import { useWrite } from "../../shop/useShop.ts";
import { useOneTicket } from "../../shop/useTicket.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { UndoSignature } from "./UndoSignature.tsx";

/** Every stage is signed: measured, dried, ready. */
export function AllDone({ onBench }: { readonly onBench: readonly OnTheBench[] }) {
  return (
    <div className="bench-done">
      <h1>{BENCH.allDone}</h1>
      {onBench.map((one) => (
        <Finished key={one.ticket.id} {...one} />
      ))}
    </div>
  );
}

function Finished(here: OnTheBench) {
  const { ticket, ball, done } = here;
  const { waiting } = useOutbox();
  const now = useOneTicket(ticket.id).data ?? ticket;
  const { move: moveOn } = useTicketWrites();
  // A ball that was never said to be in work has been, now: the states are walked one by one.
  const move = useWrite(
    async (to: "ready" | "drying") => {
      const isFar = !statesAfter(now.state).includes(to) && statesAfter(now.state).includes("in work");
      return moveOn(isFar ? await moveOn(now, "in work") : now, to);
    },
    ["tickets", "queue", "balls"],
  );
  const isReady = now.state === "ready";
  return (
    <section className="plate">
      <h2>{ball.name}</h2>
      <div className="bench-buttons">
        <Link href={`/measure?ball=${ball.id}&ticket=${ticket.id}`} className="button bench-button">
          {BENCH.measure}
        </Link>
        {!isReady && (
          <>
            <button type="button" className="button bench-button" disabled={move.isPending} onClick={() => move.mutate("drying")}>
              {BENCH.toDrying}
            </button>
            <button type="button" className="button primary bench-button" disabled={move.isPending} onClick={() => move.mutate("ready")}>
              {BENCH.toReady}
            </button>
          </>
        )}
        <Link href={`/tickets/${ticket.id}`} className="button bench-button">
          {BENCH.toTicket}
        </Link>
      </div>
      <UndoSignature here={here} work={workHere(ticket, done, waiting)} isBegun={false} />
      <WriteFault error={move.error} />
    </section>
  );
}
