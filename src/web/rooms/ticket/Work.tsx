import { useState } from "react";
import { Link } from "wouter";
import type { Ball } from "#contract/records/ball";
import type { Ticket } from "#contract/records/ticket";
import type { SignedEntry } from "#contract/records/ticketWork";
import type { StageStanding } from "#engine/signed/work";
import { COUNTER_FINISHES } from "#words/en/rooms/intake";
import { TICKET } from "#words/en/rooms/ticket";
import { benchBallFor } from "../../benchWork/benchBall.ts";
import { type OnTheBench, workHere } from "../../benchWork/onTheBench.ts";
import { abrasiveName, plannedStages, stageName, wayText } from "../../benchWork/plannedStages.ts";
import { LineField, WordField } from "../../pieces/PlainFields.tsx";
import { For, useMay } from "../../shop/useDoor.tsx";
import { useOutbox } from "../../shop/useOutbox.tsx";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useSign } from "../bench/useSign.ts";
import { useChangeTicket, useStagesDone } from "./useTicket.ts";

/** The finish wanted and the work that leads to it: written by the engine, signed stage by stage at the bench. */
export function Work({ ticket, ball }: { readonly ticket: Ticket; readonly ball: Ball }) {
  const change = useChangeTicket(ticket);
  const may = useMay();
  const isStopped = ticket.stops.some(({ clearedAt }) => clearedAt === null);
  const write = (finishAfter: string) =>
    change.mutate({ finishAfter, stages: isStopped ? [] : plannedStages(benchBallFor(ticket, ball), finishAfter) });
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
      <StageTable ticket={ticket} ball={ball} />
      <WriteFault error={change.error} />
    </section>
  );
}

const FINISHES: Readonly<Record<string, string>> = Object.fromEntries(COUNTER_FINISHES.map((finish) => [finish, finish]));

/** The stages planned, each with who has done it; a signature can be taken back, with a reason. */
export function StageTable({ ticket, ball = null }: { readonly ticket: Ticket; readonly ball?: Ball | null }) {
  const { waiting } = useOutbox();
  const done = useStagesDone(ticket.id).data?.items ?? [];
  const { stages } = workHere(ticket, done, waiting);
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
        {ticket.stages.map((planned, i) => {
          const { id, abrasive, way, sides, secondsPerSide } = planned;
          const standing = stages[i];
          return (
            <tr key={id}>
              <td>
                {i + 1}. {stageName(planned)}
              </td>
              <td>{[abrasiveName(abrasive), way === null ? null : wayText(way)].filter((part) => part !== null).join(", ")}</td>
              <td className="figure">{sides ?? ""}</td>
              <td className="figure">{secondsPerSide === null || secondsPerSide === 0 ? "" : secondsPerSide}</td>
              <td className="initials">
                {standing.state === "begun" && TICKET.sidesOf((sides ?? 0) - standing.sidesLeft.length, sides ?? 0)}
                {standing.state === "served" && TICKET.served(standing.by?.initials ?? "")}
                {standing.state === "signed" && (
                  <>
                    {standing.by?.initials} {usedInstead(standing)}
                    {ball !== null && standing.by !== null && <TakeBack here={{ ticket, ball, done }} entry={standing.by} />}
                  </>
                )}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** Where another abrasive was used than was planned, which. */
function usedInstead({ stage, by }: StageStanding<SignedEntry>): string {
  return by === null || by.abrasive === stage.abrasive ? "" : `(${abrasiveName(by.abrasive) ?? "–"})`;
}

function TakeBack({ here, entry }: { readonly here: OnTheBench; readonly entry: SignedEntry }) {
  const [isOpen, setOpen] = useState(false);
  const [why, setWhy] = useState("");
  const sign = useSign();
  return (
    <For least="technician">
      {isOpen ? (
        <form
          className="take-back no-print"
          onSubmit={(event) => {
            event.preventDefault();
            if (why.trim() === "") return;
            sign.takeBack(here, entry, why.trim());
            setOpen(false);
          }}
        >
          <LineField label={TICKET.takeBackWhy} value={why} onChange={setWhy} />
          <button type="submit" className="button" disabled={why.trim() === ""}>
            {TICKET.takeBack}
          </button>
        </form>
      ) : (
        <button type="button" className="button quiet no-print" onClick={() => setOpen(true)}>
          {TICKET.takeBack}
        </button>
      )}
    </For>
  );
}
