import type { LaneChartInput } from "#drawing/laneChart";
import { courseOf, filmOf } from "#engine/planning/pictures";
import type { FinishPlan } from "#engine/planning/plan";
import type { PlanQuestion } from "#engine/planning/question";
import { parseFinish } from "#engine/surface/finish";
import { HEADINGS } from "#words/en/planReport";

/** The lane chart of a plan: every candidate that has a line on its own best line, the pick in front, today's finish on today's line. */
export function planChart(question: PlanQuestion, plan: FinishPlan): LaneChartInput {
  const picked = plan.pick?.finish ?? null;
  const others = plan.candidates.flatMap(({ finish, line }) => {
    if (line === null || finish === picked) return [];
    return [{ finish, line, name: finish, emphasis: "other" as const }];
  });
  const today =
    plan.today.line === null ? [] : [{ ...plan.today, line: plan.today.line, name: HEADINGS.today, emphasis: "today" as const }];
  const pick = plan.candidates.flatMap(({ finish, line }) => {
    if (line === null || finish !== picked) return [];
    return [{ finish, line, name: HEADINGS.pick, emphasis: "pick" as const }];
  });
  return {
    film: filmOf(question),
    hand: question.bowler.hand,
    title: question.ball.name,
    courses: [...others, ...today, ...pick].map(({ finish, line, name, emphasis }) => ({
      name,
      finish: parseFinish(finish),
      course: courseOf(question, parseFinish(finish), line),
      emphasis,
    })),
  };
}
