import type { FilmSheet } from "#engine/lane/filmSheet";
import type { LaneFrame } from "./laneFrame.ts";
import { border, landmarks } from "./laneMarks.ts";
import { oilLevels } from "./oilContours.ts";
import type { Paint } from "./paint.ts";
import { el, pathOf } from "./svg.ts";

/** Thinner films are not told apart in a strip, µm. */
const LEAST_UM = 0.3;

/** A small lane as ground for courses: oil in depths, landmarks, border. */
export function laneStrip(film: FilmSheet, frame: LaneFrame, paint: Paint): string {
  const levels = oilLevels(film, frame).filter(({ um }) => um >= LEAST_UM);
  return [
    el("rect", { x: frame.left, y: frame.top, width: frame.width, height: frame.height, fill: paint.lane }),
    ...levels.map(({ areas }) => el("path", { d: areas.map((ring) => `${pathOf(ring)}Z`).join(""), fill: paint.oil, "fill-opacity": 0.1 })),
    landmarks(frame, paint),
    border(frame, paint),
  ].join("");
}
