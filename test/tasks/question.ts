import { checkJob } from "#contract/job/checkJob";
import { resolvePlan } from "#contract/resolve/question";
import type { PlanQuestion } from "#engine/planning/question";

/** A small question of the usual kind: three finishes. */
export function exampleQuestion(): PlanQuestion {
  const job = {
    gritwright: 1,
    bowler: { speedMph: 17.5, revRateRpm: 320, axisRotationDeg: 45, axisTiltDeg: 14 },
    ball: { cover: "hybrid", finish: "1000" },
    lane: { pattern: "medium-41" },
    candidates: ["1000", "2000", "4000 + polish"],
  };
  return resolvePlan(checkJob(job)).question;
}
