import type { Finish } from "#engine/surface/finish";
import { MEASURE } from "#words/en/rooms/measure";
import { PAGE_PAINT, type Paint, SERIF } from "./paint.ts";
import { HOLE, HOLES } from "./sideDiagram.ts";
import { el, type Point, pathOf, picture } from "./svg.ts";
import { finishTexture } from "./texture.ts";

/** The picture is a square of this side; the ball's radius is {@link BALL_RADIUS} of it, so that spots can be laid over it. */
const SIZE = 400;
export const BALL_RADIUS = 0.4;
const RADIUS = SIZE * BALL_RADIUS;
const MIDDLE = SIZE / 2;

export interface MeasureBall {
  readonly finish: Finish;
  /** Where the ball rolls, on the disc of this half: right and up, in radii. */
  readonly track: readonly Point[];
  /** Whether its word stands beside the track. */
  readonly isNamed: boolean;
}

/** The ball as it is measured: the grip towards one, with its holes and its track. */
export function measureFront({ finish, track, isNamed }: MeasureBall, paint: Paint = PAGE_PAINT, id = "measure-front"): string {
  const holes = HOLES.map(([x, y]) =>
    el("circle", { cx: MIDDLE + RADIUS * x, cy: MIDDLE - RADIUS * y, r: RADIUS * HOLE, fill: paint.ink }),
  );
  return ballPicture(MEASURE.front, finish, paint, id, [...band(track, paint, id), ...(isNamed ? trackWord(id, paint) : []), ...holes]);
}

/** The other half, which has no holes. */
export function measureBack({ finish, track }: MeasureBall, paint: Paint = PAGE_PAINT, id = "measure-back"): string {
  return ballPicture(MEASURE.back, finish, paint, id, band(track, paint, id));
}

function ballPicture(title: string, finish: Finish, paint: Paint, id: string, on: readonly string[]): string {
  const ball = { cx: MIDDLE, cy: MIDDLE, r: RADIUS };
  return picture(
    { width: SIZE, height: SIZE },
    { id, title, description: title },
    el(
      "defs",
      {},
      finishTexture(`${id}-fill`, finish, undefined, paint),
      el("clipPath", { id: `${id}-clip` }, el("circle", ball)),
      el(
        "radialGradient",
        { id: `${id}-shade`, cx: "38%", cy: "32%", r: "75%" },
        el("stop", { offset: "45%", "stop-color": paint.ink, "stop-opacity": 0 }),
        el("stop", { offset: "100%", "stop-color": paint.ink, "stop-opacity": 0.42 }),
      ),
    ),
    el("circle", { ...ball, fill: paint.lane }),
    el("circle", { ...ball, fill: `url(#${id}-fill)`, "fill-opacity": 0.45 }),
    el("circle", { ...ball, fill: `url(#${id}-shade)` }),
    el("g", { "clip-path": `url(#${id}-clip)` }, ...on),
    el("circle", { ...ball, fill: "none", stroke: paint.ink, "stroke-width": 2 }),
  );
}

/** The track as a worn band. */
function band(track: readonly Point[], paint: Paint, id: string): string[] {
  if (track.length < 2) return [];
  const d = pathOf(track.map(([x, y]): Point => [MIDDLE + RADIUS * x, MIDDLE - RADIUS * y]));
  return [el("path", { id: `${id}-track`, d, fill: "none", stroke: paint.ink, "stroke-opacity": 0.28, "stroke-width": 12 })];
}

function trackWord(id: string, paint: Paint): string[] {
  const word = { "font-family": SERIF, "font-size": 17, "font-style": "italic", fill: paint.ink, dy: -9 };
  return [el("text", word, `<textPath href="#${id}-track" startOffset="30%" text-anchor="middle">${MEASURE.track}</textPath>`)];
}
