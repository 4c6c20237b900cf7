import type { FrictionField } from "../contact/friction.ts";
import type { Bowler, Line } from "../delivery/bowler.ts";
import { release } from "../delivery/release.ts";
import { HEAD_PIN, LANE_EDGE, PINS_PLANE } from "../lane/geometry.ts";
import { type AveragedBall, emptyRun, runAveraged, TRACE_WIDTH, type Trace } from "./averaged.ts";
import type { Course } from "./course.ts";
import { courseOfMoments } from "./courseOfMoments.ts";
import type { Moment } from "./phases.ts";

/** The course of one ball by the averaged model, from the foul line to the head pin. */
export function averagedCourse(ball: AveragedBall, friction: FrictionField, bowler: Bowler, line: Line): Course {
  const trace: Trace = [];
  const start = release(bowler, line);
  runAveraged(ball, friction, start, 0, emptyRun(), trace, HEAD_PIN);
  const moments: Moment[] = [];
  for (let row = 0; row < trace.length; row += TRACE_WIDTH) {
    moments.push({ y: trace[row], x: trace[row + 1], t: trace[row + 6], slip: Math.hypot(trace[row + 4], trace[row + 5]) });
  }
  const atPins = emptyRun();
  runAveraged(ball, friction, start, 0, atPins, null, PINS_PLANE);
  const onLane = atPins.reached === 1 && moments.every((moment) => Math.abs(moment.x) <= LANE_EDGE);
  return courseOfMoments(moments, bowler.hand, onLane ? { x: atPins.x, v: [atPins.vx, atPins.vy] } : null);
}
