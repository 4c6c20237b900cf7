import { scaleLinear } from "d3-scale";
import { MEASURE } from "#words/en/rooms/measure";
import { fixed } from "#words/figures";
import { PAGE_PAINT, type Paint, SANS, SERIF } from "./paint.ts";
import { el, picture, textEl } from "./svg.ts";

export interface LinePoint {
  readonly name: string;
  /** In the unit of the line. */
  readonly value: number;
  readonly isOff: boolean;
}

export interface ReadingLineInput {
  readonly points: readonly LinePoint[];
  /** What was to be reached: its name and its place; null where nothing is wanted. */
  readonly wanted: { readonly name: string; readonly value: number } | null;
  readonly unit: "µin" | "µm";
}

const HEIGHT = 124;
const LINE_Y = 60;
const EDGE = 26;
/** Names of points nearer to one another than this would run into each other, picture units. */
const NAME_APART = 74;

/** Every place's mean on one line: the odd one out stands apart, filled and named. @param width as wide as its place is, so that words keep their size */
export function readingLine({ points, wanted, unit }: ReadingLineInput, width: number, paint: Paint = PAGE_PAINT, id = "line"): string {
  const values = [...points.map(({ value }) => value), ...(wanted === null ? [] : [wanted.value])];
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const room = Math.max(0.12 * high, 0.18 * (high - low));
  const x = scaleLinear([Math.max(0, low - room), high + room], [EDGE, width - EDGE]);
  const inOrder = points.toSorted((a, b) => a.value - b.value);
  const decimals = unit === "µin" ? 1 : 3;
  return picture(
    { width, height: HEIGHT },
    {
      id,
      title: MEASURE.line,
      description: MEASURE.lineOf(inOrder.map(({ name, value }) => `${name} ${fixed(value, decimals)} ${unit}`).join(", ")),
    },
    el("line", { x1: EDGE, x2: width - EDGE, y1: LINE_Y, y2: LINE_Y, stroke: paint.hair, "stroke-width": 3 }),
    ...ticks(x, width, unit, paint),
    ...(wanted === null ? [] : wantedMark(x(wanted.value), wanted.name, paint)),
    ...inOrder.map(({ value, isOff }) =>
      el("circle", {
        cx: x(value),
        cy: LINE_Y,
        r: isOff ? 10 : 8.5,
        fill: isOff ? paint.accent : paint.paper,
        stroke: isOff ? paint.accent : paint.ink,
        "stroke-width": 2.5,
      }),
    ),
    ...names(inOrder, x, wanted === null ? null : x(wanted.value), paint),
  );
}

type X = ((value: number) => number) & { ticks(count: number): number[] };

function ticks(x: X, width: number, unit: string, paint: Paint): string[] {
  const at = x.ticks(Math.max(2, Math.floor(width / 130)));
  const text = { "text-anchor": "middle", "font-family": SANS, "font-size": 15, fill: paint.faint, y: LINE_Y + 34 };
  return at.flatMap((tick, i) => [
    el("line", { x1: x(tick), x2: x(tick), y1: LINE_Y - 7, y2: LINE_Y + 7, stroke: paint.faint }),
    textEl(i === at.length - 1 ? `${tick} ${unit}` : String(tick), { x: Math.min(x(tick), width - EDGE), ...text }),
  ]);
}

function wantedMark(x: number, name: string, paint: Paint): string[] {
  return [
    el("line", { x1: x, x2: x, y1: LINE_Y - 34, y2: LINE_Y + 14, stroke: paint.ink, "stroke-width": 2, "stroke-dasharray": "3 4" }),
    textEl(name, {
      x,
      y: LINE_Y - 40,
      "text-anchor": "middle",
      "font-family": SERIF,
      "font-size": 18,
      "font-style": "italic",
      fill: paint.ink,
    }),
  ];
}

/** Only what is off is named, above the line or, where that is taken, below its figures. A name that would run into another is left out: the spots have them all. */
function names(points: readonly LinePoint[], x: X, wantedX: number | null, paint: Paint): string[] {
  const rows: readonly { readonly y: number; readonly taken: number[] }[] = [
    { y: LINE_Y - 20, taken: wantedX === null ? [] : [wantedX] },
    { y: LINE_Y + 56, taken: [] },
  ];
  return points.flatMap(({ name, value, isOff }) => {
    const row = isOff ? rows.find(({ taken }) => taken.every((one) => Math.abs(one - x(value)) >= NAME_APART)) : undefined;
    if (row === undefined) return [];
    row.taken.push(x(value));
    const text = { "text-anchor": "middle", "font-family": SANS, "font-size": 16, "font-weight": 600, fill: paint.accent };
    return [textEl(name, { x: x(value), y: row.y, ...text })];
  });
}
