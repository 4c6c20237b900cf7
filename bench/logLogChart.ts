import { type ScaleLogarithmic, scaleLog } from "d3-scale";
import { FILE_PAINT, SANS, SERIF } from "#drawing/paint";
import { el, type Point, pathOf, picture, textEl } from "#drawing/svg";

/** One line of a chart: its points in the chart's own units, all above 0. */
export interface Series {
  readonly name: string;
  readonly points: readonly Point[];
}

export interface LogLogInput {
  readonly id: string;
  readonly title: string;
  readonly description: string;
  readonly across: string;
  readonly up: string;
  readonly series: readonly Series[];
}

const [WIDTH, HEIGHT] = [640, 420];
const BOX = { left: 70, right: 470, top: 56, bottom: 366 };
/** Lines are told apart by stroke and mark, and by their names beside them. */
const STROKES = [undefined, "7 4", "2 3", "10 3 2 3", "1 5", "14 5", "5 2 1 2"];
const APART = 16;

/** How something grows: both scales logarithmic, so that a straight line is a power and its slope the exponent. */
export function logLogChart({ id, title, description, across, up, series }: LogLogInput): string {
  const all = series.flatMap(({ points }) => points);
  const x = axis(
    all.map(([value]) => value),
    [BOX.left, BOX.right],
  );
  const y = axis(
    all.map(([, value]) => value),
    [BOX.bottom, BOX.top],
  );
  const small = { "font-family": SANS, "font-size": 11, fill: FILE_PAINT.faint };
  return picture(
    { width: WIDTH, height: HEIGHT },
    { id, title, description },
    el("rect", { width: WIDTH, height: HEIGHT, fill: FILE_PAINT.paper }),
    textEl(title, { x: BOX.left, y: 28, "font-family": SERIF, "font-size": 16, fill: FILE_PAINT.ink }),
    ...powers(x).map((value) => rule(x(value), BOX.top, x(value), BOX.bottom)),
    ...powers(y).map((value) => rule(BOX.left, y(value), BOX.right, y(value))),
    ...powers(x).map((value) => textEl(figure(value), { x: x(value), y: BOX.bottom + 16, "text-anchor": "middle", ...small })),
    ...powers(y).map((value) => textEl(figure(value), { x: BOX.left - 8, y: y(value) + 4, "text-anchor": "end", ...small })),
    textEl(across, { x: (BOX.left + BOX.right) / 2, y: BOX.bottom + 38, "text-anchor": "middle", ...small }),
    textEl(up, { x: BOX.left, y: BOX.top - 10, ...small }),
    ...lines(series, x, y),
  );
}

function lines(series: readonly Series[], x: Scale, y: Scale): string[] {
  // Names stand beside the ends of their lines, the highest first, and never on one another.
  const ends = series.map(({ points }, i) => ({ i, at: y(points[points.length - 1][1]) })).sort((a, b) => a.at - b.at);
  let last = Number.NEGATIVE_INFINITY;
  const places = new Map(
    ends.map(({ i, at }) => {
      last = Math.max(at, last + APART);
      return [i, last] as const;
    }),
  );
  return series.flatMap(({ name, points }, i) => {
    const drawn = points.map(([a, b]): Point => [x(a), y(b)]);
    const colour = i % 2 === 0 ? FILE_PAINT.ink : FILE_PAINT.oil;
    const end = drawn[drawn.length - 1];
    const place = places.get(i) ?? end[1];
    return [
      el("path", { d: pathOf(drawn), fill: "none", stroke: colour, "stroke-width": 2, "stroke-dasharray": STROKES[i % STROKES.length] }),
      ...drawn.map(([cx, cy]) => el("circle", { cx, cy, r: 3, fill: colour })),
      el("path", { d: pathOf([end, [BOX.right + 8, place]]), fill: "none", stroke: FILE_PAINT.hair }),
      textEl(name, { x: BOX.right + 12, y: place + 4, "font-family": SANS, "font-size": 12, fill: colour }),
    ];
  });
}

type Scale = ScaleLogarithmic<number, number>;

/** From the power of ten below the least value to the one above the most. */
function axis(values: readonly number[], range: readonly [number, number]): Scale {
  const power = (value: number, to: (exponent: number) => number) => 10 ** to(Math.log10(value));
  return scaleLog([power(Math.min(...values), Math.floor), power(Math.max(...values), Math.ceil)], range);
}

function powers(scale: Scale): number[] {
  const [from, to] = scale.domain().map(Math.log10).map(Math.round);
  return Array.from({ length: to - from + 1 }, (_, i) => 10 ** (from + i));
}

function figure(value: number): string {
  if (value >= 1) return value.toLocaleString("en");
  return value >= 0.001 ? String(Number(value.toPrecision(1))) : value.toExponential(0).replace("-", "−");
}

function rule(x1: number, y1: number, x2: number, y2: number): string {
  return el("line", { x1, y1, x2, y2, stroke: FILE_PAINT.hair, "stroke-width": 0.7 });
}
