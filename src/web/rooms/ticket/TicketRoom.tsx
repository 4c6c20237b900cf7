import { useEffect, useState } from "react";
import { Link } from "wouter";
import type { Ball } from "#contract/records/ball";
import type { Bowler } from "#contract/records/bowler";
import type { Ticket } from "#contract/records/ticket";
import { movesOf } from "#contract/records/ticketStates";
import { OUTCOME_WORDS } from "#words/en/rooms/outcomes";
import { TICKET } from "#words/en/rooms/ticket";
import { TICKET_STATE_WORDS } from "#words/en/rooms/today";
import { workHere } from "../../benchWork/onTheBench.ts";
import { DidItWork } from "../../pieces/DidItWork.tsx";
import { ReasonPress } from "../../pieces/ReasonPress.tsx";
import { Photos } from "../../shop/Photos.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { useOutbox } from "../../shop/useOutbox.tsx";
import { usePhotos } from "../../shop/usePhotos.ts";
import { For, useMay } from "../../shop/useSession.tsx";
import { type TicketParts, useMoveTicket, useStagesDone, useTicket } from "../../shop/useTicket.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { Account } from "./Account.tsx";
import { AlsoInVisit } from "./AlsoInVisit.tsx";
import { Complaint } from "./Complaint.tsx";
import { History } from "./History.tsx";
import { ReadingsOf } from "./ReadingsOf.tsx";
import { Stops } from "./Stops.tsx";
import { TicketHead } from "./TicketHead.tsx";
import { ChangeFinish, Work } from "./Work.tsx";

/** One visit's ball: what becomes of it, the work left, what was complained of, money; the rest a press away. */
export function TicketRoom({ params }: { readonly params: Readonly<Record<string, string>> }) {
  const { ticket, ball, bowler } = useTicket(params.id);
  useEffect(() => {
    if (ball.data !== undefined) document.title = TICKET.title(ball.data.name);
  }, [ball.data]);
  return (
    <main id="answer" className="room ticket" tabIndex={-1}>
      <Reading of={ticket}>
        {(read) => <Reading of={ball}>{(ofBall) => <WholeTicket ticket={read} ball={ofBall} bowler={bowler.data ?? null} />}</Reading>}
      </Reading>
    </main>
  );
}

type Opened = "finish" | "photos" | "stop" | "history" | null;

function WholeTicket(known: { readonly ticket: Ticket; readonly ball: Ball; readonly bowler: Bowler | null }) {
  const { ticket, ball } = known;
  const { waiting } = useOutbox();
  const done = useStagesDone(ticket.id).data?.items ?? [];
  const parts: TicketParts = { ...known, work: workHere(ticket, done, waiting) };
  // What nobody has decided yet is asked at once, and stays in view once it is.
  const [opened, setOpened] = useState<Opened>(() => (ticket.stages.length === 0 ? "finish" : null));
  const open = (what: Opened) => setOpened((old) => (old === what ? null : what));
  return (
    <>
      <TicketHead {...parts} />
      <Stops ticket={ticket} isAdding={opened === "stop"} />
      <div className="room-columns">
        <div>
          <Work {...parts} />
          {opened === "finish" && <ChangeFinish ticket={ticket} ball={ball} />}
          <Also {...parts} opened={opened} onOpen={open} />
          {opened === "photos" && <Photos of={{ ticketId: ticket.id }} belongs={{ ballId: ball.id, ticketId: ticket.id }} />}
          {opened === "history" && <History here={{ ticket, ball, done }} work={parts.work} done={done} />}
          <ReadingsOf ticketId={ticket.id} />
        </div>
        <div>
          <Complaint {...parts} />
          <For least="counter">
            <Account ticket={ticket} ball={ball} />
          </For>
          <AlsoInVisit ticket={ticket} />
          {ticket.readyAt !== null && (
            <section className="plate">
              <For least="counter">
                <DidItWork ticket={ticket} question={OUTCOME_WORDS.question} />
              </For>
              <Link href="/held">{OUTCOME_WORDS.toRoom}</Link>
            </section>
          )}
          <For least="counter">
            <Moves ticket={ticket} work={parts.work} />
          </For>
        </div>
      </div>
    </>
  );
}

interface AlsoProps extends TicketParts {
  readonly opened: Opened;
  onOpen(what: Opened): void;
}

/** What else can be done with the ticket, each a press away. */
function Also({ ticket, ball, opened, onOpen }: AlsoProps) {
  const may = useMay();
  const photos = usePhotos({ ticketId: ticket.id }).data?.length ?? 0;
  const presses: readonly (readonly [Exclude<Opened, null>, string, boolean])[] = [
    ["finish", TICKET.changeFinish, may("counter")],
    ["photos", TICKET.photos(photos), true],
    ["stop", TICKET.addStop, may("counter")],
    ["history", TICKET.history, true],
  ];
  return (
    <p className="ticket-links no-print">
      {presses
        .filter(([, , isFor]) => isFor)
        .map(([what, name]) => (
          <button key={what} type="button" className="link" aria-expanded={opened === what} onClick={() => onOpen(what)}>
            {name}
          </button>
        ))}
      <For least="technician">
        <Link href={`/measure?ball=${ball.id}&ticket=${ticket.id}`} className="link">
          {TICKET.measure}
        </Link>
      </For>
    </p>
  );
}

/** Where else it may go from here; what is pressed most stands at the head. */
function Moves({ ticket, work }: Pick<TicketParts, "ticket" | "work">) {
  const move = useMoveTicket(ticket);
  // Handing over asks for price and payment first: it has its press at the head. Ready is what all of its work is signed for.
  const isLeft = work.next !== null;
  const may = movesOf(ticket);
  const next = may.filter((state) => state !== "collected" && !(state === "ready" && isLeft));
  if (next.length === 0) return null;
  return (
    <section className="plate">
      <h2>{TICKET.moveTo}</h2>
      <div className="choices-words">
        {next.map((state) => (
          <button key={state} type="button" className="button" disabled={move.isPending} onClick={() => move.mutate({ to: state })}>
            {TICKET_STATE_WORDS[state]}
          </button>
        ))}
        {isLeft && may.includes("ready") && (
          <ReasonPress
            press={TICKET.readyAnyway}
            label={TICKET.readyWhy}
            act={TICKET.readyIt}
            className="button"
            isBusy={move.isPending}
            onSay={(why) => move.mutate({ to: "ready", why })}
          />
        )}
      </div>
      <WriteFault error={move.error} />
    </section>
  );
}
