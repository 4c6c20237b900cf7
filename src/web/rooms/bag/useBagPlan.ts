import { startTransition, useState } from "react";
import type { BagPlan } from "#engine/planning/bag/bagPlan";
import { type BagProgress, runBag } from "#tasks/bagTask";
import type { FieldProblem, TwoLayouts } from "../../client/protocol.ts";
import type { WorkerPool } from "../../client/workerPool.ts";
import { Refused } from "../../client/workerQueue.ts";
import type { Json } from "../../jobFile/jobDraft.ts";

/** An answer, the file it answers, and its picture. */
export interface BagAnswer {
  readonly file: string;
  readonly plan: BagPlan;
  readonly picture: TwoLayouts;
  readonly stagesAGame: number;
}

export interface BagState {
  readonly status: "idle" | "working" | "done" | "stopped" | "failed";
  readonly answer: BagAnswer | null;
  readonly progress: Pick<BagProgress, "stage" | "done" | "of"> | null;
  readonly problems: readonly FieldProblem[];
  readonly failure: string | null;
}

const IDLE: BagState = { status: "idle", answer: null, progress: null, problems: [], failure: null };
const STOPPED = new DOMException("Stopped by the person in front of the page.", "AbortError");

/** The bag plan of a file, when it is asked for; the early answer stands until the last one is there. */
export function useBagPlan(pool: WorkerPool) {
  const [state, setState] = useState<BagState>(IDLE);
  const [control, setControl] = useState<AbortController | null>(null);

  const compute = (file: Json, today: string): void => {
    const stopping = new AbortController();
    setControl(stopping);
    const update = (change: (old: BagState) => BagState): void => startTransition(() => setState(change));
    work(file, today, pool, stopping.signal, update).catch((error: unknown) => update((old) => failed(old, error)));
  };
  return { ...state, compute, stop: () => control?.abort(STOPPED) };
}

async function work(
  file: Json,
  today: string,
  pool: WorkerPool,
  signal: AbortSignal,
  update: (change: (old: BagState) => BagState) => void,
): Promise<void> {
  update((old) => ({ ...old, status: "working", progress: null, failure: null, problems: [] }));
  const asked = await pool.call({ kind: "askBag", file, today }, signal);
  if (asked.kind === "problems") {
    update((old) => ({ ...old, status: "idle", problems: asked.problems }));
    return;
  }
  const { question } = asked;
  const show = async (plan: BagPlan): Promise<void> => {
    const picture = await pool.call({ kind: "bagPicture", plan }, signal);
    const answer = { file: JSON.stringify(file), plan, picture, stagesAGame: question.session.stagesAGame };
    update((old) => ({ ...old, answer }));
  };
  let shown: BagPlan | null = null;
  const onProgress = ({ stage, done, of, plan }: BagProgress): void => {
    update((old) => ({ ...old, progress: { stage, done, of } }));
    if (plan === null || plan === shown) return;
    shown = plan;
    show(plan).catch(() => undefined);
  };
  const plan = await runBag(question, { executor: pool, signal, onProgress });
  await show(plan);
  update((old) => ({ ...old, status: "done", progress: null }));
}

function failed(old: BagState, error: unknown): BagState {
  if (error === STOPPED) return { ...old, status: "stopped", progress: null };
  if (error instanceof Refused) return { ...old, status: "idle", problems: error.problems, progress: null };
  return { ...old, status: "failed", progress: null, failure: error instanceof Error ? error.message : String(error) };
}
