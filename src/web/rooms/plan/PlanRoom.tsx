import { useSearchParams } from "wouter";
import { lazyRoom } from "../../client/lazyRoom.ts";
import type { WorkerPool } from "../../client/workerPool.ts";
import { EXAMPLE_JOB } from "../../jobFile/exampleJob.ts";
import { Plan } from "./Plan.tsx";

const PlanForTicket = lazyRoom(() => import("./PlanForTicket.tsx").then((m) => ({ default: m.PlanForTicket })));

const BEGINNING = { job: EXAMPLE_JOB, memory: "gritwright.plan.draft" };

/** The finish plan: of whatever one likes, or of a ticket's ball and its bowler where the address names a ticket. */
export function PlanRoom({ pool }: { readonly pool: WorkerPool }) {
  const ticketId = useSearchParams()[0].get("ticket");
  if (ticketId === null) return <Plan pool={pool} beginning={BEGINNING} forTicket={null} />;
  return <PlanForTicket key={ticketId} id={ticketId} pool={pool} />;
}
