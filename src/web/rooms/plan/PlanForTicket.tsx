import { useEffect, useState } from "react";
import { Link, useLocation } from "wouter";
import type { Ball } from "#contract/records/ball";
import { benchBallFor } from "#contract/records/benchBall";
import type { Bowler } from "#contract/records/bowler";
import type { Ticket, TicketWritten } from "#contract/records/ticket";
import type { FinishPlan } from "#engine/planning/plan";
import { PLAN_OF_TICKET } from "#words/en/rooms/planOfTicket";
import { plannedStages } from "../../benchWork/plannedStages.ts";
import type { WorkerPool } from "../../client/workerPool.ts";
import type { JobDraft } from "../../jobFile/jobDraft.ts";
import { jobOfTicket, unknownOf, type Wanted } from "../../jobFile/jobOfTicket.ts";
import { WordField } from "../../pieces/PlainFields.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { answered as answerOf, shop } from "../../shop/shopClient.ts";
import { useTicketWrites } from "../../shop/ticketWrites.ts";
import { useHealth } from "../../shop/useHealth.ts";
import { useHouse } from "../../shop/usePlaces.ts";
import { For } from "../../shop/useSession.tsx";
import { useRead, useWrite } from "../../shop/useShop.ts";
import { useTicket } from "../../shop/useTicket.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useShopTimes } from "../../shop/zone.ts";
import { useEarlierPlan, withEarlier } from "./earlierPlan.ts";
import { Plan, type PlanOffer } from "./Plan.tsx";
import type { Answered } from "./usePlan.ts";

/** The finish plan of a ticket's ball, for its owner; the finish that is picked goes back to the ticket. */
export function PlanForTicket({ id, pool }: { readonly id: string; readonly pool: WorkerPool }) {
  const { ticket, ball, bowler } = useTicket(id);
  const wanted = useWanted(ticket.data?.playedOn ?? null);
  if (ticket.data !== undefined && ball.data !== undefined && wanted !== null) {
    const known = { ticket: ticket.data, ball: ball.data, wanted, pool };
    if (ticket.data.bowlerId === null) return <Known {...known} bowler={null} />;
    if (bowler.data !== undefined) return <Known {...known} bowler={bowler.data} />;
  }
  return (
    <main id="answer" className="room" tabIndex={-1}>
      <h1>{PLAN_OF_TICKET.title}</h1>
      <Reading of={ticket}>{() => <Reading of={ball}>{() => <Reading of={bowler}>{() => null}</Reading>}</Reading>}</Reading>
    </main>
  );
}

/** House and pattern that a ball is wanted for, each null where nobody said, or it is gone; null until both were read. */
function useWanted(playedOn: Ticket["playedOn"]): Wanted | null {
  const [patternId, houseId] = [playedOn?.patternId ?? null, playedOn?.houseId ?? null];
  const pattern = useRead(["patterns", patternId ?? ""], () => answerOf(shop.patterns[":id"].$get({ param: { id: patternId ?? "" } })), {
    enabled: patternId !== null,
  });
  const house = useHouse(houseId ?? undefined);
  const isRead = (patternId === null || !pattern.isPending) && (houseId === null || !house.isPending);
  return isRead ? { pattern: pattern.data ?? null, house: house.data ?? null } : null;
}

interface KnownProps {
  readonly ticket: Ticket;
  readonly ball: Ball;
  readonly bowler: Bowler | null;
  readonly wanted: Wanted;
  readonly pool: WorkerPool;
}

function Known({ ticket, ball, bowler, wanted, pool }: KnownProps) {
  // Set once: a record that changes meanwhile must not take away what was typed.
  const [beginning] = useState(() => ({ job: jobOfTicket(ball, bowler, wanted), memory: `gritwright.plan.draft.${ticket.id}` }));
  const unknown = unknownOf(ball, bowler).map((what) => PLAN_OF_TICKET.unknown[what]);
  useEffect(() => {
    document.title = PLAN_OF_TICKET.pageTitle(ball.name);
  }, [ball.name]);
  const forTicket = {
    note: (
      <p className="note">
        {PLAN_OF_TICKET.whom(ball.name, bowler?.name ?? null)}{" "}
        {wanted.pattern === null ? PLAN_OF_TICKET.lane : PLAN_OF_TICKET.laneOf(wanted.pattern.name)}{" "}
        {unknown.length > 0 && PLAN_OF_TICKET.notKnown(unknown)} <Link href={`/tickets/${ticket.id}`}>{PLAN_OF_TICKET.toTicket}</Link>
      </p>
    ),
    offer: useOffer(ticket),
    take: (answered: Answered, job: JobDraft) => <Take ticket={ticket} ball={ball} answered={answered} job={job} pool={pool} />,
  };
  return <Plan pool={pool} beginning={beginning} forTicket={forTicket} />;
}

/** What was typed for this bowler in an earlier plan is there for the next ball with one press. */
function useOffer(ticket: Ticket): PlanOffer | null {
  const times = useShopTimes();
  const plan = useEarlierPlan(ticket)?.plan ?? null;
  if (plan === null) return null;
  return { words: PLAN_OF_TICKET.asPlanned(times.day(plan.madeAt)), onto: (job) => withEarlier(job, plan.inputs) };
}

/** What the plan is made of, so that it can be made again, and offered for the bowler's next ball. */
function planToKeep(plan: FinishPlan, job: JobDraft, engineVersion: string): NonNullable<TicketWritten["plan"]> {
  return {
    madeAt: new Date().toISOString(),
    engineVersion,
    seed: typeof job.seed === "number" ? job.seed : 1,
    inputs: { ...job },
    assumptions: Object.fromEntries(plan.assumptions.map(({ id, value }) => [id, value])),
    pick: plan.pick?.finish ?? null,
  };
}

interface TakeProps {
  readonly ticket: Ticket;
  readonly ball: Ball;
  readonly answered: Answered;
  /** As it stands in the form. */
  readonly job: JobDraft;
  readonly pool: WorkerPool;
}

/** The pick, or any other finish of the table, with one press to the ticket. */
function Take({ ticket, ball, answered, job, pool }: TakeProps) {
  const { plan, question } = answered;
  const version = useHealth().data?.version;
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
      stages: isStopped ? [] : plannedStages(benchBallFor(ticket, ball), finish),
      ...(version === undefined ? {} : { plan: planToKeep(plan, job, version) }),
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
