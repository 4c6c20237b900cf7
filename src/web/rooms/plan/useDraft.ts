import { useEffect, useReducer } from "react";
import { recall, remember } from "../../client/memory.ts";
import { isJobDraft, type JobDraft, type Json, withValue } from "../../jobFile/jobDraft.ts";

/** The job that a form opens with, and the name under which this browser remembers what becomes of it. */
export interface Beginning {
  readonly job: JobDraft;
  readonly memory: string;
}

/** The job in the form, and the ways to change it. Every change can be taken back; the draft survives a reload. */
export interface Draft {
  readonly job: JobDraft;
  readonly canUndo: boolean;
  set(path: string, value: Json | undefined): void;
  /** Several fields as one change. */
  setAll(changes: Readonly<Record<string, Json | undefined>>): void;
  replace(job: JobDraft): void;
  undo(): void;
}

interface State {
  readonly job: JobDraft;
  /** Earlier states, the latest last, with the field whose change ended each. */
  readonly past: readonly { readonly job: JobDraft; readonly changed: string }[];
}

type Change = { readonly changed: string; readonly job: (old: JobDraft) => JobDraft } | "undo";

const MOST_UNDO = 200;

/** Typing on in one field is one change, so that undo takes back a thought and not a letter. */
function changed(state: State, change: Change): State {
  if (change === "undo") {
    const last = state.past.at(-1);
    return last === undefined ? state : { job: last.job, past: state.past.slice(0, -1) };
  }
  const job = change.job(state.job);
  const sameField = state.past.at(-1)?.changed === change.changed;
  return { job, past: sameField ? state.past : [...state.past, { job: state.job, changed: change.changed }].slice(-MOST_UNDO) };
}

export function useDraft(beginning: Beginning): Draft {
  const [state, dispatch] = useReducer(changed, beginning, (from): State => ({ job: remembered(from), past: [] }));
  // An untouched job is not remembered: the next time the form opens with what the records say then.
  useEffect(() => {
    remember(beginning.memory, JSON.stringify(state.job === beginning.job ? null : state.job));
  }, [state.job, beginning]);
  return {
    job: state.job,
    canUndo: state.past.length > 0,
    set: (path, value) => dispatch({ changed: path, job: (old) => withValue(old, path, value) }),
    setAll: (changes) =>
      dispatch({
        changed: Object.keys(changes).join(" "),
        job: (old) => Object.entries(changes).reduce((job, [path, value]) => withValue(job, path, value), old),
      }),
    replace: (job) => dispatch({ changed: "the whole job", job: () => job }),
    undo: () => dispatch("undo"),
  };
}

function remembered({ job: fallback, memory }: Beginning): JobDraft {
  const text = recall(memory);
  if (text === null) return fallback;
  try {
    const job: unknown = JSON.parse(text);
    return isJobDraft(job) ? job : fallback;
  } catch {
    // A draft that was cut off while being written is no draft.
    return fallback;
  }
}
