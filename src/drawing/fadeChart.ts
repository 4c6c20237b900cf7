import { scaleLinear, scaleLog } from "d3-scale";
import { area, line } from "d3-shape";
import type { FadePoint } from "#engine/surface/care";
import type { FadeReading } from "#engine/surface/fade";
import { MICROINCH, MICROMETRE } from "#engine/units";
import { FADE } from "#words/en/fade";
import { fixed } from "#words/figures";
import { FILE_PAINT, type Paint, SANS, SERIF } from "./paint.ts";
import { el, picture, textEl } from "./svg.ts";

export interface FadeChartInput {
  readonly name: string;
  readonly track: readonly FadePoint[];
  readonly offTrack: readonly FadePoint[];
  /** As the law takes them. */
  readonly readings: readonly FadeReading[];
  readonly gamesNow: number;
  /** Unit of the scale; µm where nothing is said. */
  readonly unit?: keyof typeof SCALES;
}

const [WIDTH, HEIGHT] = [640, 300];
const BOX = { left: 62, right: 620, top: 48, bottom: 246 };
/** What the scale is written in: µm in one of the unit, and figures that are round in it. */
const SCALES = {
  µm: { um: 1, decimals: 2, ticks: [0.1, 0.15, 0.2, 0.3, 0.5, 0.7, 1, 1.5] },
  µin: { um: MICROINCH / MICROMETRE, decimals: 1, ticks: [4, 6, 8, 12, 16, 20, 30, 40, 60] },
} as const;

/** Roughness against games: the track with its band, the surface beside it, and the ball's own readings. The scale is logarithmic, since a step on the ladder is a ratio. */
export function fadeChart(input: FadeChartInput, paint: Paint = FILE_PAINT, id = "fade"): string {
  const all = [...input.track, ...input.offTrack].flatMap(({ low, high }) => [low, high]);
  const values = [...all, ...input.readings.map(({ raUm }) => raUm)];
  const x = scaleLinear([0, input.track[input.track.length - 1].games], [BOX.left, BOX.right]);
  const y = scaleLog([0.85 * Math.min(...values), 1.15 * Math.max(...values)], [BOX.bottom, BOX.top]);
  const band = area<FadePoint>()
    .x((p) => x(p.games))
    .y0((p) => y(p.low))
    .y1((p) => y(p.high));
  const middle = line<FadePoint>()
    .x((p) => x(p.games))
    .y((p) => y(p.value));
  const unit = input.unit ?? "µm";
  const written = (um: number) => `${fixed(um / SCALES[unit].um, SCALES[unit].decimals)} ${unit}`;
  const at30 = input.track.find(({ games }) => games === 30) ?? input.track[0];
  return picture(
    { width: WIDTH, height: HEIGHT },
    { id, title: FADE.title, description: FADE.description(input.name, written(input.track[0].value), written(at30.value)) },
    el("rect", { width: WIDTH, height: HEIGHT, fill: paint.paper }),
    textEl(`${input.name} · ${FADE.title}`, { x: BOX.left, y: 24, "font-family": SERIF, "font-size": 16, fill: paint.ink }),
    textEl(FADE.band, { x: BOX.left, y: 40, "font-family": SERIF, "font-size": 11.5, "font-style": "italic", fill: paint.faint }),
    ...axes(x, y, unit, paint),
    el("path", { d: band(input.offTrack) ?? "", fill: paint.hair, "fill-opacity": 0.35 }),
    el("path", { d: band(input.track) ?? "", fill: paint.oil, "fill-opacity": 0.25 }),
    el("path", { d: middle(input.offTrack) ?? "", fill: "none", stroke: paint.faint, "stroke-width": 1.5, "stroke-dasharray": "2 4" }),
    el("path", { d: middle(input.track) ?? "", fill: "none", stroke: paint.ink, "stroke-width": 2.5 }),
    ...[...ends(input, x, y, paint)],
    el("line", { x1: x(input.gamesNow), x2: x(input.gamesNow), y1: BOX.top, y2: BOX.bottom, stroke: paint.accent, "stroke-width": 1 }),
    ...input.readings.map(({ games, raUm, where }) => dot(x(games), y(raUm), where, paint)),
  );
}

/** A reading: a ring in the track, a square beside it. */
function dot(x: number, y: number, where: FadeReading["where"], paint: Paint): string {
  const line = { fill: paint.paper, stroke: paint.accent, "stroke-width": 2 };
  return where === "track"
    ? el("circle", { cx: x, cy: y, r: 4, ...line })
    : el("rect", { x: x - 3.5, y: y - 3.5, width: 7, height: 7, ...line });
}

type X = (games: number) => number;

function axes(x: X & { ticks(count: number): number[] }, y: X & { domain(): number[] }, unit: keyof typeof SCALES, paint: Paint): string[] {
  const [low, high] = y.domain();
  const { um: perUnit, ticks } = SCALES[unit];
  const figure = { "font-family": SANS, "font-size": 12, fill: paint.faint };
  return [
    ...ticks
      .filter((tick) => tick * perUnit >= low && tick * perUnit <= high)
      .flatMap((tick) => [
        el("line", {
          x1: BOX.left,
          x2: BOX.right,
          y1: y(tick * perUnit),
          y2: y(tick * perUnit),
          stroke: paint.hair,
          "stroke-dasharray": "1 4",
        }),
        textEl(fixed(tick, String(tick).split(".")[1]?.length ?? 0), {
          x: BOX.left - 8,
          y: y(tick * perUnit) + 4,
          "text-anchor": "end",
          ...figure,
        }),
      ]),
    ...x.ticks(10).map((games) => textEl(String(games), { x: x(games), y: BOX.bottom + 18, "text-anchor": "middle", ...figure })),
    el("line", { x1: BOX.left, x2: BOX.right, y1: BOX.bottom, y2: BOX.bottom, stroke: paint.ink }),
    textEl(FADE.games, { x: BOX.right, y: BOX.bottom + 38, "text-anchor": "end", ...figure }),
    textEl(FADE.roughness(unit), { x: 16, y: BOX.bottom, transform: `rotate(-90 16 ${BOX.bottom})`, ...figure }),
  ];
}

/** Names at the ends of the two lines, kept apart. */
function* ends(input: FadeChartInput, x: X, y: X, paint: Paint): Generator<string> {
  const [track, beside] = [input.track[input.track.length - 1], input.offTrack[input.offTrack.length - 1]];
  const apart = Math.abs(y(track.value) - y(beside.value)) < 16 ? 8 : 0;
  const above = y(track.value) < y(beside.value) ? -1 : 1;
  const label = { "text-anchor": "end", "font-family": SANS, "font-size": 12.5, fill: paint.ink };
  yield textEl(FADE.track, { x: x(track.games) - 4, y: y(track.value) + above * apart + (above > 0 ? 14 : -5), ...label });
  yield textEl(FADE.offTrack, { x: x(beside.games) - 4, y: y(beside.value) - above * apart + (above > 0 ? -5 : 14), ...label });
}
