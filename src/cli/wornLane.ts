import type { CheckedJob } from "#contract/job/jobFile";
import { resolvePlan, type UnaimedShot } from "#contract/resolve/question";
import type { FilmSheet } from "#engine/lane/filmSheet";
import type { FilmPoint } from "#engine/lane/lane";
import { filmOf } from "#engine/planning/pictures";

/** Behind the end of the pattern there is a tail of oil; the film is given to the pins so that none of it is cut off. */
const TO_THE_PINS_FT = 60;

/**
 * The surface that a shot runs on. A single shot knows fresh patterns only; where shots have been played before it, the film they leave is
 * computed as a plan computes it, and handed over board by board and half foot by half foot.
 */
export function surfaceFor(job: CheckedJob, asked: UnaimedShot): UnaimedShot["surface"] {
  if (asked.surface.kind === "given" || asked.surface.lane.playedShots === 0) return asked.surface;
  const film = filmOf(resolvePlan(job).question);
  return {
    kind: "lane",
    lane: { playedShots: 0, pattern: { kind: "filmPoints", name: "", lengthFt: TO_THE_PINS_FT, points: pointsOf(film) } },
  };
}

function pointsOf({ um, columns, firstFt, stepFt }: FilmSheet): FilmPoint[] {
  return um.map((thickness, index) => ({
    board: (index % columns) + 1,
    ft: firstFt + Math.floor(index / columns) * stepFt,
    um: thickness,
  }));
}
