import type { FilmSheet } from "#engine/lane/filmSheet";
import { fixed } from "#words/figures";
import { type Box, holds } from "./labelPlaces.ts";
import type { LaneFrame } from "./laneFrame.ts";
import { figuresOnLines, type OilFigure, oilLevels, soundings } from "./oilContours.ts";
import { type Paint, SANS, SERIF } from "./paint.ts";
import { el, type Point, pathOf, textEl } from "./svg.ts";

/** What figures of the oil keep clear of: the courses, and the words beside them. */
interface Taken {
  readonly wakes: readonly Point[];
  readonly words: readonly Box[];
}

/** Wood, oil and its figures. */
export function laneGround(film: FilmSheet, frame: LaneFrame, taken: Taken, paint: Paint, font: number): string {
  const levels = oilLevels(film, frame);
  const isFree = ({ at }: OilFigure): boolean =>
    taken.words.every((box) => !holds(box, at, font * 0.7)) && taken.wakes.every((p) => Math.hypot(p[0] - at[0], p[1] - at[1]) > font);
  const onLines = figuresOnLines(levels, frame, font * 2).filter(isFree);
  const between = soundings(
    film,
    frame,
    onLines.map((f) => f.at),
    font * 1.45,
  ).filter(isFree);
  return [
    el("rect", { x: frame.left, y: frame.top, width: frame.width, height: frame.height, fill: paint.lane }),
    ...levels.map((level) =>
      el("path", {
        class: "gw-oil",
        d: level.areas.map((ring) => `${pathOf(ring)}Z`).join(""),
        fill: paint.oil,
        "fill-opacity": 0.1,
        "fill-rule": "evenodd",
      }),
    ),
    ...levels.map((level) =>
      el("path", {
        class: "gw-oil-line",
        "data-um": level.um,
        d: level.lines.map(pathOf).join(""),
        fill: "none",
        stroke: paint.oil,
        "stroke-width": level.um >= 1 && level.um % 1 === 0 ? 0.9 : 0.6,
      }),
    ),
    ...between.map((f) => figure(f, paint.faint, { "font-size": font * 0.82, "font-style": "italic", "fill-opacity": 0.85 })),
    ...onLines.map((f) =>
      figure(f, paint.oil, {
        "font-size": font * 0.9,
        "font-weight": 600,
        stroke: paint.lane,
        "stroke-width": 3.5,
        "paint-order": "stroke",
        class: "gw-oil-figure",
      }),
    ),
  ].join("");
}

function figure(f: OilFigure, colour: string, style: Record<string, string | number>): string {
  const written = f.um < 1 ? fixed(f.um, 1) : fixed(f.um, 1).replace(/[.,]0$/, "");
  return textEl(written, {
    x: f.at[0],
    y: f.at[1] + Number(style["font-size"]) * 0.35,
    "text-anchor": "middle",
    "font-family": style["font-style"] === undefined ? SANS : SERIF,
    fill: colour,
    "stroke-linejoin": "round",
    ...style,
  });
}
