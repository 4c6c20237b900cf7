import { scaleLinear } from "d3-scale";
import type { BagBallPlan, BagPlace, BagPlan, BagStage } from "#engine/planning/bag/bagPlan";
import { effectiveRaUm, parseFinish } from "#engine/surface/finish";
import { BAG } from "#words/en/bag";
import { type Label, placeLabels } from "./labelPlaces.ts";
import type { Layout } from "./laneFrame.ts";
import { FILE_PAINT, type Paint, SANS, SERIF } from "./paint.ts";
import { el, type Point, picture, textEl } from "./svg.ts";
import { finishTexture, texturedBall } from "./texture.ts";

export interface BagChartOptions {
  /** `lying` is 960 wide, `upright` 360 for a narrow page. */
  readonly layout?: Layout;
  readonly paint?: Paint;
  readonly id?: string;
}

interface Sizes {
  readonly width: number;
  readonly plot: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
  readonly strip: { readonly left: number; readonly right: number };
  readonly radius: number;
  readonly font: number;
}

const SIZES: Readonly<Record<Layout, Sizes>> = {
  lying: { width: 960, plot: { left: 64, right: 930, top: 44, bottom: 380 }, strip: { left: 64, right: 930 }, radius: 15, font: 13 },
  upright: { width: 360, plot: { left: 42, right: 346, top: 40, bottom: 300 }, strip: { left: 10, right: 346 }, radius: 11, font: 11 },
};
const STRIP_HEIGHT = 34;
/** Bold letters are so much wider than the placing reckons with. */
const BOLD_WIDER = 1.12;
/** The least that the axes span, so that balls which do the same are seen to. */
const LEAST_FT = 8;
const LEAST_DEG = 1.5;

type PlacedBall = BagBallPlan & { readonly atFirst: BagPlace };

/** The bag on the axes that physics gives, and under it the session: which ball when. */
export function bagChart(plan: Pick<BagPlan, "balls" | "stages">, options: BagChartOptions = {}): string {
  const layout = options.layout ?? "lying";
  const paint = options.paint ?? FILE_PAINT;
  const id = options.id ?? "bag";
  const sizes = SIZES[layout];
  const { plot, width } = sizes;
  const placed = plan.balls.filter((ball): ball is PlacedBall => ball.atFirst !== null);
  const places = placed.flatMap(({ atFirst, atLast }) => [atFirst, ...(atLast === null ? [] : [atLast])]);
  const x = scaleLinear(
    spanOf(
      places.map(({ hookStartFt }) => hookStartFt),
      LEAST_FT,
    ),
    [plot.left, plot.right],
  );
  const y = scaleLinear(
    spanOf(
      places.map(({ entryAngleDeg }) => entryAngleDeg),
      LEAST_DEG,
    ),
    [plot.bottom, plot.top],
  );
  const at = (place: BagPlace): Point => [x(place.hookStartFt), y(place.entryAngleDeg)];
  const stripTop = plot.bottom + 56;
  return picture(
    { width, height: stripTop + STRIP_HEIGHT + 30 },
    { id, title: BAG.title, description: descriptionOf(placed) },
    el("defs", {}, ...plan.balls.map((ball, i) => finishTexture(`${id}-finish-${i}`, parseFinish(ball.finish), undefined, paint))),
    el("rect", { width: "100%", height: "100%", fill: paint.paper }),
    textEl(BAG.chartNote, {
      x: plot.left,
      y: 22,
      "font-family": SERIF,
      "font-style": "italic",
      "font-size": sizes.font,
      fill: paint.faint,
    }),
    ...axes(x, y, sizes, paint),
    ...placed.map((ball) => drift(ball, at, sizes, paint)),
    ...placed.map((ball) => {
      const [cx, cy] = at(ball.atFirst);
      const finish = parseFinish(ball.finish);
      return el(
        "g",
        { class: "gw-bag-ball", opacity: ball.role === "thrown" ? 1 : 0.55 },
        texturedBall({ x: cx, y: cy, radius: sizes.radius }, `${id}-finish-${plan.balls.indexOf(ball)}`, finish, paint),
      );
    }),
    ...names(placed, at, sizes, paint),
    ...strip(plan.stages, sizes, stripTop, paint),
  );
}

/** What the axes show: what is there and some room, and never less than `least`. */
function spanOf(values: readonly number[], least: number): [number, number] {
  if (values.length === 0) return [0, least];
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const room = Math.max((least - (high - low)) / 2, 0.12 * (high - low), 0.05 * least);
  return [low - room, high + room];
}

type Axis = ((value: number) => number) & { ticks(count: number): number[] };

function axes(x: Axis, y: Axis, { plot, font }: Sizes, paint: Paint): string[] {
  const figure = { "font-family": SANS, "font-size": font - 1, fill: paint.faint };
  const narrow = plot.right - plot.left < 400;
  return [
    ...x
      .ticks(narrow ? 5 : 9)
      .flatMap((ft) => [
        el("line", { x1: x(ft), x2: x(ft), y1: plot.top, y2: plot.bottom, stroke: paint.hair, "stroke-dasharray": "1 4" }),
        textEl(String(ft), { x: x(ft), y: plot.bottom + 16, "text-anchor": "middle", ...figure }),
      ]),
    ...y
      .ticks(6)
      .flatMap((deg) => [
        el("line", { x1: plot.left, x2: plot.right, y1: y(deg), y2: y(deg), stroke: paint.hair, "stroke-dasharray": "1 4" }),
        textEl(String(deg), { x: plot.left - 6, y: y(deg) + 4, "text-anchor": "end", ...figure }),
      ]),
    el("path", { d: `M${plot.left},${plot.top}V${plot.bottom}H${plot.right}`, fill: "none", stroke: paint.ink }),
    textEl(BAG.chartHook, { x: plot.right, y: plot.bottom + 34, "text-anchor": "end", ...figure }),
    textEl(BAG.chartEntry, { x: plot.left + 6, y: plot.top + 4, ...figure }),
  ];
}

