import { scaleLinear, scalePoint } from "d3-scale";
import { area, line } from "d3-shape";
import { finishText } from "#engine/surface/finish";
import { CHART } from "#words/en/charts";
import type { Layout } from "./laneFrame.ts";
import { FILE_PAINT, type Paint, SANS, SERIF } from "./paint.ts";
import type { Ground, PlateauInput, Step } from "./plateauInput.ts";
import { cliffMarks, directions, flat, stepMark } from "./plateauMarks.ts";
import { el, picture, textEl } from "./svg.ts";
import { finishTexture } from "./texture.ts";

export interface PlateauOptions {
  /** `lying` is 640 wide, `upright` 360. */
  readonly layout?: Layout;
  readonly paint?: Paint;
  readonly id?: string;
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
