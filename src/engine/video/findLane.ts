import { LANE_EDGE } from "../lane/geometry.ts";
import { FOOT } from "../units.ts";
import type { Vector } from "../vector.ts";
import { type Calibrated, calibrate, type LaneMark } from "./calibrate.ts";
import { ARROWS, arrowOutline, PINS, pinOutline } from "./laneThings.ts";
import { matchOutlines } from "./matchOutlines.ts";
import { type Camera, type Pixel, project } from "./pinhole.ts";
import { brightnessAt, type Frame, peakBetween } from "./pixels.ts";
import { median } from "./robust.ts";

/** What a user pointed at. */
export interface Tap extends Pixel {
  readonly at: Vector;
}

export interface LaneFound {
  readonly calibrated: Calibrated;
  readonly marks: readonly LaneMark[];
  /** Places where an edge was looked for and found. */
  readonly edges: { readonly looked: number; readonly found: number };
}

/** How far an edge is looked for either way, px at 1920 across, round by round; less than half a gutter in any case. */
const SEARCH_PX = [14, 8, 5, 3, 3];
const EDGE_PLACES = 60;
const [EDGE_FROM, EDGE_TO] = [0.5 * FOOT, 56 * FOOT];
/** An edge changes the brightness by so much at least. */
const LEAST_STEP = 14;
/** How far a move is followed, px. */
const STILL_PX = 8;
/** Further beside the camera found than this, px, an edge was something else's. */
const EDGE_OFF_PX = 3;
/** Things that match their drawing worse than this are not there. */
const LEAST_MATCH = 0.5;
/** The foul line's dark strip, its middle. */
const FOUL_LINE = -0.02 * FOOT;

/** From the taps to the lane itself: edges, foul line, arrows and pins of the picture without a ball, looked for where the camera so far would see them. */
export function findLane(background: Frame, taps: readonly Tap[]): LaneFound {
  const picture = { width: background.width, height: background.height };
  let found: LaneFound = { calibrated: calibrate(picture, taps), marks: taps, edges: { looked: 0, found: 0 } };
  for (const search of SEARCH_PX) {
    const { camera } = found.calibrated;
    const reach = (search * Math.max(picture.width, picture.height)) / 1920;
    const edges = edgePlaces(camera).map((place) => edgeMark(background, camera, place, reach));
    const marks = [...edges, ...foulLineMarks(background, camera, reach), ...thingMarks(background, camera, reach)].filter(
      (mark) => mark !== null,
    );
    if (marks.length < 8) return { ...found, edges: { looked: edges.length, found: 0 } };
    const first = calibrate(picture, marks);
    const kept = marks.filter((_, i) => first.offPx[i] < Math.max(EDGE_OFF_PX, reach / 2));
    const isEdge = (mark: LaneMark) => Math.abs(Math.abs(mark.at[0]) - LANE_EDGE) < 1e-9;
    found = {
      calibrated: calibrate(picture, kept),
      marks: kept,
      edges: { looked: edges.length, found: kept.filter(isEdge).length },
    };
  }
  return found;
}

/** How far the lane's edges and its foul line lie beside where they lie in the background, px: the camera has moved. */
export class Stillness {
  readonly #camera: Camera;
  readonly #edges: readonly { readonly at: Vector; readonly mark: LaneMark }[];
  readonly #line: readonly (LaneMark | null)[];

  constructor(background: Frame, camera: Camera) {
    this.#camera = camera;
    this.#line = foulLineMarks(background, camera, STILL_PX);
    this.#edges = edgePlaces(camera).flatMap((at, i) => {
      const mark = i % 3 === 0 ? edgeMark(background, camera, at, STILL_PX) : null;
      return mark === null ? [] : [{ at, mark }];
    });
  }

  movedPx(frame: Frame): number {
    const across = this.#edges.flatMap(({ at, mark }) => {
      const now = edgeMark(frame, this.#camera, at, STILL_PX);
      return now === null ? [] : [Math.abs(now.u - mark.u)];
    });
    const now = foulLineMarks(frame, this.#camera, STILL_PX);
    const down = this.#line.flatMap((mark, i) => {
      const one = now[i];
      return mark === null || one === null ? [] : [Math.abs(one.v - mark.v)];
    });
    // Edges that are out of reach tell of a move too.
    if (across.length < this.#edges.length / 4) return STILL_PX;
    return Math.max(median(across), median(down));
  }
}

