import type { Predicted } from "#contract/records/predicted";
import { simplified } from "#drawing/simplify";
import type { Course } from "#engine/motion/course";
import { courseOf, filmOf } from "#engine/planning/pictures";
import type { FinishPlan } from "#engine/planning/plan";
import type { PlanQuestion } from "#engine/planning/question";
import { parseFinish } from "#engine/surface/finish";

export interface PredictWanted {
  readonly question: PlanQuestion;
  readonly plan: FinishPlan;
  /** The finish that is taken. */
  readonly finish: string;
  readonly madeAt: string;
}

/** What the bowler will notice of a finish that is taken from a plan; null where either finish has no line, or nobody knows what is on the ball today. */
export function predictedOf({ question, plan, finish, madeAt }: PredictWanted): Predicted | null {
  const { line } = plan.candidates.find((candidate) => candidate.finish === finish) ?? { line: null };
  const { finish: from, line: before } = plan.today;
  if (line === null || before === null || from === null) return null;
  const was = courseOf(question, question.ball.finish, before);
  const sameLine = courseOf(question, parseFinish(finish), before);
  const now = courseOf(question, parseFinish(finish), line);
  return {
    madeAt,
    from,
    to: finish,
    hand: question.bowler.hand,
    hookLaterFt: less(sameLine.hookStartFt, was.hookStartFt),
    moveInBoards: line.laydownBoard - before.laydownBoard,
    sharperDeg: less(now.entryAngleDeg, was.entryAngleDeg),
    oilFt: filmOf(question).lengthFt,
    was: kept(was),
    now: kept(now),
  };
}

function less(a: number | null, b: number | null): number | null {
  return a === null || b === null ? null : a - b;
}

/** Boards that a small picture does not show. */
const TOLERANCE = 0.05;
const MOST_POINTS = 60;

function kept({ hookStartFt, rollStartFt, boardAtPins, points }: Course): Predicted["was"] {
  const all = points.filter(({ yFt }) => yFt >= 0).map(({ yFt, board }): [number, number] => [yFt, board]);
  const few = simplified(all, TOLERANCE);
  const every = Math.ceil(few.length / MOST_POINTS);
  const shown = few.filter((_, i) => i % every === 0 || i === few.length - 1);
  return {
    hookStartFt,
    rollStartFt,
    boardAtPins,
    points: shown.slice(0, MOST_POINTS).map(([ft, board]) => [ft, board] as [number, number]),
  };
}
