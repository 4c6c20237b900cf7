import { ballCells } from "#engine/surface/padWork/cells";
import { SIDE_AXES, SIDE_IDS } from "#engine/surface/padWork/sides";
import { cross, type Quaternion, rotate, unit, type Vector } from "#engine/vector";
import { BALL_IN_SPACE } from "#words/en/rooms/ballInSpace";
import { grainIsThere } from "./grains.ts";
import { PAGE_PAINT, type Paint } from "./paint.ts";
import { HOLE, HOLES } from "./sideDiagram.ts";
import { el, type Point, pathOf, picture, round } from "./svg.ts";

/** Places on a ball in its own frame: over to the right, up, out at the grip's middle; all of length one. */
export interface PlacesOnBall {
  /** Where the spin axis leaves the ball; null where nobody knows. */
  readonly pap: Vector | null;
  readonly pin: Vector | null;
  /** Where the axis of the highest RG leaves the ball, a quarter turn from the pin. */
  readonly massBias: Vector | null;
  /** The lines of the layout over the surface: from the pin to the PAP, and to the mass bias. The drilling angle lies between them. */
  readonly lines: readonly (readonly Vector[])[];
  /** Where the ball rolls before it flares: a circle about the axis. */
  readonly track: readonly Vector[];
}

/** What is drawn on the ball. */
export interface OnBall {
  readonly places: PlacesOnBall;
  /** Work at each place over the mean; null where no pad work is signed. */
  readonly work: { readonly cells: number; readonly overMean: readonly number[] } | null;
}

/** The picture is a square of this side; the ball's radius is a share of it, so that the axis has room to stand out. */
const SIZE = 400;
const BALL_RADIUS = 0.37;
const RADIUS = SIZE * BALL_RADIUS;
const AXIS_REACH = 1.3;
const GRAIN = 2;
/** A place this far in front of the rim has room for a word, radii. */
const SEEN = 0.12;

/** Where a place of the ball stands in the picture, 0–1 from the left and the top, and whether it faces the viewer. */
export interface Placed {
  readonly x: number;
  readonly y: number;
  readonly isSeen: boolean;
}

/** @param turn from the ball's frame to the viewer's: right, up, towards the viewer */
export function placedOn(turn: Quaternion, place: Vector): Placed {
  const [x, y, z] = rotate(turn, place);
  return { x: 0.5 + BALL_RADIUS * x, y: 0.5 - BALL_RADIUS * y, isSeen: z > SEEN };
}

/** The ball as it is turned, seen from far away: holes, sides, track, axis, pin, and the pad work as grains. */
export function turnedGlobe({ places, work }: OnBall, turn: Quaternion, paint: Paint = PAGE_PAINT, id = "turned"): string {
  const ball = { cx: SIZE / 2, cy: SIZE / 2, r: RADIUS };
  const accent = { fill: "none", stroke: paint.accent };
  const { pap, pin, massBias, lines, track } = places;
  const axis =
    pap === null
      ? ""
      : el("path", { d: pathOf([onPicture(turn, pap), onPicture(turn, times(pap, AXIS_REACH))]), ...accent, "stroke-width": 4 });
  const isAxisBehind = pap !== null && rotate(turn, pap)[2] < 0;
  const closed = track.length === 0 ? [] : [...track, track[0]];
  return picture(
    { width: SIZE, height: SIZE },
    { id, title: BALL_IN_SPACE.picture, description: BALL_IN_SPACE.picture },
    el("defs", {}, shade(id, paint)),
    isAxisBehind ? axis : "",
    el("circle", { ...ball, fill: paint.lane }),
    el("circle", { ...ball, fill: `url(#${id}-shade)` }),
    work === null ? "" : grains(work, turn, paint),
    el("path", { d: seenLine(turn, closed), fill: "none", stroke: paint.oil, "stroke-width": 3 }),
    ...lines.map((line) => el("path", { d: seenLine(turn, line), ...accent, "stroke-width": 2 })),
    ...HOLES.map((hole) => lying(turn, unit(hole), HOLE, ROUND, { fill: paint.ink })),
    ...SIDE_IDS.map((side) => lying(turn, SIDE_AXES[side], 0.058, ROUND, { fill: "none", stroke: paint.ink, "stroke-width": 2 })),
    pap === null ? "" : lying(turn, pap, 0.06, 4, { ...accent, "stroke-width": 4 }),
    massBias === null ? "" : lying(turn, massBias, 0.05, 3, { ...accent, "stroke-width": 4 }),
    pin === null ? "" : lying(turn, pin, 0.035, ROUND, { fill: paint.accent }),
    isAxisBehind ? "" : axis,
    el("circle", { ...ball, fill: "none", stroke: paint.ink, "stroke-width": 2 }),
  );
}

function shade(id: string, paint: Paint): string {
  return el(
    "radialGradient",
    { id: `${id}-shade`, cx: "38%", cy: "32%", r: "75%" },
    el("stop", { offset: "45%", "stop-color": paint.ink, "stop-opacity": 0 }),
    el("stop", { offset: "100%", "stop-color": paint.ink, "stop-opacity": 0.42 }),
  );
}

function onPicture(turn: Quaternion, place: Vector): Point {
  const [x, y] = rotate(turn, place);
  return [SIZE / 2 + RADIUS * x, SIZE / 2 - RADIUS * y];
}

/** One grain a place, denser where the pad worked more. */
function grains({ cells, overMean }: NonNullable<OnBall["work"]>, turn: Quaternion, paint: Paint): string {
  const spots = ballCells(cells).at.flatMap((place, i) => {
    if (!grainIsThere(i, overMean[i]) || rotate(turn, place)[2] <= 0) return [];
    const [x, y] = onPicture(turn, place);
    return [`M${round(x)},${round(y)}h0`];
  });
  return el("path", {
    d: spots.join(""),
    fill: "none",
    stroke: paint.ink,
    "stroke-opacity": 0.55,
    "stroke-width": GRAIN,
    "stroke-linecap": "round",
  });
}

/** The parts of a line over the surface that face the viewer. */
function seenLine(turn: Quaternion, line: readonly Vector[]): string {
  const parts: Point[][] = [[]];
  for (const place of line)
    if (rotate(turn, place)[2] >= 0) parts[parts.length - 1].push(onPicture(turn, place));
    else if (parts[parts.length - 1].length > 0) parts.push([]);
  return parts.map(pathOf).join("");
}

const ROUND = 24;

/** Something flat with so many corners that lies on the ball about a place, as it is foreshortened; nothing where it lies behind. */
function lying(turn: Quaternion, place: Vector, radius: number, corners: number, paint: Parameters<typeof el>[1]): string {
  if (rotate(turn, place)[2] <= 0) return "";
  const one = unit(cross(place, Math.abs(place[1]) < 0.9 ? [0, 1, 0] : [1, 0, 0]));
  const two = cross(place, one);
  const edge = Array.from({ length: corners }, (_, i): Point => {
    const angle = (2 * Math.PI * i) / corners;
    const [a, b] = [radius * Math.cos(angle), radius * Math.sin(angle)];
    return onPicture(turn, [place[0] + a * one[0] + b * two[0], place[1] + a * one[1] + b * two[1], place[2] + a * one[2] + b * two[2]]);
  });
  return el("path", { d: `${pathOf(edge)}Z`, ...paint });
}

function times([x, y, z]: Vector, factor: number): Vector {
  return [x * factor, y * factor, z * factor];
}
