import { Link } from "wouter";
import type { Ball } from "#contract/records/ball";
import type { Ticket } from "#contract/records/ticket";
import { COUNTER_FINISHES } from "#words/en/rooms/intake";
import { TICKET } from "#words/en/rooms/ticket";
import { benchBallOf } from "../../benchWork/benchBall.ts";
import { abrasiveName, plannedStages } from "../../benchWork/plannedStages.ts";
import { signatures, withWaitingStages } from "../../benchWork/signedStages.ts";
import { WordField } from "../../pieces/PlainFields.tsx";
import { For, useMay } from "../../shop/useDoor.tsx";
import { useOutbox } from "../../shop/useOutbox.tsx";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useChangeTicket, useStagesDone } from "./useTicket.ts";

/** The finish wanted and the work that leads to it: written by the engine, signed stage by stage at the bench. */
export function Work({ ticket, ball }: { readonly ticket: Ticket; readonly ball: Ball }) {
  const change = useChangeTicket(ticket);
  const may = useMay();
  const isStopped = ticket.stops.some(({ clearedAt }) => clearedAt === null);
  const write = (finishAfter: string) =>
    change.mutate({ finishAfter, stages: isStopped ? [] : plannedStages(benchBallOf(ball), finishAfter) });
  const wanted = ticket.finishAfter ?? "";
  const words = { ...(wanted === "" ? { "": TICKET.notDecided } : {}), ...FINISHES, ...(wanted === "" ? {} : { [wanted]: wanted }) };
  return (
    <section className="plate">
      <div className="ball-work-head">
        <h2>{TICKET.work}</h2>
        {ticket.stages.length > 0 && !isStopped && may("technician") && (
          <Link href={`/bench/${ticket.id}`} className="button primary">
            {TICKET.openGuide}
          </Link>
        )}
      </div>
      <div className="field-row">
        {!may("counter") && (
          <p>
            {TICKET.choose}: {ticket.finishAfter ?? TICKET.notDecided}
          </p>
        )}
        <For least="counter">
          <WordField label={TICKET.choose} value={wanted} words={words} onChange={(finish) => finish !== "" && write(finish)} />
        </For>
        <p>
          {TICKET.before}: {ticket.finishBefore ?? "–"}
          <br />
          <Link href={`/plan?ticket=${ticket.id}`}>{TICKET.openPlan}</Link>
        </p>
      </div>
      <StageTable ticket={ticket} />
      <WriteFault error={change.error} />
    </section>
  );
}

const FINISHES: Readonly<Record<string, string>> = Object.fromEntries(COUNTER_FINISHES.map((finish) => [finish, finish]));

/** The stages planned, each with who has done it. */
export function StageTable({ ticket }: { readonly ticket: Ticket }) {
  const { waiting } = useOutbox();
  const done = withWaitingStages(ticket.id, useStagesDone(ticket.id).data?.items ?? [], waiting);
  const signed = signatures(ticket, done);
  if (ticket.stages.length === 0) return <p className="nothing">{TICKET.noWork}</p>;
  return (
    <table className="stages">
      <thead>
        <tr>
          <th scope="col">{TICKET.stage}</th>
          <th scope="col">{TICKET.with}</th>
          <th scope="col" className="figure">
            {TICKET.sides}
          </th>
          <th scope="col" className="figure">
            {TICKET.seconds}
          </th>
          <th scope="col">{TICKET.initials}</th>
        </tr>
      </thead>
      <tbody>
        {ticket.stages.map(({ what, abrasive, way, sides, secondsPerSide }, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: stages have no other name than their place
          <tr key={i}>
            <td>
              {i + 1}. {what}
            </td>
            <td>{[abrasiveName(abrasive), way].filter((part) => part !== null).join(", ")}</td>
            <td className="figure">{sides ?? ""}</td>
            <td className="figure">{secondsPerSide === null || secondsPerSide === 0 ? "" : secondsPerSide}</td>
            <td className="initials">{signed[i]?.initials ?? ""}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
