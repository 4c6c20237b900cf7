import { startTransition, useEffect, useRef, useState } from "react";
import type { GameRanges } from "#engine/planning/oilInPlay/inWorlds";
import type { LaneNow } from "#engine/planning/oilInPlay/session";
import { rangesOfTransition, runTransition, type TransitionProgress } from "#tasks/transitionTask";
import type { FieldProblem, PlayedGame, PlayedLanes, TwoLayouts } from "../../client/protocol.ts";
import type { WorkerPool } from "../../client/workerPool.ts";
import { Refused } from "../../client/workerQueue.ts";
import type { Json } from "../../jobFile/jobDraft.ts";

/** A lane in play as far as it is through, the file it answers, and its pictures. */
export interface PlayedAnswer {
  readonly file: string;
  readonly played: PlayedLanes;
  /** As laid, and after each game that is through. */
  readonly games: readonly PlayedGame[];
  readonly strips: TwoLayouts;
  /** As far as the games are through, what each may come to in other worlds; null while they are being played. */
  readonly ranges: readonly GameRanges[] | null;
}

export interface TransitionState {
  readonly status: "idle" | "working" | "done" | "stopped" | "failed";
  readonly answer: PlayedAnswer | null;
  readonly progress: Pick<TransitionProgress, "done" | "of"> | null;
  readonly problems: readonly FieldProblem[];
  readonly failure: string | null;
}

const IDLE: TransitionState = { status: "idle", answer: null, progress: null, problems: [], failure: null };
const STOPPED = new DOMException("Stopped by the person in front of the page.", "AbortError");

type Update = (change: (old: TransitionState) => TransitionState) => void;

/** A lane in play when it is asked for, game by game; what was through when it was stopped stands. */
export function useTransition(pool: WorkerPool, titleOf: (game: number) => string) {
  const [state, setState] = useState<TransitionState>(IDLE);
  const control = useRef<AbortController | null>(null);
  const stop = () => control.current?.abort(STOPPED);
  // Nobody waits for it once the room is left.
  useEffect(() => () => control.current?.abort(STOPPED), []);

  const compute = (file: Json): void => {
    control.current = new AbortController();
    const update: Update = (change) => startTransition(() => setState(change));
    play(file, titleOf, pool, control.current.signal, update).catch((error: unknown) => update((old) => failed(old, error)));
  };
  return { ...state, compute, stop };
}

async function play(file: Json, titleOf: (game: number) => string, pool: WorkerPool, signal: AbortSignal, update: Update): Promise<void> {
  update((old) => ({ ...old, status: "working", progress: null, failure: null, problems: [] }));
  const asked = await pool.call({ kind: "askTransition", file }, signal);
  if (asked.kind === "problems") {
    update((old) => ({ ...old, status: "idle", problems: asked.problems }));
    return;
  }
  const { question } = asked;
  let games: readonly PlayedGame[] = [];
  const show = async (played: PlayedLanes): Promise<void> => {
    const title = titleOf(played.lanes.length - 1);
    games = [...games, await pool.call({ kind: "playedGame", played, title }, null)];
    const strips = await pool.call({ kind: "playedStrips", played }, null);
    const answer = { file: JSON.stringify(file), played, games, strips, ranges: null };
    update((old) => ({ ...old, answer }));
  };
  // One game is drawn after the other, while the next is being played.
  let drawn = Promise.resolve();
  let told = 0;
  const onProgress = ({ done, of, lanes }: TransitionProgress): void => {
    update((old) => ({ ...old, progress: { done, of } }));
    if (lanes.length === told) return;
    told = lanes.length;
    drawn = drawn.then(() => show({ question, lanes }));
  };
  let lanes: readonly LaneNow[];
  try {
    lanes = await runTransition(question, { executor: pool, signal, onProgress });
  } finally {
    await drawn;
  }
  update((old) => ({ ...old, status: "done", progress: null }));
  const ranges = await rangesOfTransition(question, lanes, { executor: pool, signal });
  update((old) => ({ ...old, answer: old.answer && { ...old.answer, ranges } }));
}

function failed(old: TransitionState, error: unknown): TransitionState {
  if (error === STOPPED) return { ...old, status: "stopped", progress: null };
  if (error instanceof Refused) return { ...old, status: "idle", problems: error.problems, progress: null };
  return { ...old, status: "failed", progress: null, failure: error instanceof Error ? error.message : String(error) };
}
