import { scaleLinear, scalePoint } from "d3-scale";
import { area, line } from "d3-shape";
import { type Finish, finishText } from "#engine/surface/finish";
import { CHART } from "#words/en/charts";
import type { Layout } from "./laneFrame.ts";
import { FILE_PAINT, type Paint, SANS, SERIF } from "./paint.ts";
import { el, picture, textEl } from "./svg.ts";
import { finishTexture, texturedBall } from "./texture.ts";

/** One finish: how many good shots in a hundred it loses against the pick (below 0: gains), with the band of that *difference*. Null without a line. */
export interface PlateauStep {
  readonly finish: Finish;
  readonly lossPer100: { readonly value: number; readonly low: number; readonly high: number } | null;
}

export interface PlateauInput {
  /** From dull to smooth. */
  readonly steps: readonly PlateauStep[];
  /** As `finishText` writes it; null when nothing is picked. */
  readonly pick: string | null;
  readonly plateau: readonly string[];
  readonly cliff: "smoother" | "duller" | null;
}

export interface PlateauOptions {
  /** `lying` is 640 wide, `upright` 360. */
  readonly layout?: Layout;
  readonly paint?: Paint;
  readonly id?: string;
}

type Step = PlateauStep & { readonly lossPer100: NonNullable<PlateauStep["lossPer100"]> };

/** The ground of the picture: where a finish stands and how deep a loss lies. */
interface Ground {
  readonly x: (finish: string) => number;
  readonly y: (loss: number) => number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly font: number;
}

/**
 * What each finish costs, drawn as a section through the ground: a flat that is as good as makes no difference, and
 * where it falls away. The band is the uncertainty of the difference from the pick.
 */
export function plateauBar(input: PlateauInput, options: PlateauOptions = {}): string {
  const layout = options.layout ?? "lying";
  const paint = options.paint ?? FILE_PAINT;
  const id = options.id ?? "plateau";
  const ground = groundOf(input, layout);
  const known = input.steps.filter((s): s is Step => s.lossPer100 !== null);
  return picture(
    { width: layout === "lying" ? 640 : 360, height: ground.bottom + 80 },
    { id, title: CHART.lossTitle, description: descriptionOf(input) },
    el("defs", {}, ...input.steps.map((s, i) => finishTexture(`${id}-finish-${i}`, s.finish, undefined, paint))),
    depthLines(ground, paint),
    section(known, ground, paint),
    flat(input, ground, paint),
    cliffMarks(input, known, ground, paint),
    ...input.steps.map((s, i) => stepMark(s, finishText(s.finish) === input.pick, `${id}-finish-${i}`, ground, paint)),
    directions(ground, paint),
  );
}

function groundOf(input: PlateauInput, layout: Layout): Ground {
  const deepest = input.steps.reduce((most, s) => Math.max(most, s.lossPer100?.high ?? 0), 0);
  const highest = input.steps.reduce((least, s) => Math.min(least, s.lossPer100?.low ?? 0), 0);
  const [left, right, top, bottom] = layout === "lying" ? [50, 630, 58, 208] : [34, 354, 58, 208];
  const x = scalePoint(
    input.steps.map((s) => finishText(s.finish)),
    [left, right],
  ).padding(0.5);
  const y = scaleLinear([highest, Math.max(5, deepest)], [top, bottom]).nice();
  return { x: (finish) => x(finish) ?? left, y, left, right, top, bottom, font: layout === "lying" ? 12.5 : 11 };
}

function descriptionOf(input: PlateauInput): string {
  return CHART.lossDescription(
    input.steps.map((s) => {
      const name = finishText(s.finish);
      return s.lossPer100 === null
        ? `${name}: ${CHART.noLine}.`
        : CHART.lossRow(name, s.lossPer100.value.toFixed(1), s.lossPer100.low.toFixed(1), s.lossPer100.high.toFixed(1));
    }),
  );
}

function depthLines(g: Ground, paint: Paint): string {
  const scale = g.y as unknown as { ticks(count: number): number[] };
  const lines = scale.ticks(4).map((loss) => {
    const y = g.y(loss);
    return (
      el("path", {
        d: `M${g.left},${y}H${g.right}`,
        stroke: paint.hair,
        "stroke-width": loss === 0 ? 1.2 : 0.7,
        "stroke-dasharray": loss === 0 ? undefined : "2 3",
      }) +
      textEl(CHART.lossTick(loss), {
        x: g.left - 8,
        y: y + g.font * 0.35,
        "text-anchor": "end",
        "font-family": SANS,
        "font-size": g.font,
        fill: paint.ink,
      })
    );
  });
  const axis = textEl(CHART.lossAxis(100), {
    x: 2,
    y: 16,
    "font-family": SERIF,
    "font-style": "italic",
    "font-size": g.font,
    fill: paint.faint,
  });
  return el("g", { class: "gw-depths" }, ...lines, axis);
}

