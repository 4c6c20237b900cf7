import { useEffect, useRef, useState } from "react";
import type { FieldProblem, HouseAnswer } from "../../client/protocol.ts";
import type { WorkerPool } from "../../client/workerPool.ts";
import type { Json } from "../../jobFile/jobDraft.ts";

interface State {
  readonly status: "idle" | "working" | "done" | "stopped" | "failed";
  /** What was told last, and the file it answers. */
  readonly told: { readonly file: string; readonly answer: Extract<HouseAnswer, { kind: "told" }> } | null;
  readonly problems: readonly FieldProblem[];
  readonly failure: string | null;
}

const STOPPED = new DOMException("Stopped by the person in front of the page.", "AbortError");

/** What shots tell of a house, when it is asked for. */
export function useHouseAnswer(pool: WorkerPool) {
  const [state, setState] = useState<State>({ status: "idle", told: null, problems: [], failure: null });
  const control = useRef<AbortController | null>(null);
  const stop = () => control.current?.abort(STOPPED);
  // Nobody waits for it once the room is left.
  useEffect(() => () => control.current?.abort(STOPPED), []);

  const compute = (file: Json): void => {
    control.current = new AbortController();
    setState((old) => ({ ...old, status: "working", problems: [], failure: null }));
    pool.call({ kind: "correctHouse", file }, control.current.signal).then(
      (answer) =>
        setState((old) =>
          answer.kind === "problems"
            ? { ...old, status: "idle", problems: answer.problems }
            : { status: "done", told: { file: JSON.stringify(file), answer }, problems: [], failure: null },
        ),
      (error: unknown) =>
        setState((old) =>
          error === STOPPED
            ? { ...old, status: "stopped" }
            : { ...old, status: "failed", failure: error instanceof Error ? error.message : String(error) },
        ),
    );
  };
  return { ...state, compute, stop };
}
