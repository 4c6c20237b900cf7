import { LANE_EDGE } from "../lane/geometry.ts";
import type { Message } from "../message.ts";
import { FOOT } from "../units.ts";
import { type Calibrated, calibrate, LEAST_MARKS } from "./calibrate.ts";
import { fitCourse } from "./fitCourse.ts";
import { columnAt, USUAL_RADIUS } from "./freeFriction.ts";
import { ballPlace, outlineOf } from "./pinhole.ts";
import { median } from "./robust.ts";
import { type Run, runsOf, startOfRun } from "./runs.ts";
import { type ShotRead, shotRead } from "./shotRead.ts";
import type { BallSeen, Sightings } from "./sightings.ts";

/** Why a video, or one shot of it, is not read. */
export const REFUSAL_IDS = [
  "noPictures",
  "noEdges",
  "cameraMoved",
  "noContrast",
  "fewMarks",
  "marksDisagree",
  "ballSize",
  "noBall",
  "fewPictures",
  "seenLate",
  "lostEarly",
  "clock",
  "offLane",
  "notLikeABall",
] as const;
export type RefusalId = (typeof REFUSAL_IDS)[number];
export type Refusal = Message<RefusalId>;

export interface VideoRead {
  readonly shots: readonly ShotRead[];
  readonly refused: readonly Refusal[];
}

/** A mark further beside its place than this, as a share of the picture's longer side, is on something else. */
const MARK_OFF_SHARE = 0.006;
/** A ball this much larger or smaller than its place makes it: the lane's scale is wrong. */
const SIZE_WITHIN = 0.07;
/** Fewer pictures than this tell no course, nor does one first seen later or lost earlier, ft. */
const LEAST_PICTURES = 20;
const FIRST_SEEN_FT = 20;
const LAST_SEEN_FT = 50;
/** A ball takes so long from the foul line to the head pin, s; a film that says otherwise has the wrong clock. */
const TO_PINS_S = { least: 1.8, most: 3.6 };
/** Half of the sightings lie nearer to a ball's course than this, px. */
const MOST_OFF_PX = { u: 0.5, v: 1 };

/** From sightings to shots: the camera, then each run of pictures by itself. What cannot be read is refused with its cause. */
export function readSightings(sightings: Sightings): VideoRead {
  const { picture, marks } = sightings;
  if (marks.length < LEAST_MARKS) return refusedAll("fewMarks", { marks: marks.length, least: LEAST_MARKS });
  const calibrated = calibrate(picture, marks);
  const worst = calibrated.offPx.reduce((most, off, i) => (off > calibrated.offPx[most] ? i : most), 0);
  if (calibrated.offPx[worst] > MARK_OFF_SHARE * Math.max(picture.width, picture.height))
    return refusedAll("marksDisagree", { mark: worst + 1, offPx: calibrated.offPx[worst] });
  if (sightings.seen.length === 0) return refusedAll("noBall", {});
  const size = sizeAgainstPlace(sightings.seen, calibrated);
  if (size === null || Math.abs(size - 1) > SIZE_WITHIN) return refusedAll("ballSize", { percent: 100 * ((size ?? 0) - 1) });

  const shots: ShotRead[] = [];
  const refused: Refusal[] = [];
  for (const run of runsOf(sightings.seen, calibrated.camera, size)) {
    const read = readRun(run, sightings, calibrated);
    if ("id" in read) refused.push(read);
    else shots.push(read);
  }
  if (shots.length === 0 && refused.length === 0) return refusedAll("noBall", {});
  return { shots, refused };
}

function refusedAll(id: RefusalId, params: Refusal["params"]): VideoRead {
  return { shots: [], refused: [{ id, params }] };
}

/** Radius seen over the radius that a ball has at its place; the median. Null where no sighting lies on the lane's plane. */
function sizeAgainstPlace(seen: readonly BallSeen[], { camera }: Calibrated): number | null {
  const sizes = seen.flatMap((ball) => {
    const place = ballPlace(camera, ball, USUAL_RADIUS);
    return place === null ? [] : [ball.radius / outlineOf(camera, [place.x, place.y, USUAL_RADIUS], USUAL_RADIUS).radius];
  });
  return sizes.length === 0 ? null : median(sizes);
}

function readRun(run: Run, { hand, errors }: Sightings, calibrated: Calibrated): ShotRead | Refusal {
  const side = hand === "left" ? -1 : 1;
  const at = { atS: run.balls[0].seen.t };
  if (run.balls.length < LEAST_PICTURES) return { id: "fewPictures", params: { ...at, pictures: run.balls.length, least: LEAST_PICTURES } };
  const first = run.balls[0].place.y / FOOT;
  const last = run.balls[run.balls.length - 1].place.y / FOOT;
  if (first > FIRST_SEEN_FT) return { id: "seenLate", params: { ...at, ft: first, mostFt: FIRST_SEEN_FT } };
  if (last < LAST_SEEN_FT) return { id: "lostEarly", params: { ...at, ft: last, leastFt: LAST_SEEN_FT } };
  const fit = fitCourse({ seen: run.balls.map(({ seen }) => seen), calibrated, errors, side }, startOfRun(run, side));
  const toPins = columnAt(fit.course.t, 60 * FOOT);
  if (toPins < TO_PINS_S.least || toPins > TO_PINS_S.most) return { id: "clock", params: { ...at, seconds: toPins, ...TO_PINS_S } };
  const furthest = Math.max(...fit.course.x.map(Math.abs));
  if (furthest > LANE_EDGE) return { id: "offLane", params: at };
  if (fit.medianPx.u > MOST_OFF_PX.u || fit.medianPx.v > MOST_OFF_PX.v)
    return { id: "notLikeABall", params: { ...at, px: Math.max(fit.medianPx.u, fit.medianPx.v) } };
  return shotRead(fit, { first, last });
}
