import type { CheckedJob } from "#contract/job/jobFile";
import { resolvePlan, type UnaimedShot } from "#contract/resolve/question";
import type { LaneChartInput } from "#drawing/laneChart";
import { filmFrom, toFilmSheet } from "#engine/lane/filmMap";
import type { FilmSheet } from "#engine/lane/filmSheet";
import type { Shot } from "#engine/motion/shot";
import { filmOf } from "#engine/planning/pictures";

/** The lane chart of one shot. */
export function shotChart(job: CheckedJob, asked: UnaimedShot, shot: Shot): LaneChartInput {
  return {
    film: asked.surface.kind === "lane" ? filmOf(resolvePlan(job).question) : bareLane(),
    hand: asked.bowler.hand,
    title: asked.ball.name,
    courses: [{ name: asked.bowler.name, finish: asked.ball.finish, course: shot.course, emphasis: "pick" }],
  };
}

/** Where friction is given outright there is no oil to draw. */
function bareLane(): FilmSheet {
  return toFilmSheet(filmFrom(0, () => 0));
}
