import { type ReactNode, Suspense, useMemo, useState } from "react";
import { Button, ProgressBar } from "react-aria-components";
import { PLAN_OF_TICKET } from "#words/en/rooms/planOfTicket";
import { PLAN_ANSWER, PLAN_FORM } from "#words/en/screens";
import { lazyRoom } from "../../client/lazyRoom.ts";
import type { WorkerPool } from "../../client/workerPool.ts";
import { EXAMPLE_JOB } from "../../jobFile/exampleJob.ts";
import { type JobDraft, valueAt } from "../../jobFile/jobDraft.ts";
import { Guard } from "../../pieces/Guard.tsx";
import { OneOf } from "../../pieces/OneOf.tsx";
import { MOST_COMPARED } from "./CandidateTable.tsx";
import { CustomerAnswer } from "./CustomerAnswer.tsx";
import { AnswerFiles, JobFiles } from "./fileButtons.tsx";
import { PlanAnswer } from "./PlanAnswer.tsx";
import { PlanForm } from "./PlanForm.tsx";
import { ballSummary, bowlerSummary, laneSummary, patternName } from "./summaries.ts";
import { useChoice } from "./useChoice.ts";
import { type Beginning, type Draft, useDraft } from "./useDraft.ts";
import { usePictures } from "./usePictures.ts";
import { type Answered, type RunningPlan, usePlan } from "./usePlan.ts";

const TrialView = lazyRoom(() => import("./trial/TrialView.tsx").then((m) => ({ default: m.TrialView })));

const VIEWS = { technician: PLAN_ANSWER.technician, customer: PLAN_ANSWER.customer, trial: PLAN_ANSWER.trial } as const;

/** Something that was set before and may be set again with one press. */
export interface PlanOffer {
  readonly words: string;
  onto(job: JobDraft): JobDraft;
}

interface PlanProps {
  readonly pool: WorkerPool;
  readonly beginning: Beginning;
  /** Whom it is for and what is done with the answer; null where nobody in particular asked. */
  readonly forTicket: {
    readonly note: ReactNode;
    readonly offer: PlanOffer | null;
    take(answered: Answered, job: JobDraft): ReactNode;
  } | null;
}

/** The form on one side, the answer on the other. */
export function Plan({ pool, beginning, forTicket }: PlanProps) {
  const draft = useDraft(beginning);
  const plan = usePlan(draft.job, pool);
  const [view, setView] = useState<keyof typeof VIEWS>("technician");
  const [complaint, setComplaint] = useState<string | null>(null);
  const name = String(valueAt(draft.job, "bowler.name") ?? "");
  const { shown, compared, onShow, onCompare } = useChoice(plan.answered?.plan ?? null, MOST_COMPARED);
  const title = PLAN_ANSWER.chartFor(name, patternName(draft.job));
  const choice = useMemo(
    () => ({ title, shown: view === "customer" ? shown.slice(0, 1) : shown, compared }),
    [title, shown, compared, view],
  );
  const { pictures, failure } = usePictures(plan.answered, choice, pool);
  const question = plan.answered?.question ?? null;
  const isBeginning = draft.job === beginning.job;
  return (
    <div className="plan-room">
      <aside className="form-side no-print">
        <h1>{PLAN_ANSWER.title}</h1>
        {forTicket?.note ?? (draft.job === EXAMPLE_JOB && <p className="note">{PLAN_FORM.demonstration}</p>)}
        <Offer offer={forTicket?.offer ?? null} draft={draft} />
        <PlanForm draft={draft} problems={plan.problems} question={question} />
        <div className="buttons">
          <Button isDisabled={!draft.canUndo} onPress={draft.undo}>
            {PLAN_FORM.undo}
          </Button>
          <Button isDisabled={isBeginning} onPress={() => draft.replace(beginning.job)}>
            {forTicket === null ? PLAN_FORM.startAgain : PLAN_OF_TICKET.startAgain}
          </Button>
          <JobFiles job={draft.job} pool={pool} onOpen={draft.replace} onFailure={setComplaint} />
        </div>
        {complaint !== null && <p role="alert">{complaint}</p>}
      </aside>
      <main id="answer" className="answer-side" tabIndex={-1} data-status={plan.status}>
        <div className="answer-bar no-print">
          <OneOf label={PLAN_ANSWER.views} value={view} words={VIEWS} onChange={setView} />
          <Progress plan={plan} />
        </div>
        <p className="print-only">{[bowlerSummary(draft.job), ballSummary(draft.job), laneSummary(draft.job)].join(" · ")}</p>
        <Trouble plan={plan} pictureFailure={failure} />
        {plan.answered !== null && view !== "trial" && forTicket?.take(plan.answered, draft.job)}
        {view === "trial" && (
          <Suspense fallback={null}>
            <TrialView draft={draft} todaysLine={plan.answered?.plan.today.line ?? null} onPlan={() => setView("technician")} />
          </Suspense>
        )}
        <Guard watch={plan.answered?.plan}>
          {plan.answered !== null &&
            view !== "trial" &&
            (view === "customer" ? (
              <CustomerAnswer answered={plan.answered} pictures={pictures} name={name} />
            ) : (
              <PlanAnswer
                answered={plan.answered}
                pictures={pictures}
                shown={shown}
                compared={compared}
                isFinal={plan.isFinal}
                onShow={onShow}
                onCompare={onCompare}
              />
            ))}
        </Guard>
        {plan.answered !== null && view === "technician" && <AnswerFiles plan={plan.answered.plan} />}
      </main>
    </div>
  );
}

