import type { Ball } from "#contract/records/ball";
import type { Ticket } from "#contract/records/ticket";
import { CAUSES, type CauseId } from "#engine/learning/diagnosis/causes";
import type { Diagnosis, RankedCause } from "#engine/learning/diagnosis/diagnose";
import type { Evidence } from "#engine/learning/diagnosis/evidence";
import { afterStep, type StepId, stepsByWorth } from "#engine/learning/diagnosis/nextSteps";
import { answerText, CAUSE_WORDS, customerText, DIAGNOSIS, evidenceText, STEP_OUTCOMES, STEP_WORDS } from "#words/en/diagnosis";
import { WRONG } from "#words/en/rooms/wrong";
import { fixed } from "#words/figures";
import { messageText } from "#words/messageText";
import { answered, madeOn, shop } from "../../shop/shopClient.ts";
import { useWrite } from "../../shop/useShop.ts";
import { useChangeTicket } from "../../shop/useTicket.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { type ComplaintDraft, foundCrack } from "./complaintDraft.ts";

interface WrongAnswerProps {
  readonly diagnosis: Diagnosis;
  readonly draft: ComplaintDraft;
  /** Null where all balls changed. */
  readonly ball: Ball | null;
  readonly ticket: Ticket | null;
  onChange(draft: ComplaintDraft): void;
}

/** Causes worth a line of their own, and how many at most. */
const TOLD_FROM = 0.03;
const MOST_TOLD = 6;
const MOST_STEPS = 4;
const MOST_EVIDENCE = 5;

/** Ranked causes with the evidence, what to do next, and what it came to once a step was taken. */
export function WrongAnswer({ diagnosis, draft, ball, ticket, onChange }: WrongAnswerProps) {
  // What was found when a crack was looked for is a fact of the complaint, and counted there.
  const now = draft.steps
    .filter(({ step }) => step !== "lookForCrack")
    .reduce(
      (chances, { step, wasSo }) => afterStep(chances, step, wasSo),
      new Map(diagnosis.causes.map(({ cause, probability }) => [cause, probability])) as ReadonlyMap<CauseId, number>,
    );
  const ranked = diagnosis.causes
    .map((one) => ({ ...one, probability: now.get(one.cause) ?? 0 }))
    .toSorted((a, b) => b.probability - a.probability);
  const told = ranked.filter(({ probability }, i) => i === 0 || (i < MOST_TOLD && probability >= TOLD_FROM));
  const taken = draft.steps.map(({ step }) => step);
  const offered = diagnosis.steps.map(({ step }) => step).filter((step) => !taken.includes(step));
  const steps = stepsByWorth(now, offered);
  const [first] = ranked;
  const isStopped = diagnosis.answerTo === "ball.crack";
  const answered = isStopped ? (ranked.find(({ cause }) => cause === "ball.crack") ?? first) : first;
  const mustLook = diagnosis.messages.some(({ id }) => id === "diagnosis.lookFirst");
  const maySay = isStopped || (!mustLook && (diagnosis.maySand || !CAUSES[first.cause].isSurface));
  const take = (step: StepId, wasSo: boolean) => onChange({ ...draft, steps: [...draft.steps, { step, wasSo }] });
  return (
    <>
      {diagnosis.messages.map((message) => (
        <p key={message.id} className="stop-line">
          {messageText(message)}
        </p>
      ))}
      <ol className="causes">
        {told.map((cause) => (
          <CauseLine key={cause.cause} cause={cause} />
        ))}
      </ol>
      {ranked.length > told.length && <p className="note">{WRONG.others(ranked.length - told.length)}</p>}
      {maySay && (
        <p>
          {DIAGNOSIS.answer}: <strong>{answerText(answered)}</strong>
        </p>
      )}
      <p>
        {DIAGNOSIS.customer}: <q>{customerText({ causes: ranked, steps, answerTo: maySay ? answered.cause : null })}</q>
      </p>
      {foundCrack(draft) === true && ball !== null && <CrackOnBall ball={ball} />}
      {(steps.length > 0 || draft.steps.length > 0) && <h3>{WRONG.steps}</h3>}
      {draft.steps.map(({ step, wasSo }, i) => (
        <p key={step} className="step-taken">
          {WRONG.taken(STEP_WORDS[step], STEP_OUTCOMES[step][wasSo ? 0 : 1])}{" "}
          <button type="button" className="button" onClick={() => onChange({ ...draft, steps: draft.steps.toSpliced(i, 1) })}>
            {WRONG.undo}
          </button>
        </p>
      ))}
      <ul className="next-steps">
        {steps.slice(0, MOST_STEPS).map(({ step, minutes }) => (
          <li key={step}>
            <span>
              <strong>{STEP_WORDS[step]}</strong> <small>{WRONG.stepTakes(fixed(minutes, 0))}</small>
            </span>
            <span className="buttons">
              {STEP_OUTCOMES[step].map((outcome, i) => (
                <button
                  key={outcome}
                  type="button"
                  className="button"
                  aria-label={`${STEP_WORDS[step]}: ${outcome}`}
                  onClick={() => take(step, i === 0)}
                >
                  {outcome}
                </button>
              ))}
            </span>
          </li>
        ))}
      </ul>
      {ticket !== null && <KeepFindings ticket={ticket} first={first} draft={draft} />}
      <p className="note">{DIAGNOSIS.chosen}</p>
    </>
  );
}

