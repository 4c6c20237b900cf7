import { jobOfPlan } from "#contract/job/writeJob";
import type { PlanDocument } from "#contract/planDocument";
import type { Resolved } from "#contract/resolve/question";
import type { Message } from "#engine/message";
import type { FinishPlan } from "#engine/planning/plan";
import type { PlanQuestion } from "#engine/planning/question";
import { assumptionText } from "#words/assumptionText";
import { messageText } from "#words/messageText";
import { oilOf } from "./oilOf.ts";

/** A plan as data, with the sentences beside the ids. */
export function planDocumentOf(plan: FinishPlan, { question, defaults }: Resolved<PlanQuestion>, engineVersion: string): PlanDocument {
  return {
    gritwright: 1,
    kind: "plan",
    engineVersion,
    seed: question.seed,
    inputs: jobOfPlan(question),
    defaults: [...defaults],
    metric: plan.metric,
    ensemble: plan.ensemble,
    worlds: plan.worlds,
    oil: oilOf(question.lane.pattern),
    today: { ...plan.today },
    candidates: plan.candidates.map((candidate) => ({ ...candidate })),
    pick: plan.pick === null ? null : { ...plan.pick, plateau: [...plan.pick.plateau] },
    messages: plan.messages.map(messageDocument),
    reasons: plan.reasons.map(messageDocument),
    rules: plan.rules.map(({ rule, agrees, message, why }) => ({
      rule,
      agrees,
      text: messageText(message),
      why: why === null ? null : messageDocument(why),
    })),
    assumptions: plan.assumptions.map((assumption) => ({ ...assumption, text: assumptionText(assumption) })),
    cautions: plan.cautions.map(messageDocument),
  };
}

function messageDocument(message: Message) {
  return { id: message.id, params: { ...message.params }, text: messageText(message) };
}
