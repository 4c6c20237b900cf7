import type { Line } from "../delivery/bowler.ts";
import { handed } from "../lane/film.ts";
import { toFilmSheet } from "../lane/filmMap.ts";
import type { FilmSheet } from "../lane/filmSheet.ts";
import { averagedCourse } from "../motion/averagedCourse.ts";
import type { Course } from "../motion/course.ts";
import { type HitPoint, leaveSeen, type StrikeMap } from "../pins/carry.ts";
import { type LeaveMeaning, leaveMeaning } from "../pins/explain.ts";
import { parseLeave } from "../pins/leave.ts";
import type { Finish } from "../surface/finish.ts";
import { groundOf, throwerOn } from "./ground.ts";
import { hitsOn } from "./hits.ts";
import type { PlanQuestion } from "./question.ts";
import { leaveSample } from "./rating.ts";
import { filmFound } from "./session.ts";

/** The course of the mean shot with a finish on a line, on the lane as found. */
export function courseOf(question: PlanQuestion, finish: Finish, line: Line): Course {
  const ground = groundOf(question);
  const thrower = throwerOn(filmFound(ground), question, finish, ground.assumed);
  return averagedCourse(thrower.ball, thrower.friction, question.bowler, line);
}

/** Where the bowler's shots with a finish on a line meet the pins, on the lane as found. */
export function hitsOf(question: PlanQuestion, finish: Finish, line: Line): readonly HitPoint[] {
  const ground = groundOf(question);
  return hitsOn(throwerOn(filmFound(ground), question, finish, ground.assumed), question.ball.massLb, line, leaveSample());
}

/** Strike chance over board and entry angle for this bowler's usual speed and this ball's weight. */
export function strikesOf(question: PlanQuestion): StrikeMap {
  return groundOf(question).carry;
}

/** What a leave of the plan tells, as the bowler sees it. @param leave as the plan writes it, `2-8-10` */
export function meaningOf(question: PlanQuestion, leave: string): LeaveMeaning | null {
  const seen = leaveSeen(parseLeave(leave, "leave"), question.bowler.hand);
  return leaveMeaning(seen, groundOf(question).carry);
}

/** The film on the lane as found, from the lane's right edge. */
export function filmOf(question: PlanQuestion): FilmSheet {
  return toFilmSheet(handed(filmFound(groundOf(question)), question.bowler.hand));
}
