import type { PadWork } from "#engine/surface/padWork/padWork";
import { SIDE_IDS, type SideId } from "#engine/surface/padWork/sides";
import type { Vector } from "#engine/vector";
import { PAD_WORK, SIDE_LABELS } from "#words/en/padWork";
import { type Contour, contoursOf, type Half, onDisc } from "./globeHalf.ts";
import { grainIsThere } from "./grains.ts";
import type { Layout } from "./laneFrame.ts";
import { FILE_PAINT, type Paint, SANS, SERIF } from "./paint.ts";
import { el, pathOf, picture, round, textEl } from "./svg.ts";

export interface BallGlobeInput {
  readonly name: string | null;
  readonly work: PadWork;
  /** Where the sides lie on the ball. */
  readonly axes: Readonly<Record<SideId, Vector>>;
}

interface Place {
  readonly half: Half;
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

const FRAMES = {
  lying: {
    width: 640,
    height: 428,
    key: 384,
    discs: [
      { half: "grip", x: 165, y: 222, radius: 112 },
      { half: "opposite", x: 475, y: 222, radius: 112 },
    ],
  },
  upright: {
    width: 340,
    height: 728,
    key: 672,
    discs: [
      { half: "grip", x: 170, y: 218, radius: 108 },
      { half: "opposite", x: 170, y: 518, radius: 108 },
    ],
  },
} as const satisfies Record<Layout, { width: number; height: number; key: number; discs: readonly Place[] }>;

const GRAIN = 1.5;

/**
 * The ball in two halves, equal areas drawn equal (Lambert's azimuthal projection). Grains lie denser where the pad worked more, as a duller
 * finish looks; lines carry the work over the mean; the sides are marked with their seconds.
 */
export function ballGlobe(
  input: BallGlobeInput,
  { layout = "lying", paint = FILE_PAINT, id = "globe" }: { layout?: Layout; paint?: Paint; id?: string } = {},
): string {
  const { width, height, discs, key } = FRAMES[layout];
  const { evenness } = input.work;
  const title = input.name === null ? PAD_WORK.title : `${input.name} · ${PAD_WORK.title}`;
  return picture(
    { width, height },
    { id, title: PAD_WORK.title, description: PAD_WORK.description(evenness) },
    el("rect", { width, height, fill: paint.paper }),
    textEl(title, { x: 20, y: 27, "font-family": SERIF, "font-size": 16, fill: paint.ink }),
    textEl(PAD_WORK.summary(evenness), {
      x: 20,
      y: 46,
      "font-family": SERIF,
      "font-size": 12.5,
      "font-style": "italic",
      fill: paint.faint,
    }),
    ...discs.map((place) => half(input, place, id, paint)),
    ...[PAD_WORK.textureKey, PAD_WORK.contourKey, PAD_WORK.axisKey].map((words, i) =>
      textEl(words, { x: 20, y: key + 16 * i, "font-family": SANS, "font-size": 12, fill: paint.faint }),
    ),
  );
}

function half(input: BallGlobeInput, place: Place, id: string, paint: Paint): string {
  const { x, y, radius } = place;
  const clip = `${id}-${place.half}`;
  const lines = contoursOf(input.work.cells, input.work.received.work, place.half, radius);
  return el(
    "g",
    { class: "gw-half", transform: `translate(${x} ${y})` },
    el("clipPath", { id: clip }, el("circle", { r: radius })),
    el("circle", { r: radius, fill: paint.lane }),
    el("path", {
      d: grains(input.work, place),
      fill: "none",
      stroke: paint.ink,
      "stroke-opacity": 0.55,
      "stroke-width": GRAIN,
      "stroke-linecap": "round",
    }),
    el("g", { "clip-path": `url(#${clip})` }, ...lines.map((line) => contourPath(line, paint))),
    el("circle", { r: radius, fill: "none", stroke: paint.ink, "stroke-width": 1.6 }),
    ...lines.flatMap((line) => figure(line, paint)),
    ...SIDE_IDS.flatMap((side) => sideMark(input, side, place, paint)),
    textEl(place.half === "grip" ? PAD_WORK.hemisphereGrip : PAD_WORK.hemisphereOpposite, {
      x: 0,
      y: -radius - 34,
      "text-anchor": "middle",
      "font-family": SERIF,
      "font-size": 13.5,
      "font-style": "italic",
      fill: paint.ink,
    }),
  );
}

/** One grain a cell. */
function grains({ cells, received }: PadWork, { half: side, radius }: Place): string {
  const mean = received.work.reduce((sum, work) => sum + work, 0) / cells.count;
  if (mean === 0) return "";
  return cells.at
    .flatMap((at, i) => {
      const spot = onDisc(at, side);
      if (spot === null || !grainIsThere(i, received.work[i] / mean)) return [];
      return [`M${round(spot[0] * radius * 0.985)},${round(spot[1] * radius * 0.985)}h0`];
    })
    .join("");
}

/** Below the mean dashed, above it full, twice as far from it heavier: the stroke says which side of the mean a line is on. */
function contourPath({ overMean, line }: Contour, paint: Paint): string {
  return el("path", {
    d: pathOf(line),
    fill: "none",
    stroke: paint.accent,
    "stroke-width": Math.abs(overMean - 1) > 0.3 ? 2 : 1.3,
    "stroke-dasharray": overMean < 1 ? "5 3" : undefined,
  });
}

function figure({ overMean, label }: Contour, paint: Paint): string[] {
  if (label === null) return [];
  const [x, y] = label;
  return [
    textEl(String(overMean), {
      x,
      y: y + 4,
      "text-anchor": "middle",
      "font-family": SANS,
      "font-size": 11.5,
      "font-weight": 600,
      fill: paint.ink,
      stroke: paint.lane,
      "stroke-width": 3.5,
      "paint-order": "stroke",
    }),
  ];
}

function sideMark({ work, axes }: BallGlobeInput, side: SideId, { half: which, radius }: Place, paint: Paint): string[] {
  const spot = onDisc(axes[side], which);
  if (spot === null) return [];
  const [x, y] = [spot[0] * radius, spot[1] * radius];
  const done = work.sides.find((one) => one.side === side);
  const words = done === undefined ? PAD_WORK.notWorked(SIDE_LABELS[side]) : PAD_WORK.worked(SIDE_LABELS[side], done.seconds);
  const label = { "font-family": SANS, "font-size": 12, fill: paint.ink, stroke: paint.paper, "stroke-width": 3, "paint-order": "stroke" };
  const [outX, outY] = [Math.sign(Math.round(spot[0] * 10)), Math.sign(Math.round(spot[1] * 10))];
  const at = outX !== 0 ? { x: x + 10 * outX, y: y + 4 } : { x, y: y + (outY < 0 ? -12 : 22) };
  const lines = outX !== 0 ? words.split(/,? (?=\d|not)/) : [words];
  return [
    el("circle", { cx: x, cy: y, r: 6, fill: paint.paper, stroke: paint.ink, "stroke-width": 1.4 }),
    ...(done === undefined ? [] : [el("path", { d: `M${round(x - 6)},${round(y)}h12M${round(x)},${round(y - 6)}v12`, stroke: paint.ink })]),
    ...lines.map((line, i) =>
      textEl(line, { ...label, ...at, y: at.y + 14 * i, "text-anchor": outX === 0 ? "middle" : outX < 0 ? "end" : "start" }),
    ),
  ];
}
