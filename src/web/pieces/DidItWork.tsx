import type { Ticket } from "#contract/records/ticket";
import { OUTCOMES } from "#engine/learning/outcomes";
import { OUTCOME_WORDS } from "#words/en/rooms/outcomes";
import { useChangeTicket } from "../shop/useTicket.ts";
import { WriteFault } from "../shop/WriteFault.tsx";
import { useShopTimes } from "../shop/zone.ts";

/** One press at the next visit: did the work do what was said? */
export function DidItWork({ ticket, question }: { readonly ticket: Ticket; readonly question: string }) {
  const times = useShopTimes();
  const change = useChangeTicket(ticket);
  const { outcome } = ticket;
  return (
    <fieldset className="did-it-work no-print">
      <legend>{question}</legend>
      <div className="buttons">
        {OUTCOMES.map((answer) => (
          <button
            key={answer}
            type="button"
            className={outcome?.answer === answer ? "button primary" : "button"}
            aria-pressed={outcome?.answer === answer}
            disabled={change.isPending}
            onClick={() => change.mutate({ outcome: { at: new Date().toISOString(), answer } })}
          >
            {OUTCOME_WORDS.answers[answer]}
          </button>
        ))}
      </div>
      {outcome !== null && <p className="note">{OUTCOME_WORDS.told(OUTCOME_WORDS.answers[outcome.answer], times.day(outcome.at))}</p>}
      <WriteFault error={change.error} />
    </fieldset>
  );
}
