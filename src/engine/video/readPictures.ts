import type { Hand } from "../delivery/bowler.ts";
import { FOOT } from "../units.ts";
import { PicturesForBackground } from "./background.ts";
import { BallFinder } from "./findBall.ts";
import { findLane, type LaneFound, Stillness, type Tap } from "./findLane.ts";
import { followBalls, type TimedCandidate } from "./followBall.ts";
import { USUAL_RADIUS } from "./freeFriction.ts";
import { type OutlineSeen, outlineNear } from "./outline.ts";
import { ballPlace } from "./pinhole.ts";
import type { Frame } from "./pixels.ts";
import { type Refusal, readSightings, type VideoRead } from "./readSightings.ts";
import { median, quantile } from "./robust.ts";
import type { BallSeen, TrackerErrors } from "./sightings.ts";

/** A picture and its own time, s. The bytes may be used again for the next one. */
export interface TimedFrame extends Frame {
  readonly t: number;
}

/** A film that can be run through more than once. */
export interface Film {
  readonly run: () => AsyncIterable<TimedFrame>;
  readonly taps: readonly Tap[];
  readonly hand: Hand;
  /** How the camera reads its pictures out; a telephone's is not known. */
  readonly readout: Pick<TrackerErrors, "readoutS" | "readoutWithinS">;
}

/** Ball and lane differ by less, grey levels: not told apart. */
const LEAST_CONTRAST = 50;
/** Less of the edges than this is found: the lane is not where the taps say. */
const LEAST_EDGES = 0.45;
/** A camera on a stand moves its picture less than this, px, in four of five pictures. */
const MOST_MOVED_PX = 0.6;
const STILL_EVERY = 6;
/** Up to here an outline of the wrong size, px, is half something else. */
const SIZE_HELD_TO = 50 * FOOT;
const SIZE_WITHIN_PX = 0.45;
/** Shift that all outlines of a shot share: mirror, sheen, shade. Seen on computed films. */
const BIAS_PX = { u: 0.12, v: 0.3 };

/** From the pictures of a film to its shots: the film is run through twice, first for what stands still. */
export async function readPictures(film: Film): Promise<VideoRead> {
  const still = new PicturesForBackground();
  for await (const frame of film.run()) still.look(frame);
  const background = still.background();
  if (background === null) return refused("noPictures", {});
  const lane = findLane(background, film.taps);
  const { looked, found } = lane.edges;
  if (looked === 0 || found / looked < LEAST_EDGES) return refused("noEdges", { found, looked });
  const { camera } = lane.calibrated;
  const finder = new BallFinder(background, camera);
  const stillness = new Stillness(background, camera);
  const moved: number[] = [];
  let picture = 0;
  const outlines = new Map<TimedCandidate, OutlineSeen>();
  for await (const frame of film.run()) {
    if (picture++ % STILL_EVERY === 0) moved.push(stillness.movedPx(frame));
    for (const candidate of finder.find(frame)) {
      const outline = outlineNear(frame, background, camera, candidate);
      const place = outline && ballPlace(camera, outline, USUAL_RADIUS);
      if (outline && place) outlines.set({ ...candidate, ...place, t: frame.t }, outline);
    }
  }
  const px = quantile(moved, 0.8);
  if (px > MOST_MOVED_PX) return refused("cameraMoved", { px });
  return readRuns(
    film,
    lane,
    followBalls([...outlines.keys()]).map((run) => run.map((one) => ({ one, outline: outlines.get(one) as OutlineSeen }))),
  );
}

type Seen = readonly { readonly one: TimedCandidate; readonly outline: OutlineSeen }[];

/** Each run by itself: another lane's ball, or one that hardly differs from its lane, spoils none but its own. */
function readRuns({ hand, readout }: Film, { marks, calibrated }: LaneFound, runs: readonly Seen[]): VideoRead {
  if (runs.length === 0) return refused("noBall", {});
  const reads = runs.map((run): VideoRead => {
    const contrast = median(run.map(({ outline }) => outline.contrast));
    if (contrast < LEAST_CONTRAST) return refused("noContrast", { levels: contrast, least: LEAST_CONTRAST });
    const seen = run.flatMap(({ one, outline }): BallSeen[] => {
      const isRight = one.y > SIZE_HELD_TO || Math.abs(outline.larger) < SIZE_WITHIN_PX + 0.02 * outline.radius;
      return isRight ? [{ t: one.t, u: outline.u, v: outline.v, radius: outline.radius }] : [];
    });
    return readSightings({ picture: calibrated.camera.picture, hand, marks, seen, errors: { biasPx: BIAS_PX, ...readout } });
  });
  return { shots: reads.flatMap(({ shots }) => shots), refused: reads.flatMap((read) => read.refused) };
}

function refused(id: Refusal["id"], params: Refusal["params"]): VideoRead {
  return { shots: [], refused: [{ id, params }] };
}