/** A crack that was found belongs to the ball, whatever becomes of this complaint. */
function CrackOnBall({ ball }: { readonly ball: Ball }) {
  const isOnIt = ball.found.some(({ what }) => what === "crack");
  const write = useWrite(
    () =>
      answered(
        shop.balls[":id"].$patch({
          param: { id: ball.id },
          json: { found: [...ball.found, { at: new Date().toISOString(), what: "crack", note: "" }] },
          header: madeOn(ball),
        }),
      ),
    ["balls"],
  );
  if (isOnIt) return <p role="status">{WRONG.crackOnBall}</p>;
  return (
    <p className="no-print">
      <button type="button" className="button" disabled={write.isPending} onClick={() => write.mutate()}>
        {WRONG.keepCrack}
      </button>
      <WriteFault error={write.error} />
    </p>
  );
}

function CauseLine({ cause: { cause, probability, for: speaksFor, against } }: { readonly cause: RankedCause }) {
  const percent = fixed(100 * probability, 0);
  return (
    <li>
      <details>
        <summary>
          <span className="cause-name">{CAUSE_WORDS[cause]}</span>
          <span className="cause-chance figure">{WRONG.inHundred(percent)}</span>
          <meter min={0} max={1} value={probability} aria-label={`${CAUSE_WORDS[cause]}: ${WRONG.inHundred(percent)}`} />
        </summary>
        <Side name={WRONG.speaksFor} evidence={speaksFor} />
        <Side name={WRONG.against} evidence={against} />
      </details>
    </li>
  );
}

function Side({ name, evidence }: { readonly name: string; readonly evidence: readonly Evidence[] }) {
  return (
    <p className="evidence">
      <em>{name}:</em> {evidence.length === 0 ? WRONG.nothing : evidence.slice(0, MOST_EVIDENCE).map(evidenceText).join("; ")}
    </p>
  );
}

function KeepFindings({ ticket, first, draft }: { readonly ticket: Ticket; readonly first: RankedCause; readonly draft: ComplaintDraft }) {
  const change = useChangeTicket(ticket);
  const steps = draft.steps.map(({ step, wasSo }) => WRONG.taken(STEP_WORDS[step], STEP_OUTCOMES[step][wasSo ? 0 : 1]));
  const text = WRONG.findingsText(CAUSE_WORDS[first.cause], fixed(100 * first.probability, 0), steps);
  const isKept = ticket.findings.includes(text);
  return (
    <p className="no-print">
      <button
        type="button"
        className="button"
        disabled={change.isPending || isKept}
        onClick={() => change.mutate({ findings: ticket.findings === "" ? text : `${ticket.findings}\n${text}` })}
      >
        {isKept ? WRONG.kept : WRONG.toFindings}
      </button>
      <WriteFault error={change.error} />
    </p>
  );
}
