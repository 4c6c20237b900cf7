import { scaleLinear } from "d3-scale";
import { PROFILE } from "#words/en/measuring";
import { fixed } from "#words/figures";
import { FILE_PAINT, type Paint, SANS, SERIF } from "./paint.ts";
import { el, type Point, pathOf, picture, textEl } from "./svg.ts";

export interface ProfileChartInput {
  readonly name: string;
  readonly um: Float64Array;
  readonly meanLine: Float64Array;
  readonly spacingMm: number;
  /** Places of the evaluation length. */
  readonly from: number;
  readonly to: number;
  readonly raUm: number;
  readonly cutoffMm: number;
  /** Figures written under the title, ready. */
  readonly figures: string;
}

const [WIDTH, HEIGHT] = [720, 300];
const BOX = { left: 60, right: 700, top: 62, bottom: 246 };

/** The profile with its mean line; what is evaluated stands on the lighter ground. Each column of the picture shows the profile's highest and lowest point there, so that no peak is lost. */
export function profileChart(input: ProfileChartInput, paint: Paint = FILE_PAINT, id = "profile"): string {
  const { um, meanLine, spacingMm, from, to } = input;
  const there = envelope(um);
  const [low, high] = there.reduce(([least, most], { low: l, high: h }) => [Math.min(least, l), Math.max(most, h)], [0, 0]);
  const x = scaleLinear([0, (um.length - 1) * spacingMm], [BOX.left, BOX.right]);
  const y = scaleLinear([low, high], [BOX.bottom, BOX.top]).nice();
  const figure = { "font-family": SANS, "font-size": 12, fill: paint.faint };
  return picture(
    { width: WIDTH, height: HEIGHT },
    { id, title: PROFILE.title, description: PROFILE.description(input.name, fixed(input.raUm, 3), String(input.cutoffMm)) },
    el("rect", { width: WIDTH, height: HEIGHT, fill: paint.paper }),
    textEl(input.name, { x: BOX.left, y: 24, "font-family": SERIF, "font-size": 16, fill: paint.ink }),
    textEl(input.figures, { x: BOX.left, y: 44, "font-family": SANS, "font-size": 12, fill: paint.ink }),
    el("rect", {
      x: x(from * spacingMm),
      y: BOX.top,
      width: x(to * spacingMm) - x(from * spacingMm),
      height: BOX.bottom - BOX.top,
      fill: paint.shine,
      stroke: paint.hair,
    }),
    textEl(PROFILE.evaluation, { x: x(from * spacingMm) + 6, y: BOX.top + 14, ...figure, "font-style": "italic" }),
    ...y
      .ticks(5)
      .flatMap((um_) => [
        el("line", { x1: BOX.left, x2: BOX.right, y1: y(um_), y2: y(um_), stroke: paint.hair, "stroke-dasharray": "1 4" }),
        textEl(String(um_), { x: BOX.left - 6, y: y(um_) + 4, "text-anchor": "end", ...figure }),
      ]),
    ...x.ticks(8).map((mm) => textEl(String(mm), { x: x(mm), y: BOX.bottom + 18, "text-anchor": "middle", ...figure })),
    textEl(PROFILE.distance, { x: BOX.right, y: BOX.bottom + 38, "text-anchor": "end", ...figure }),
    textEl(PROFILE.height, { x: 16, y: BOX.bottom, transform: `rotate(-90 16 ${BOX.bottom})`, ...figure }),
    el("path", {
      d: pathOf(
        there.flatMap(({ at, low: l, high: h }): Point[] => [
          [x(at * spacingMm), y(h)],
          [x(at * spacingMm), y(l)],
        ]),
      ),
      fill: "none",
      stroke: paint.ink,
      "stroke-width": 0.8,
    }),
    el("path", {
      d: pathOf(sampled(meanLine).map(([at, z]): Point => [x(at * spacingMm), y(z)])),
      fill: "none",
      stroke: paint.accent,
      "stroke-width": 1.6,
    }),
  );
}

const COLUMNS = 640;

/** Highest and lowest point of each column; columns without a measured point are left out. */
function envelope(um: Float64Array): { at: number; low: number; high: number }[] {
  const width = Math.max(1, Math.ceil(um.length / COLUMNS));
  const columns: { at: number; low: number; high: number }[] = [];
  for (let start = 0; start < um.length; start += width) {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (let i = start; i < Math.min(um.length, start + width); i++) {
      if (um[i] < low) low = um[i];
      if (um[i] > high) high = um[i];
    }
    if (low <= high) columns.push({ at: start + width / 2, low, high });
  }
  return columns;
}

function sampled(line: Float64Array): (readonly [number, number])[] {
  const step = Math.max(1, Math.ceil(line.length / COLUMNS));
  return Array.from({ length: Math.ceil(line.length / step) }, (_, i) => [i * step, line[i * step]] as const).filter(
    ([, z]) => !Number.isNaN(z),
  );
}
