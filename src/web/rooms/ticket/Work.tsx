import { Link } from "wouter";
import type { Ball } from "#contract/records/ball";
import { benchBallFor } from "#contract/records/benchBall";
import type { Ticket } from "#contract/records/ticket";
import type { SignedEntry } from "#contract/records/ticketWork";
import type { StageStanding } from "#engine/signed/entries";
import { COUNTER_FINISHES } from "#engine/surface/finish";
import { STAGE_REASONS } from "#words/en/bench";
import { TICKET } from "#words/en/rooms/ticket";
import type { OnTheBench } from "../../benchWork/onTheBench.ts";
import { abrasiveName, plannedStages, stageName, usedInstead, wayText } from "../../benchWork/plannedStages.ts";
import { TakeBack } from "../../benchWork/TakeBack.tsx";
import { FinishSwatch } from "../../pieces/FinishSwatch.tsx";
import { WordField } from "../../pieces/PlainFields.tsx";
import { For } from "../../shop/useSession.tsx";
import type { TicketParts } from "../../shop/useTicket.ts";
import { useChangeTicket } from "../../shop/useTicket.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useShopTimes } from "../../shop/zone.ts";

type PlannedStage = Ticket["stages"][number];

/** The work that leads to the finish: planned by the engine, signed stage by stage at the bench, the next one marked. */
export function Work({ ticket, ball, work }: TicketParts) {
  const left = work.stages.reduce((sum, { stage, sidesLeft, againSeconds }) => {
    const planned = ticket.stages.find(({ id }) => id === stage.id);
    return sum + sidesLeft.length * (againSeconds ?? planned?.secondsPerSide ?? 0);
  }, 0);
  return (
    <section className="work-plate">
      <h2>
        {TICKET.work} {left > 0 && <small>{TICKET.atSpinner(Math.max(1, Math.round(left / 60)))}</small>}
      </h2>
      {ticket.stages.length === 0 ? (
        <p className="nothing">{TICKET.noWork}</p>
      ) : (
        <table className="stages work-rows">
          <tbody>
            {ticket.stages.map((planned, i) => (
              <WorkRow
                key={planned.id}
                planned={planned}
                standing={work.stages[i]}
                isNext={work.next?.stage.id === planned.id}
                here={{ ticket, ball, done: [] }}
              />
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

interface RowProps {
  readonly planned: PlannedStage;
  readonly standing: StageStanding<SignedEntry>;
  readonly isNext: boolean;
  readonly here: OnTheBench;
}

function WorkRow({ planned, standing, isNext, here }: RowProps) {
  const times = useShopTimes();
  const { sides, secondsPerSide, abrasive, kind } = planned;
  const { state, by, sidesLeft, stage } = standing;
  const tool = abrasiveName(abrasive);
  const name = [stageName(planned), tool].filter((part) => part !== null).join(" · ");
  const number = kind === "cut" || kind === "open" ? (/^pad-(\d+)$/.exec(abrasive ?? "")?.[1] ?? null) : null;
  const isDone = state === "signed" || state === "served";
  const detail = [
    planned.way === null ? null : wayText(planned.way),
    state === "begun" ? TICKET.sidesOf((sides ?? stage.sideIds.length) - sidesLeft.length, sides ?? stage.sideIds.length) : null,
    planned.way === null && kind === "clean" ? STAGE_REASONS.before : null,
  ];
  return (
    <tr className={isNext ? "next-row" : undefined}>
      <td className="row-mark">
        {isDone ? (
          <span className="row-done">✓</span>
        ) : number !== null ? (
          <FinishSwatch finish={number} size={36} />
        ) : (
          <span className="row-open" />
        )}
      </td>
      <td className="row-name">
        <strong>{name}</strong>
        <span>{detail.filter((part) => part !== null).join(" · ")}</span>
      </td>
      <td className="figure">{sides === null || !secondsPerSide ? "" : TICKET.sidesBy(sides, secondsPerSide)}</td>
      <td className="initials">
        {isNext && <em>{TICKET.next}</em>}
        {state === "served" && TICKET.served(by?.initials ?? "")}
        {state === "signed" && by !== null && (
          <>
            {by.initials} {usedInstead(standing)} <span className="row-at">{times.at(by.at)}</span>
            <TakeBack here={here} entry={by} />
          </>
        )}
      </td>
    </tr>
  );
}

const FINISHES: Readonly<Record<string, string>> = Object.fromEntries(COUNTER_FINISHES.map((finish) => [finish, finish]));

/** Another finish for the ball: the work is planned anew, and what was cut already counts where it serves. */
export function ChangeFinish({ ticket, ball }: { readonly ticket: Ticket; readonly ball: Ball }) {
  const change = useChangeTicket(ticket);
  const isStopped = ticket.stops.some(({ clearedAt }) => clearedAt === null);
  const write = (finishAfter: string) =>
    change.mutate({ finishAfter, stages: isStopped ? [] : plannedStages(benchBallFor(ticket, ball), finishAfter) });
  const wanted = ticket.finishAfter ?? "";
  const words = { ...(wanted === "" ? { "": TICKET.notDecided } : {}), ...FINISHES, ...(wanted === "" ? {} : { [wanted]: wanted }) };
  return (
    <section className="plate change-finish no-print">
      <For least="counter">
        <WordField label={TICKET.choose} value={wanted} words={words} onChange={(finish) => finish !== "" && write(finish)} />
      </For>
      <Link href={`/plan?ticket=${ticket.id}`} className="button">
        {TICKET.openPlan}
      </Link>
      <WriteFault error={change.error} />
    </section>
  );
}
