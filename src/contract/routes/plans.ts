import { z } from "zod";
import { jobFileSchema } from "../job/jobFile.ts";
import { planDocumentSchema } from "../planDocument.ts";
import { idParams } from "./parts.ts";
import { fieldProblemSchema } from "./problemDocument.ts";
import { answers, json, route } from "./route.ts";

/** How a plan that was asked for stands. */
export const planTaskSchema = z.strictObject({
  id: z.string(),
  state: z.enum(["waiting", "running", "done", "failed", "stopped"]),
  /** Units done and in all; null until the first is done. */
  progress: z.strictObject({ stage: z.enum(["sketch", "session", "draws"]), done: z.int(), of: z.int() }).nullable(),
  /** The plan, once it is done. */
  plan: planDocumentSchema.nullable(),
  /** Why it failed; empty unless the question could not be answered as put. */
  problems: z.array(fieldProblemSchema),
});
export type PlanTask = z.output<typeof planTaskSchema>;

const plan = { params: idParams, path: "/api/plans/:id" } as const;

/** Finish plans as long tasks: asked for, listened to, stopped. They are forgotten in time; what is to stay is kept with its ticket. */
export const planRoutes = {
  askPlan: route({
    least: "technician",
    method: "post",
    path: "/api/plans",
    does: "Begins to compute the finish plan of a job file",
    body: json(jobFileSchema),
    answer: answers(planTaskSchema, 202),
    location: "/api/plans/:id",
  }),
  getPlan: route({
    least: "reader",
    ...plan,
    method: "get",
    does: "How a plan stands, and the plan once it is done",
    answer: answers(planTaskSchema),
  }),
  stopPlan: route({
    least: "technician",
    ...plan,
    method: "delete",
    does: "Stops a plan; one that has ended stays as it is",
    answer: answers(planTaskSchema),
  }),
  hearPlan: route({
    least: "reader",
    method: "get",
    path: "/api/plans/:id/events",
    params: idParams,
    does: "Tells how a plan gets on, until it has ended",
    answer: { kind: "events", status: 200, events: { plan: planTaskSchema } },
  }),
};