/** Evenly down the picture, so that the far end has as many as its pixels bear. */
function edgePlaces(camera: Camera): Vector[] {
  const { height, width } = camera.picture;
  const [top, bottom] = [EDGE_TO, EDGE_FROM].map((y) => project(camera, [0, y, 0]).v);
  const places: Vector[] = [];
  let y = EDGE_TO;
  for (let i = 0; i < EDGE_PLACES; i++) {
    const v = top + ((Math.min(height - 2, bottom) - top) * i) / (EDGE_PLACES - 1);
    while (y > EDGE_FROM && project(camera, [0, y, 0]).v < v) y -= 0.05 * FOOT;
    for (const side of [-1, 1]) {
      const seen = project(camera, [side * LANE_EDGE, y, 0]);
      if (seen.u > 4 && seen.u < width - 4 && seen.v > 4 && seen.v < height - 4) places.push([side * LANE_EDGE, y, 0]);
    }
  }
  return places;
}

/** Where along the picture's line the bright lane ends and the gutter begins. */
function edgeMark(background: Frame, camera: Camera, at: Vector, reach: number): LaneMark | null {
  const side = Math.sign(at[0]);
  const { u, v } = project(camera, at);
  const further = project(camera, [at[0], at[1] + 0.5 * FOOT, 0]);
  const gutter = Math.abs(project(camera, [at[0] + side * 0.4 * FOOT, at[1], 0]).u - u);
  const steps = Math.max(2, Math.round(Math.min(reach, gutter)));
  const heights = [-1, 0, 1];
  const slope = (further.u - u) / (further.v - v);
  const step = Array.from({ length: 2 * steps + 1 }, (_, i) => {
    const place = u + i - steps;
    return heights.reduce(
      (sum, h) =>
        sum +
        brightnessAt(background, place + slope * h - 1.25 * side, v + h) -
        brightnessAt(background, place + slope * h + 1.25 * side, v + h),
      0,
    );
  });
  const best = step.indexOf(Math.max(...step));
  if (best === 0 || best === step.length - 1 || step[best] < 3 * LEAST_STEP) return null;
  const [alongU, alongV] = [further.u - u, further.v - v];
  const length = Math.hypot(alongU, alongV);
  const found = u + best - steps + peakBetween(step[best - 1], step[best], step[best + 1]);
  return { u: found, v, at, across: [alongV / length, -alongU / length] };
}

/** The dark strip between approach and lane, at places across. */
function foulLineMarks(background: Frame, camera: Camera, reach: number): (LaneMark | null)[] {
  return Array.from({ length: 11 }, (_, i) => {
    const at: Vector = [((i - 5) / 6) * LANE_EDGE, FOUL_LINE, 0];
    const { u, v } = project(camera, at);
    const steps = Math.max(3, Math.round(reach));
    if (u < 2 || u > background.width - 2 || v < steps + 4 || v > background.height - steps - 4) return null;
    const dark = Array.from({ length: 2 * steps + 1 }, (_, k) => {
      const place = v + k - steps;
      return brightnessAt(background, u, place - 3) + brightnessAt(background, u, place + 3) - 2 * brightnessAt(background, u, place);
    });
    const best = dark.indexOf(Math.max(...dark));
    if (best === 0 || best === dark.length - 1 || dark[best] < 2 * LEAST_STEP) return null;
    return { u, v: v + best - steps + peakBetween(dark[best - 1], dark[best], dark[best + 1]), at, across: [0, 1] as const };
  });
}

/** Arrows tell of boards, but not of distance: lanes have them further up or down. The rack of pins is drawn whole. */
function thingMarks(background: Frame, camera: Camera, reach: number): LaneMark[] {
  const within = Math.max(3, Math.round(reach));
  const arrows = ARROWS.flatMap((tip): LaneMark[] => {
    const match = matchOutlines(background, [arrowOutline(tip).map((point) => project(camera, point))], within, "dark");
    if (match === null || match.likeness < LEAST_MATCH) return [];
    const at: Vector = [tip[0], tip[1] - 0.25 * FOOT, 0];
    const seen = project(camera, at);
    return [{ u: seen.u + match.u, v: seen.v + match.v, at, across: [1, 0] }];
  });
  const rack = matchOutlines(
    background,
    PINS.map(([x, y]) => pinOutline([x, y, 0]).map((point) => project(camera, point))),
    within,
    "bright",
  );
  if (rack === null || rack.likeness < LEAST_MATCH) return arrows;
  const pins = [PINS[0], PINS[6], PINS[9]].map(([x, y]): LaneMark => {
    const at: Vector = [x, y, 0.6 * FOOT];
    const seen = project(camera, at);
    return { u: seen.u + rack.u, v: seen.v + rack.v, at };
  });
  return [...arrows, ...pins];
}