/** What was set in an earlier plan, as long as it is not set here. */
function Offer({ offer, draft }: { readonly offer: PlanOffer | null; readonly draft: Draft }) {
  if (offer === null) return null;
  const offered = offer.onto(draft.job);
  if (JSON.stringify(offered) === JSON.stringify(draft.job)) return null;
  return (
    <div className="buttons">
      <Button onPress={() => draft.replace(offered)}>{offer.words}</Button>
    </div>
  );
}

/** How far the computation is, with the way to stop it. It keeps its place when there is nothing to show, so that nothing jumps. */
function Progress({ plan }: { readonly plan: RunningPlan }) {
  const { progress } = plan;
  return (
    <div className="progress">
      {plan.status === "working" && (
        <>
          <ProgressBar
            aria-label={PLAN_ANSWER.progress}
            value={progress?.done ?? 0}
            maxValue={Math.max(1, progress?.of ?? 1)}
            className="progress-bar"
          >
            {({ percentage }) => (
              <>
                <span>{PLAN_ANSWER.stages[progress?.stage ?? "sketch"]}</span>
                <span className="progress-track">
                  <span className="progress-fill" style={{ width: `${percentage ?? 0}%` }} />
                </span>
              </>
            )}
          </ProgressBar>
          <Button onPress={plan.stop}>{PLAN_ANSWER.stop}</Button>
        </>
      )}
      {(plan.status === "stopped" || plan.status === "failed") && <Button onPress={plan.again}>{PLAN_ANSWER.goOn}</Button>}
      {plan.status === "done" && <span className="done">{PLAN_ANSWER.stages.done}</span>}
    </div>
  );
}

/** What stands in the way of an answer. */
function Trouble({ plan, pictureFailure }: { readonly plan: RunningPlan; readonly pictureFailure: string | null }) {
  const broken = plan.failure ?? pictureFailure;
  if (plan.status === "stopped") return <p role="status">{PLAN_ANSWER.stopped}</p>;
  if (broken !== null) return <p role="alert">{PLAN_ANSWER.failed(broken)}</p>;
  if (plan.status !== "refused") return null;
  return (
    <div role="alert" className="trouble">
      <p>{plan.answered === null ? PLAN_ANSWER.refusedFirst : PLAN_ANSWER.refused}</p>
      <ul>
        {plan.problems.map((p) => (
          <li key={p.path}>
            <code>{p.path}</code>: {PLAN_FORM.allowed(p.value, p.allowed)}
          </li>
        ))}
      </ul>
    </div>
  );
}