/** From the first oil to the last. */
function drift({ atFirst, atLast, role }: PlacedBall, at: (place: BagPlace) => Point, { radius }: Sizes, paint: Paint): string {
  if (atLast === null) return "";
  const [[x1, y1], [x2, y2]] = [at(atFirst), at(atLast)];
  const colour = role === "thrown" ? paint.accent : paint.faint;
  return el(
    "g",
    { class: "gw-drift", opacity: role === "thrown" ? 1 : 0.6 },
    el("line", { x1, y1, x2, y2, stroke: colour, "stroke-width": role === "thrown" ? 1.6 : 1, "stroke-dasharray": "2 3" }),
    el("circle", { cx: x2, cy: y2, r: radius / 2.6, fill: paint.paper, stroke: colour, "stroke-width": 1.6 }),
  );
}

function names(balls: readonly PlacedBall[], at: (place: BagPlace) => Point, { radius, font, plot }: Sizes, paint: Paint): string[] {
  const labels = balls.map((ball): Label => {
    const [x, y] = at(ball.atFirst);
    const off = radius + 5;
    return {
      words: `${ball.name} · ${ball.finish}`,
      offers: [
        { at: [x + off, y + 4], anchor: "start" },
        { at: [x - off, y + 4], anchor: "end" },
        { at: [x, y - off], anchor: "middle" },
        { at: [x, y + off + font], anchor: "middle" },
        { at: [x + off, y - off], anchor: "start" },
        { at: [x - off, y + off + font], anchor: "end" },
      ],
    };
  });
  const busy = balls.flatMap(({ atFirst, atLast }) => [atFirst, ...(atLast === null ? [] : [atLast])]).map(at);
  return placeLabels(labels, plot, busy, BOLD_WIDER * font).map(({ words, at: [x, y], anchor }, i) =>
    textEl(words, {
      x,
      y,
      "text-anchor": anchor,
      "font-family": SANS,
      "font-size": font,
      "font-weight": balls[i].role === "thrown" ? 600 : 400,
      fill: balls[i].role === "thrown" ? paint.ink : paint.faint,
      stroke: paint.paper,
      "stroke-width": 3,
      "paint-order": "stroke",
    }),
  );
}

/** The session as a log: a stretch for each ball, ticks between games. */
function strip(stages: readonly BagStage[], { strip: { left, right }, font }: Sizes, top: number, paint: Paint): string[] {
  if (stages.length === 0) return [];
  const x = scaleLinear([0, stages.length], [left, right]);
  const stretches = stretchesOf(stages);
  const games = [...new Set(stages.map(({ game }) => game))];
  return [
    ...stretches.map(({ from, to, stage }) => {
      const dark = Math.min(1, effectiveRaUm(parseFinish(stage.finish)) / 1.1);
      return el("rect", {
        x: x(from),
        y: top,
        width: x(to) - x(from),
        height: STRIP_HEIGHT,
        fill: paint.oil,
        "fill-opacity": 0.12 + 0.4 * dark,
        stroke: paint.ink,
        "stroke-width": 1,
      });
    }),
    ...stretches.map(({ from, to, stage }) => {
      const room = Math.floor((x(to) - x(from)) / (font * 0.56));
      return textEl(shortened(stage.ball, room), {
        x: (x(from) + x(to)) / 2,
        y: top + STRIP_HEIGHT / 2 + font * 0.35,
        "text-anchor": "middle",
        "font-family": SERIF,
        "font-size": font,
        "font-weight": 600,
        fill: paint.ink,
      });
    }),
    ...games.map((game) => {
      const first = stages.findIndex((stage) => stage.game === game);
      return el(
        "g",
        {},
        el("line", { x1: x(first), x2: x(first), y1: top - 5, y2: top + STRIP_HEIGHT + 5, stroke: paint.ink, "stroke-width": 1.5 }),
        textEl(BAG.chartGame(game), {
          x: x(first) + 3,
          y: top + STRIP_HEIGHT + 18,
          "font-family": SANS,
          "font-size": font - 1,
          fill: paint.faint,
        }),
      );
    }),
  ];
}

function stretchesOf(stages: readonly BagStage[]): { from: number; to: number; stage: BagStage }[] {
  const found: { from: number; to: number; stage: BagStage }[] = [];
  stages.forEach((stage, i) => {
    const last = found[found.length - 1];
    if (last !== undefined && last.stage.ball === stage.ball) last.to = i + 1;
    else found.push({ from: i, to: i + 1, stage });
  });
  return found;
}

function shortened(words: string, room: number): string {
  return words.length <= room ? words : `${words.slice(0, Math.max(1, room - 1))}…`;
}

function descriptionOf(balls: readonly PlacedBall[]): string {
  return BAG.chartDescription(
    balls.map(({ name, finish, atFirst }) => BAG.chartRow(name, finish, atFirst.hookStartFt, atFirst.entryAngleDeg)),
  );
}
