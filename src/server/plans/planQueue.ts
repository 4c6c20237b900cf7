import type { FinishPlan } from "#engine/planning/plan";
import type { PlanQuestion } from "#engine/planning/question";
import type { Executor } from "#tasks/executor";
import { type PlanProgress, runPlan } from "#tasks/planTask";

export type PlanState = "waiting" | "running" | "done" | "failed" | "stopped";

/** One plan that was asked for. */
export interface PlanJob {
  readonly id: string;
  /** Whose it is; a person's plans wait behind that person's other plans only. */
  readonly client: string;
  readonly question: PlanQuestion;
  readonly state: PlanState;
  readonly progress: { readonly stage: PlanProgress["stage"]; readonly done: number; readonly of: number } | null;
  readonly plan: FinishPlan | null;
  /** Why it failed: what runPlan threw. */
  readonly reason: unknown;
}

interface Entry extends PlanJob {
  state: PlanState;
  progress: PlanJob["progress"];
  plan: FinishPlan | null;
  reason: unknown;
  readonly stop: AbortController;
  readonly listeners: Set<(job: PlanJob) => void>;
}

export interface PlanQueue {
  /** Null where the client has as many under way as one may have. */
  ask(id: string, client: string, question: PlanQuestion): PlanJob | null;
  find(id: string): PlanJob | null;
  /** Stops a plan that waits or runs; one that has ended stays as it is. */
  stop(id: string): PlanJob | null;
  /** Calls at every news until the plan has ended or the returned function is called. */
  listen(id: string, listener: (job: PlanJob) => void): () => void;
  /** How many wait and how many are computed. */
  counts(): Readonly<Record<"waiting" | "running", number>>;
  /** Stops everything; nothing more is taken. */
  close(): Promise<void>;
}

export interface PlanLimits {
  readonly plansAtOnce: number;
  readonly plansPerPerson: number;
}

/** Plans that have ended are kept this long in number; whoever wants one for good keeps it with its ticket. */
const MOST_KEPT = 50;

/**
 * Plans in the order in which they are computed: clients take turns, so that one who asks for many does not make the others wait for all of them.
 *
 * @param executor where the units are computed
 */
export function planQueue(executor: Executor, limits: PlanLimits): PlanQueue {
  const entries = new Map<string, Entry>();
  const running = new Map<Entry, Promise<void>>();
  let lastServed: readonly string[] = [];

  const tell = (entry: Entry): void => {
    for (const listener of [...entry.listeners]) listener(entry);
    if (hasEnded(entry)) entry.listeners.clear();
  };
  const end = (entry: Entry, state: PlanState): void => {
    entry.state = state;
    tell(entry);
    forgetOldest(entries);
  };
  const next = (): void => {
    while (running.size < limits.plansAtOnce) {
      const entry = nextInTurn(
        [...entries.values()].filter(({ state }) => state === "waiting"),
        lastServed,
      );
      if (entry === null) return;
      lastServed = [...lastServed.filter((client) => client !== entry.client), entry.client];
      entry.state = "running";
      running.set(entry, compute(entry));
    }
  };
  const compute = async (entry: Entry): Promise<void> => {
    try {
      entry.plan = await runPlan(entry.question, {
        executor,
        signal: entry.stop.signal,
        onProgress: ({ stage, done, of }) => {
          entry.progress = { stage, done, of };
          tell(entry);
        },
      });
      end(entry, "done");
    } catch (reason) {
      entry.reason = reason;
      end(entry, entry.stop.signal.aborted ? "stopped" : "failed");
    } finally {
      running.delete(entry);
      next();
    }
  };
  const stop = (id: string): PlanJob | null => {
    const entry = entries.get(id);
    if (entry === undefined) return null;
    const waits = entry.state === "waiting";
    entry.stop.abort(new Error("The plan was stopped."));
    if (waits) end(entry, "stopped");
    return entry;
  };
  let isClosed = false;
  return {
    ask(id, client, question) {
      const underWay = [...entries.values()].filter((entry) => entry.client === client && !hasEnded(entry)).length;
      if (isClosed || underWay >= limits.plansPerPerson) return null;
      const entry = newEntry(id, client, question);
      entries.set(id, entry);
      next();
      return entry;
    },
    find: (id) => entries.get(id) ?? null,
    stop,
    listen(id, listener) {
      const listeners = entries.get(id)?.listeners;
      listeners?.add(listener);
      return () => listeners?.delete(listener);
    },
    counts() {
      const inState = (state: PlanState) => [...entries.values()].filter((entry) => entry.state === state).length;
      return { waiting: inState("waiting"), running: inState("running") };
    },
    async close() {
      isClosed = true;
      for (const id of entries.keys()) stop(id);
      await Promise.all(running.values());
    },
  };
}

export function hasEnded({ state }: Pick<PlanJob, "state">): boolean {
  return state === "done" || state === "failed" || state === "stopped";
}

function newEntry(id: string, client: string, question: PlanQuestion): Entry {
  return {
    id,
    client,
    question,
    state: "waiting",
    progress: null,
    plan: null,
    reason: null,
    stop: new AbortController(),
    listeners: new Set(),
  };
}

/** The first waiting plan of the client who has gone longest without a turn. */
function nextInTurn(waiting: readonly Entry[], lastServed: readonly string[]): Entry | null {
  const turn = ({ client }: Entry): number => lastServed.indexOf(client);
  return waiting.reduce<Entry | null>((best, entry) => (best === null || turn(entry) < turn(best) ? entry : best), null);
}

function forgetOldest(entries: Map<string, Entry>): void {
  const ended = [...entries.values()].filter(hasEnded);
  for (const { id } of ended.slice(0, Math.max(0, ended.length - MOST_KEPT))) entries.delete(id);
}
