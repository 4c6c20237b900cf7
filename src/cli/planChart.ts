import type { LaneChartInput } from "#drawing/laneChart";
import { courseOf, filmOf } from "#engine/planning/pictures";
import type { FinishPlan } from "#engine/planning/plan";
import type { PlanQuestion } from "#engine/planning/question";
import { parseFinish } from "#engine/surface/finish";
import { HEADINGS } from "#words/en/planReport";

/**
 * The lane chart of a plan: every candidate that has a line on its own best line, today's finish on today's line, the pick in front.
 * Today's finish is drawn once: on the line it is played on.
 */
export function planChart(question: PlanQuestion, plan: FinishPlan): LaneChartInput {
  const { today } = plan;
  const picked = plan.pick?.finish ?? null;
  const onOwnLine = plan.candidates.flatMap(({ finish, line }) => (line === null ? [] : [{ finish, line }]));
  const others = onOwnLine
    .filter(({ finish }) => finish !== picked && finish !== today.finish)
    .map((course) => ({ ...course, name: course.finish, emphasis: "other" as const }));
  const played =
    today.line === null || today.finish === null
      ? []
      : [{ finish: today.finish, line: today.line, name: `${today.finish}, ${HEADINGS.today}`, emphasis: "today" as const }];
  const pick = onOwnLine
    .filter(({ finish }) => finish === picked)
    .map((course) => ({ ...course, name: `${course.finish}, ${HEADINGS.pick}`, emphasis: "pick" as const }));
  return {
    film: filmOf(question),
    hand: question.bowler.hand,
    title: question.ball.name,
    courses: [...others, ...played, ...pick].map(({ finish, line, name, emphasis }) => ({
      name,
      finish: parseFinish(finish),
      course: courseOf(question, parseFinish(finish), line),
      emphasis,
    })),
  };
}