/** The band of the differences, and the ground line through their values. */
function section(known: readonly Step[], g: Ground, paint: Paint): string {
  const at = (s: Step): number => g.x(finishText(s.finish));
  const band = area<Step>(
    at,
    (s) => g.y(s.lossPer100.low),
    (s) => g.y(s.lossPer100.high),
  )([...known]);
  const floor = line<Step>(at, (s) => g.y(s.lossPer100.value))([...known]);
  return (
    el("path", { class: "gw-band", d: band ?? "", fill: paint.oil, "fill-opacity": 0.2 }) +
    el("path", { class: "gw-floor", d: floor ?? "", fill: "none", stroke: paint.ink, "stroke-width": 2 })
  );
}

/** The finishes that are much the same, bracketed. */
function flat(input: PlateauInput, g: Ground, paint: Paint): string {
  const [first, last] = [input.plateau[0], input.plateau.at(-1)];
  if (first === undefined || last === undefined || input.plateau.length < 2) return "";
  const [from, to] = [g.x(first) - 14, g.x(last) + 14];
  const y = g.top - 24;
  return (
    el("path", { class: "gw-flat", d: `M${from},${y + 6}V${y}H${to}V${y + 6}`, fill: "none", stroke: paint.ink, "stroke-width": 1 }) +
    textEl(CHART.plateau, {
      x: (from + to) / 2,
      y: y - 4,
      "text-anchor": "middle",
      "font-family": SERIF,
      "font-style": "italic",
      "font-size": g.font,
      fill: paint.ink,
    })
  );
}

/** Strokes down the steep side, as a chart draws a cliff. */
function cliffMarks(input: PlateauInput, known: readonly Step[], g: Ground, paint: Paint): string {
  const edge = input.cliff === "smoother" ? input.plateau.at(-1) : input.cliff === "duller" ? input.plateau[0] : undefined;
  const index = known.findIndex((s) => finishText(s.finish) === edge);
  const [a, b] = [known[index], known[index + (input.cliff === "smoother" ? 1 : -1)]];
  if (a === undefined || b === undefined) return "";
  const [ax, ay, bx, by] = [g.x(finishText(a.finish)), g.y(a.lossPer100.value), g.x(finishText(b.finish)), g.y(b.lossPer100.value)];
  const strokes = [0.15, 0.3, 0.45, 0.6, 0.75, 0.9].map((t) => `M${ax + t * (bx - ax)},${ay + t * (by - ay)}v${13 - 5 * t}`);
  const anchor = bx > ax ? "start" : "end";
  return (
    el("path", { class: "gw-cliff", d: strokes.join(""), stroke: paint.ink, "stroke-width": 1.2 }) +
    textEl(CHART.cliff, {
      x: (ax + bx) / 2 + (bx > ax ? 8 : -8),
      y: (ay + by) / 2 - 6,
      "text-anchor": anchor,
      "font-family": SERIF,
      "font-style": "italic",
      "font-size": g.font,
      fill: paint.ink,
      stroke: paint.paper,
      "stroke-width": 3,
      "paint-order": "stroke",
    })
  );
}

function stepMark(step: PlateauStep, picked: boolean, textureId: string, g: Ground, paint: Paint): string {
  const name = finishText(step.finish);
  const x = g.x(name);
  const colour = picked ? paint.accent : paint.ink;
  const label = { x, "text-anchor": "middle", "font-family": SANS, "font-size": g.font, fill: colour };
  const [number, ...over] = name.split(" ");
  const under =
    texturedBall({ x, y: g.bottom + 18, radius: 9 }, textureId, step.finish, paint) +
    textEl(number ?? name, { ...label, y: g.bottom + 42, "font-weight": picked ? 650 : 400 }) +
    textEl(over.join(" "), { ...label, y: g.bottom + 55, "font-size": g.font * 0.9 });
  if (step.lossPer100 === null) return under + textEl(CHART.noLine, { ...label, y: (g.top + g.bottom) / 2, "font-style": "italic" });
  const y = g.y(step.lossPer100.value);
  const mark = picked
    ? el("path", {
        class: "gw-pennant",
        d: `M${x},${y}V${y + 34}M${x},${y + 16}l17,8.5l-17,8.5z`,
        fill: colour,
        stroke: colour,
        "stroke-width": 2,
      })
    : el("circle", { cx: x, cy: y, r: 3.6, fill: paint.paper, stroke: paint.ink, "stroke-width": 1.6 });
  return (
    mark +
    textEl(CHART.loss(step.lossPer100.value), {
      ...label,
      y: y - 8,
      fill: colour,
      "font-weight": picked ? 650 : 400,
      stroke: paint.paper,
      "stroke-width": 3,
      "paint-order": "stroke",
    }) +
    under
  );
}

function directions(g: Ground, paint: Paint): string {
  const style = { y: g.bottom + 74, "font-family": SERIF, "font-style": "italic", "font-size": g.font, fill: paint.faint };
  return (
    textEl(`← ${CHART.duller}`, { x: g.left, ...style }) + textEl(`${CHART.smoother} →`, { x: g.right, "text-anchor": "end", ...style })
  );
}
