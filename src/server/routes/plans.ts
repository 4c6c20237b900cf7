import type { PlanTask, planRoutes } from "#contract/routes/plans";
import { ended } from "../http/events.ts";
import type { Handlers } from "../http/mount.ts";
import { Refusal } from "../http/refusal.ts";
import type { PlanBook } from "../plans/planBook.ts";

export function planHandlers(plans: PlanBook): Handlers<typeof planRoutes> {
  return {
    async askPlan({ body, by }) {
      const task = plans.ask(body, by);
      if (task === null) throw new Refusal("tooMany", { detail: "As many plans are under way as one person may have; stop one or wait." });
      return task;
    },
    getPlan: async ({ params }) => found(plans.find(params.id)),
    stopPlan: async ({ params }) => found(plans.stop(params.id)),
    async hearPlan({ params }) {
      found(plans.find(params.id));
      return async (send, signal) => {
        const over = new AbortController();
        const stop = plans.listen(params.id, (task) => {
          void send("plan", task).then(() => (hasEnded(task) ? over.abort() : undefined));
        });
        await ended(AbortSignal.any([signal, over.signal]));
        stop?.();
      };
    },
  };
}

function found(task: PlanTask | null): PlanTask {
  if (task === null) throw new Refusal("notFound", { detail: "There is no such plan, or it has been forgotten." });
  return task;
}

function hasEnded({ state }: PlanTask): boolean {
  return state === "done" || state === "failed" || state === "stopped";
}
