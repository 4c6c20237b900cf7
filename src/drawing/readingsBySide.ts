import { scaleLog, scalePoint } from "d3-scale";
import type { EvennessVerdict } from "#engine/surface/readings/evenness";
import { READINGS } from "#words/en/measuring";
import { fixed } from "#words/figures";
import { FILE_PAINT, type Paint, SANS, SERIF } from "./paint.ts";
import { el, picture, textEl } from "./svg.ts";

export interface ReadingsInput {
  readonly verdict: EvennessVerdict;
  /** Null where nothing is wanted: then sides are only seen beside each other. */
  readonly targetUm: number | null;
}

const [WIDTH, HEIGHT] = [640, 260];
const BOX = { left: 56, right: 620, top: 44, bottom: 206 };
const TICKS_UM = [0.1, 0.15, 0.2, 0.3, 0.5, 0.7, 1, 1.5, 2];

/** Each side's mean with its range against the wanted roughness; the side to go back to is ringed and named in bold. */
export function readingsBySide({ verdict, targetUm }: ReadingsInput, paint: Paint = FILE_PAINT, id = "readings"): string {
  const { sides } = verdict;
  const all = [...sides.flatMap(({ low, high }) => [low, high]), ...(targetUm === null ? [] : [targetUm])];
  const y = scaleLog([Math.min(...all) * 0.8, Math.max(...all) * 1.25], [BOX.bottom, BOX.top]);
  const x = scalePoint(
    sides.map(({ side }) => side),
    [BOX.left, BOX.right],
  ).padding(0.5);
  const figure = { "font-family": SANS, "font-size": 12, fill: paint.faint };
  const [low, high] = y.domain();
  return picture(
    { width: WIDTH, height: HEIGHT },
    {
      id,
      title: READINGS.chartTitle,
      description: READINGS.chartDescription(sides.map(({ side, mean }) => `${side} ${fixed(mean, 2)} µm`).join(", ")),
    },
    el("rect", { width: WIDTH, height: HEIGHT, fill: paint.paper }),
    textEl(READINGS.chartTitle, { x: BOX.left, y: 24, "font-family": SERIF, "font-size": 16, fill: paint.ink }),
    ...TICKS_UM.filter((um) => um >= low && um <= high).flatMap((um) => [
      el("line", { x1: BOX.left, x2: BOX.right, y1: y(um), y2: y(um), stroke: paint.hair, "stroke-dasharray": "1 4" }),
      textEl(`${um} µm`, { x: BOX.left - 6, y: y(um) + 4, "text-anchor": "end", ...figure }),
    ]),
    ...(targetUm === null ? [] : wantedLine(y(targetUm), paint)),
    ...sides.map((side) => sideMark(side, x(side.side) ?? BOX.left, y, side.side === verdict.backTo, paint)),
    ...(targetUm === null ? [] : sides.map(({ side, stands }) => standsText(stands, x(side) ?? BOX.left, paint))),
  );
}

function wantedLine(y: number, paint: Paint): string[] {
  const { left: x1, right: x2 } = BOX;
  return [
    el("line", { x1, x2, y1: y, y2: y, stroke: paint.accent, "stroke-width": 1.5, "stroke-dasharray": "6 4" }),
    textEl(READINGS.wanted, { x: x2, y: y - 6, "text-anchor": "end", "font-family": SANS, "font-size": 12, fill: paint.accent }),
  ];
}

function standsText(stands: EvennessVerdict["sides"][number]["stands"], x: number, paint: Paint): string {
  const written = { "text-anchor": "middle", "font-family": SANS, "font-size": 11, fill: paint.faint };
  return textEl(READINGS.stands[stands], { x, y: BOX.bottom + 37, ...written });
}

function sideMark(side: EvennessVerdict["sides"][number], at: number, y: (um: number) => number, isBackTo: boolean, paint: Paint): string {
  return el(
    "g",
    {},
    el("line", { x1: at, x2: at, y1: y(side.low), y2: y(side.high), stroke: paint.ink, "stroke-width": 2 }),
    el("circle", {
      cx: at,
      cy: y(side.mean),
      r: 5,
      fill: side.stands === "met" ? paint.paper : paint.ink,
      stroke: paint.ink,
      "stroke-width": 2,
    }),
    ...(isBackTo ? [el("circle", { cx: at, cy: y(side.mean), r: 10, fill: "none", stroke: paint.accent, "stroke-width": 2 })] : []),
    textEl(side.side, {
      x: at,
      y: BOX.bottom + 20,
      "text-anchor": "middle",
      "font-family": SANS,
      "font-size": 12.5,
      "font-weight": isBackTo ? "bold" : undefined,
      fill: paint.ink,
    }),
  );
}
