import type { Ticket } from "#contract/records/ticket";
import { coverWord } from "#words/coverWord";
import { INTAKE } from "#words/en/rooms/intake";
import { OUTCOME_WORDS } from "#words/en/rooms/outcomes";
import { DidItWork } from "../../pieces/DidItWork.tsx";
import { BallSwatch } from "../../pieces/FinishSwatch.tsx";
import { useShopTimes } from "../../shop/zone.ts";
import { OwnerName } from "./Hits.tsx";
import { useLastTime } from "./useStagesOf.ts";
import type { BallDraft } from "./visitDraft.ts";

interface LastTimeProps {
  readonly ball: BallDraft;
  readonly bowlerId: string | null;
  onSame(isSame: boolean): void;
}

/** The ball that was taken last, and half the work of a shop in one press: same as last time. */
export function LastTime({ ball, bowlerId, onSame }: LastTimeProps) {
  const read = useLastTime(ball.ballId ?? "").data;
  if (read === undefined || ball.ballId === null) return null;
  const ticket = read.last?.ticket ?? null;
  const initials = read.last?.stagesDone.findLast(({ signs, takesBack }) => signs && takesBack === null)?.initials ?? "";
  return (
    <section className="last-time" aria-label={ball.name}>
      <BallSwatch finish={ticket?.finishAfter ?? null} />
      <p className="hit-words">
        <strong>{ball.name}</strong> <OwnerName id={bowlerId} />
        <small>
          {coverWord(ball.cover === "" ? null : ball.cover)} ·{" "}
          {ticket === null ? INTAKE.noLastTime : <LastWork ticket={ticket} initials={initials} />}
        </small>
      </p>
      {ticket !== null && ticket.finishAfter !== null && (
        <>
          <button type="button" className="button same" aria-pressed={ball.sameAsLast} onClick={() => onSame(!ball.sameAsLast)}>
            {INTAKE.sameAsLast(ticket.finishAfter)}
          </button>
          {!ball.sameAsLast && <kbd>{INTAKE.enter}</kbd>}
        </>
      )}
      {ticket !== null && ticket.outcome === null && (
        <DidItWork ticket={ticket} question={OUTCOME_WORDS.lastTime(ticket.finishAfter ?? "–")} />
      )}
    </section>
  );
}

function LastWork({ ticket, initials }: { readonly ticket: Ticket; readonly initials: string }) {
  const times = useShopTimes();
  const { finishAfter, readyAt, receivedAt, outcome } = ticket;
  return (
    <>
      {INTAKE.lastWork(finishAfter ?? "–", times.day(readyAt ?? receivedAt), initials)}
      {outcome !== null && ` · ${INTAKE.lastHeld[outcome.answer]}`}
    </>
  );
}
