import { startTransition, useEffect, useState } from "react";
import type { FinishPlan } from "#engine/planning/plan";
import type { PlanQuestion } from "#engine/planning/question";
import { WORLDS } from "#engine/planning/worldCounts";
import type { FinishLoss } from "#tasks/losses";
import { type PlanProgress, runPlan } from "#tasks/planTask";
import type { FieldProblem } from "../../client/protocol.ts";
import type { WorkerPool } from "../../client/workerPool.ts";
import { Refused } from "../../client/workerQueue.ts";
import type { JobDraft } from "../../jobFile/jobDraft.ts";

/** An answer and the question it answers; while a new one is computed the old one stands. */
export interface Answered {
  readonly question: PlanQuestion;
  readonly defaults: readonly string[];
  readonly plan: FinishPlan;
  readonly losses: readonly FinishLoss[];
}

export interface PlanState {
  readonly status: "working" | "done" | "refused" | "stopped" | "failed";
  readonly answered: Answered | null;
  /** Whether that answer is there; it may still be refined in further worlds while somebody looks at it. */
  readonly isFinal: boolean;
  readonly progress: Pick<PlanProgress, "stage" | "done" | "of"> | null;
  readonly problems: readonly FieldProblem[];
  /** What broke, where something of ours did. */
  readonly failure: string | null;
}

export interface RunningPlan extends PlanState {
  stop(): void;
  again(): void;
}

const STOPPED = new DOMException("Stopped by the person in front of the page.", "AbortError");
const REPLACED = new DOMException("The question has changed.", "AbortError");
const NOTHING: PlanState = { status: "working", answered: null, isFinal: false, progress: null, problems: [], failure: null };

/** Keeps the plan of the job in the form: computed at once, refined while one looks, begun anew when the job changes. */
export function usePlan(job: JobDraft, pool: WorkerPool): RunningPlan {
  const [state, setState] = useState<PlanState>(NOTHING);
  const [round, setRound] = useState(0);
  const [control, setControl] = useState<AbortController | null>(null);

  // `round` is not read inside: a new round asks the same question again.
  // biome-ignore lint/correctness/useExhaustiveDependencies: see above
  useEffect(() => {
    const stopping = new AbortController();
    setControl(stopping);
    const update = (change: (old: PlanState) => PlanState): void => {
      if (stopping.signal.reason !== REPLACED) startTransition(() => setState(change));
    };
    answer(job, pool, stopping.signal, update).catch((error: unknown) => update((old) => failedState(old, error)));
    return () => stopping.abort(REPLACED);
  }, [job, pool, round]);

  return { ...state, stop: () => control?.abort(STOPPED), again: () => setRound((n) => n + 1) };
}

async function answer(
  job: JobDraft,
  pool: WorkerPool,
  signal: AbortSignal,
  update: (change: (old: PlanState) => PlanState) => void,
): Promise<void> {
  update((old) => ({ ...old, status: "working", progress: null, failure: null }));
  const asked = await pool.call({ kind: "ask", job }, signal);
  if (asked.kind === "problems") {
    update((old) => ({ ...old, status: "refused", problems: asked.problems }));
    return;
  }
  const { question, defaults } = asked;
  update((old) => ({ ...old, problems: [] }));
  const onProgress = ({ plan, losses, stage, isRefining, done, of }: PlanProgress): void =>
    update((old) => {
      const isNew = plan !== null && old.answered?.plan !== plan;
      const next: PlanState = isRefining
        ? { ...old, status: "done", isFinal: true, progress: null }
        : { ...old, progress: { stage, done, of } };
      return isNew ? { ...next, isFinal: isRefining, answered: { question, defaults, plan, losses } } : next;
    });
  await runPlan(question, { executor: pool, signal, onProgress, refinedTo: WORLDS.refined });
  update((old) => ({ ...old, status: "done", isFinal: true, progress: null }));
}

function failedState(old: PlanState, error: unknown): PlanState {
  if (error === STOPPED) return { ...old, status: "stopped", progress: null };
  if (error instanceof Refused) return { ...old, status: "refused", problems: error.problems, progress: null };
  return { ...old, status: "failed", progress: null, failure: error instanceof Error ? error.message : String(error) };
}
