import type { CheckedJob } from "#contract/job/jobFile";
import { JobFault } from "#contract/problem";
import type { Ticket } from "#contract/records/ticket";
import { type Resolved, resolvePlan } from "#contract/resolve/question";
import type { PlanTask } from "#contract/routes/plans";
import { EngineFault } from "#engine/fault";
import type { PlanQuestion } from "#engine/planning/question";
import { fieldProblems } from "../http/faults.ts";
import { planDocumentOf } from "./planDocumentOf.ts";
import { hasEnded, type PlanJob, type PlanQueue } from "./planQueue.ts";

export type PlanToKeep = NonNullable<Ticket["plan"]>;

/** Plans that were asked for over the wire, as the wire tells of them. */
export interface PlanBook {
  /**
   * Null where the person has as many under way as one may have.
   *
   * @throws {JobFault} where the job file asks for no plan
   */
  ask(job: CheckedJob, by: string): PlanTask | null;
  find(id: string): PlanTask | null;
  stop(id: string): PlanTask | null;
  /** Calls now, at every news, and stops once the plan has ended; null where there is no such plan. */
  listen(id: string, tell: (task: PlanTask) => void): (() => void) | null;
  /** What is kept of a plan with a ticket; null where there is no such plan or it is not done. */
  toKeep(id: string): PlanToKeep | null;
}

export interface PlanBookParts {
  readonly plans: PlanQueue;
  readonly newId: () => string;
  readonly now: () => number;
  readonly version: string;
}

export function planBook({ plans, newId, now, version }: PlanBookParts): PlanBook {
  /** What was a default in the question is part of the answer, and the queue need not know of it. */
  const resolved = new WeakMap<PlanQuestion, Resolved<PlanQuestion>>();

  const documentOf = ({ plan, question }: PlanJob): PlanTask["plan"] => {
    const asked = resolved.get(question);
    return plan === null || asked === undefined ? null : planDocumentOf(plan, asked, version);
  };
  const taskOf = (job: PlanJob): PlanTask => ({
    id: job.id,
    state: job.state,
    progress: job.progress,
    plan: documentOf(job),
    problems: job.reason instanceof EngineFault || job.reason instanceof JobFault ? fieldProblems(job.reason) : [],
  });
  const taskOrNull = (job: PlanJob | null): PlanTask | null => (job === null ? null : taskOf(job));
  return {
    ask(job, by) {
      const asked = resolvePlan(job);
      resolved.set(asked.question, asked);
      return taskOrNull(plans.ask(newId(), by, asked.question));
    },
    find: (id) => taskOrNull(plans.find(id)),
    stop: (id) => taskOrNull(plans.stop(id)),
    listen(id, tell) {
      const job = plans.find(id);
      if (job === null) return null;
      tell(taskOf(job));
      return hasEnded(job) ? () => undefined : plans.listen(id, (news) => tell(taskOf(news)));
    },
    toKeep(id) {
      const job = plans.find(id);
      const document = job === null ? null : documentOf(job);
      if (document === null) return null;
      return {
        madeAt: new Date(now()).toISOString(),
        engineVersion: document.engineVersion,
        seed: document.seed,
        inputs: { ...document.inputs },
        assumptions: Object.fromEntries(document.assumptions.map((assumption) => [assumption.id, assumption.value])),
        pick: document.pick?.finish ?? null,
      };
    },
  };
}
