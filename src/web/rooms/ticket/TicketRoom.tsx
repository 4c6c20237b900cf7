import { type ReactNode, useEffect, useState } from "react";
import { Link } from "wouter";
import type { Ball } from "#contract/records/ball";
import type { Bowler } from "#contract/records/bowler";
import type { Ticket } from "#contract/records/ticket";
import { statesAfter } from "#contract/records/ticketStates";
import { coverWord } from "#words/coverWord";
import { HELD } from "#words/en/rooms/held";
import { INTAKE, SYMPTOMS } from "#words/en/rooms/intake";
import { PRICING } from "#words/en/rooms/pricing";
import { PRINT } from "#words/en/rooms/print";
import { TICKET } from "#words/en/rooms/ticket";
import { TICKET_STATE_WORDS } from "#words/en/rooms/today";
import { WRONG } from "#words/en/rooms/wrong";
import { Facts } from "../../pieces/Facts.tsx";
import { ownerLink } from "../../pieces/ownerLink.tsx";
import { Photos } from "../../shop/Photos.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { For } from "../../shop/useDoor.tsx";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useShopTimes } from "../../shop/zone.ts";
import { DidItWork } from "../held/DidItWork.tsx";
import { Account } from "./Account.tsx";
import { PriceWork } from "./PriceWork.tsx";
import { PromiseChange } from "./PromiseChange.tsx";
import { ReadingsOf } from "./ReadingsOf.tsx";
import { Stops } from "./Stops.tsx";
import { useTold } from "./toldOf.ts";
import { useAccount, useMoveTicket, useTicket } from "./useTicket.ts";
import { Work } from "./Work.tsx";

/** One visit's ball: state, findings, finish, work, readings, money, history; and its papers. */
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

interface PartProps {
  readonly ticket: Ticket;
  readonly ball: Ball;
  readonly bowler: Bowler | null;
}

function WholeTicket(parts: PartProps) {
  const { ticket, ball } = parts;
  return (
    <>
      <div className="room-head">
        <h1>{ball.name}</h1>
        <p className="state">
          {TICKET.state}: <strong>{TICKET_STATE_WORDS[ticket.state]}</strong>
        </p>
        <Papers ticket={ticket} />
      </div>
      <Stops ticket={ticket} />
      <div className="room-columns">
        <div>
          <Work ticket={ticket} ball={ball} />
          <ReadingsOf ticketId={ticket.id} ballId={ball.id} />
          <Photos of={{ ticketId: ticket.id }} belongs={{ ballId: ball.id, ticketId: ticket.id }} />
        </div>
        <div>
          <TicketFacts {...parts} />
          {ticket.readyAt !== null && (
            <section className="plate">
              <For least="counter">
                <DidItWork ticket={ticket} question={HELD.question} />
              </For>
              <Link href="/held">{HELD.toRoom}</Link>
            </section>
          )}
          <For least="counter">
            <Moves ticket={ticket} ball={ball} />
          </For>
          <For least="counter">
            <Account ticket={ticket} ball={ball} />
          </For>
          <History ticket={ticket} />
        </div>
      </div>
    </>
  );
}

function Papers({ ticket }: { readonly ticket: Ticket }) {
  return (
    <nav className="papers" aria-label={TICKET.print}>
      <Link href={`/print/ticket/${ticket.id}`} className="button">
        {TICKET.printTicket}
      </Link>
      <Link href={`/print/label/${ticket.id}`} className="button">
        {TICKET.printLabel}
      </Link>
      <Link href={`/print/care/${ticket.id}`} className="button">
        {TICKET.printCare}
      </Link>
      <Link href={`/print/measures/${ticket.id}`} className="button">
        {PRINT.measures}
      </Link>
    </nav>
  );
}

function TicketFacts({ ticket, ball, bowler }: PartProps) {
  const times = useShopTimes();
  const told = useTold(ticket, ball);
  const symptoms = ticket.symptoms.map((id) => (id in SYMPTOMS ? SYMPTOMS[id as keyof typeof SYMPTOMS] : id));
  const rows: readonly (readonly [string, ReactNode])[] = [
    [TICKET.owner, ownerLink(bowler, TICKET.nobody)],
    [INTAKE.cover, coverWord(ball.cover)],
    ...(ball.serial === null ? [] : [[INTAKE.serialShort, ball.serial] as const]),
    [TICKET.promised, ticket.promisedFor === null ? TICKET.noPromise : times.at(ticket.promisedFor)],
    [TICKET.received, times.at(ticket.receivedAt)],
    ...(symptoms.length === 0 ? [] : [[TICKET.symptoms, symptoms.join(" ")] as const]),
    ...(ticket.complaint === "" ? [] : [[TICKET.complaint, ticket.complaint] as const]),
    ...(ticket.whatChanged === null ? [] : [[TICKET.changed, INTAKE.changed[ticket.whatChanged]] as const]),
    ...(ticket.findings === "" ? [] : [[TICKET.findings, ticket.findings] as const]),
    ...told,
  ];
  return (
    <section className="plate">
      <Facts rows={rows} />
      <For least="counter">
        <PromiseChange ticket={ticket} />
      </For>
      <Link href={`/balls/${ball.id}`}>{TICKET.ballLog}</Link> <Link href={`/wrong?ball=${ball.id}&ticket=${ticket.id}`}>{WRONG.open}</Link>
    </section>
  );
}

function Moves({ ticket, ball }: Pick<PartProps, "ticket" | "ball">) {
  const move = useMoveTicket(ticket);
  const account = useAccount(ticket.visitId);
  const [asking, setAsking] = useState(false);
  // Where the shop is away nobody can say what it costs: the ball goes out, and is missed in the open balances.
  const isPriced = (read = account.data) => read?.notPriced.every(({ ticketId }) => ticketId !== ticket.id) ?? true;
  const isAsked = asking && !isPriced();
  const handOver = async () => {
    // Pressed before the bill was there it is waited for, or the question would be passed by.
    if (isPriced(account.data ?? (await account.refetch()).data)) move.mutate("collected");
    else setAsking(true);
  };
  const next = statesAfter(ticket.state);
  if (next.length === 0) return null;
  return (
    <section className="plate">
      <h2>{TICKET.moveTo}</h2>
      <div className="choices-words">
        {next.map((state) => (
          <button
            key={state}
            type="button"
            className="button"
            disabled={move.isPending}
            onClick={() => (state === "collected" ? handOver() : move.mutate(state))}
          >
            {TICKET_STATE_WORDS[state]}
          </button>
        ))}
      </div>
      {isAsked && (
        <fieldset className="asked">
          <legend>{PRICING.ask}</legend>
          <p>{PRICING.askWhy(ball.name)}</p>
          <PriceWork ticket={ticket} ball={ball} act={PRICING.handOver} then={() => move.mutateAsync("collected")}>
            <button type="button" className="button" disabled={move.isPending} onClick={() => move.mutate("collected")}>
              {PRICING.handOverLater}
            </button>
            <button type="button" className="button" onClick={() => setAsking(false)}>
              {PRICING.leave}
            </button>
          </PriceWork>
        </fieldset>
      )}
      <WriteFault error={move.error} />
    </section>
  );
}

function History({ ticket }: { readonly ticket: Ticket }) {
  const times = useShopTimes();
  return (
    <section className="plate">
      <h2>{TICKET.history}</h2>
      <ol className="history">
        {ticket.been.map(({ state, at }) => (
          <li key={at}>
            {times.at(at)} · {TICKET_STATE_WORDS[state]}
          </li>
        ))}
      </ol>
    </section>
  );
}
