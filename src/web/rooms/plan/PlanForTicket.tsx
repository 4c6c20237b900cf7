import { useEffect, useState } from "react";
import { Link, useLocation } from "wouter";
import type { Ball } from "#contract/records/ball";
import type { Bowler } from "#contract/records/bowler";
import type { Ticket } from "#contract/records/ticket";
import { PLAN_OF_TICKET } from "#words/en/rooms/planOfTicket";
import { benchBallOf } from "../../benchWork/benchBall.ts";
import { plannedStages } from "../../benchWork/plannedStages.ts";
import type { WorkerPool } from "../../client/workerPool.ts";
import { WordField } from "../../pieces/PlainFields.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { useTicketWrites } from "../../shop/ticketWrites.ts";
import { For } from "../../shop/useDoor.tsx";
import { useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useTicket } from "../ticket/useTicket.ts";
import { jobOfTicket, unknownOf } from "./jobOfTicket.ts";
import { Plan } from "./Plan.tsx";
import type { Answered } from "./usePlan.ts";

/** The finish plan of a ticket's ball, for its owner; the finish that is picked goes back to the ticket. */
export function PlanForTicket({ id, pool }: { readonly id: string; readonly pool: WorkerPool }) {
  const { ticket, ball, bowler } = useTicket(id);
  if (ticket.data !== undefined && ball.data !== undefined) {
    if (ticket.data.bowlerId === null) return <Known ticket={ticket.data} ball={ball.data} bowler={null} pool={pool} />;
    if (bowler.data !== undefined) return <Known ticket={ticket.data} ball={ball.data} bowler={bowler.data} pool={pool} />;
  }
  return (
    <main id="answer" className="room" tabIndex={-1}>
      <h1>{PLAN_OF_TICKET.title}</h1>
      <Reading of={ticket}>{() => <Reading of={ball}>{() => <Reading of={bowler}>{() => null}</Reading>}</Reading>}</Reading>
    </main>
  );
}

interface KnownProps {
  readonly ticket: Ticket;
  readonly ball: Ball;
  readonly bowler: Bowler | null;
  readonly pool: WorkerPool;
}

function Known({ ticket, ball, bowler, pool }: KnownProps) {
  // Set once: a record that changes meanwhile must not take away what was typed.
  const [beginning] = useState(() => ({ job: jobOfTicket(ball, bowler), memory: `gritwright.plan.draft.${ticket.id}` }));
  const unknown = unknownOf(ball, bowler).map((what) => PLAN_OF_TICKET.unknown[what]);
  useEffect(() => {
    document.title = PLAN_OF_TICKET.pageTitle(ball.name);
  }, [ball.name]);
  const forTicket = {
    note: (
      <p className="note">
        {PLAN_OF_TICKET.whom(ball.name, bowler?.name ?? null)} {PLAN_OF_TICKET.lane}{" "}
        {unknown.length > 0 && PLAN_OF_TICKET.notKnown(unknown)} <Link href={`/tickets/${ticket.id}`}>{PLAN_OF_TICKET.toTicket}</Link>
      </p>
    ),
    take: (answered: Answered) => <Take ticket={ticket} ball={ball} answered={answered} pool={pool} />,
  };
  return <Plan pool={pool} beginning={beginning} forTicket={forTicket} />;
}

interface TakeProps {
  readonly ticket: Ticket;
  readonly ball: Ball;
  readonly answered: Answered;
  readonly pool: WorkerPool;
}

/** The pick, or any other finish of the table, with one press to the ticket. */
function Take({ ticket, ball, answered, pool }: TakeProps) {
  const { plan, question } = answered;
  const [, go] = useLocation();
  const { change: changeTicket } = useTicketWrites();
  const [chosen, setChosen] = useState<string | null>(null);
  const finishes = plan.candidates.map(({ finish }) => finish);
  const pick = plan.pick?.finish ?? "";
  const finish = chosen !== null && finishes.includes(chosen) ? chosen : pick;
  const words = Object.fromEntries(finishes.map((one) => [one, one === pick ? PLAN_OF_TICKET.isPick(one) : one]));
  const isStopped = ticket.stops.some(({ clearedAt }) => clearedAt === null);
  const change = useWrite(async () => {
    const wanted = { question, plan, finish, madeAt: new Date().toISOString() };
    await changeTicket(ticket, {
      finishAfter: finish,
      stages: isStopped ? [] : plannedStages(benchBallOf(ball), finish),
      planSure: finish === pick ? (plan.pick?.sureShare ?? null) : null,
      predicted: await pool.call({ kind: "predict", wanted }, null),
    });
    go(`/tickets/${ticket.id}`);
  }, ["tickets", "queue"]);
  return (
    <section className="plate take-finish no-print" aria-label={PLAN_OF_TICKET.take}>
      <WordField
        label={PLAN_OF_TICKET.finish}
        value={finish}
        words={finish === "" ? { "": PLAN_OF_TICKET.noPick, ...words } : words}
        onChange={setChosen}
      />
      <For least="counter">
        <button
          type="button"
          className="button primary"
          disabled={finish === "" || change.isPending}
          onClick={() => change.mutate(undefined)}
        >
          {PLAN_OF_TICKET.take}
        </button>
      </For>
      {isStopped && <p className="failed">{PLAN_OF_TICKET.stopped}</p>}
      <WriteFault error={change.error} />
    </section>
  );
}
