import type { Assumed } from "#engine/assumptions";
import { SITUATIONS, type Situation } from "#engine/planning/situations";
import { finishText } from "#engine/surface/finish";
import { bestShot, ladderChances, ladderFor, outsideLead, resurfacingBoards, robot } from "./model.ts";

/** One fact that the constants are fitted to, or kept out and predicted. */
export interface Target {
  readonly name: string;
  readonly mark: "published" | "common practice";
  readonly source: string;
  /** Kept out of the fit. */
  readonly leftOut: boolean;
  readonly wanted: string;
  /** One unit of badness, in the target's own unit. */
  readonly unit: number;
  /** What the model says, and how far that is from what is wanted (0: inside). */
  readonly predict: (assumed: Partial<Assumed>) => { readonly says: string; readonly miss: number };
}

function beyond(value: number, low: number, high: number): number {
  return value < low ? low - value : value > high ? value - high : 0;
}

function band(
  name: string,
  mark: Target["mark"],
  source: string,
  unit: number,
  low: number,
  high: number,
  leftOut: boolean,
  value: (a: Partial<Assumed>) => number,
): Target {
  return {
    name,
    mark,
    source,
    unit,
    leftOut,
    wanted: `${low} to ${high}`,
    predict: (assumed) => {
      const said = value(assumed);
      return { says: said.toFixed(2), miss: beyond(said, low, high) };
    },
  };
}

/** Situations kept out, by their place in the registry: one of each kind of lane. */
const LEFT_OUT_SITUATIONS = new Set([1, 5, 8, 11]);

function situation(at: Situation, index: number): Target {
  return {
    name: `${at.style}, ${at.cover}, ${at.pattern}${at.playedShots > 0 ? ` after ${at.playedShots} shots` : ""}`,
    mark: "common practice",
    source: "the trade's rule for the situation",
    leftOut: LEFT_OUT_SITUATIONS.has(index),
    wanted: `${at.from} to ${at.to}`,
    unit: 1,
    predict: (assumed) => {
      const ratings = ladderChances(at, assumed);
      const best = ratings.reduce((top, rating, i) => (rating.chance > ratings[top].chance ? i : top), 0);
      const lead = outsideLead(at, ratings);
      return {
        says: `${finishText(ladderFor(at)[best])} (${lead > 0 ? `outside leads by ${lead.toFixed(1)}` : `inside leads by ${(-lead).toFixed(1)}`} points)`,
        miss: Math.max(0, lead),
      };
    },
  };
}

const exitRule = (pattern: string, lengthFt: number, leftOut: boolean) =>
  band(
    `board at the exit of the oil, ${pattern}`,
    "common practice",
    "exit board ≈ length in feet − 31, ± 3",
    1,
    lengthFt - 34,
    lengthFt - 28,
    leftOut,
    (a) => bestShot("matched", "hybrid", pattern, "2000", lengthFt, a)?.exitBoard ?? 0,
  );

export const TARGETS: readonly Target[] = [
  ...SITUATIONS.map(situation),
  band(
    "boards that resurfacing wins back (1000 against worn 4500, same line)",
    "published",
    "pro-shop wear study, second-hand: 4–5 boards",
    0.5,
    4,
    5,
    false,
    resurfacingBoards,
  ),
  exitRule("light-38", 38, true),
  exitRule("medium-41", 41, false),
  exitRule("heavy-44", 44, false),
  band(
    "time to the pins, matched, s",
    "published",
    "ball-tracking records: 2.0–2.6 s",
    0.1,
    2,
    2.6,
    false,
    (a) => bestShot("matched", "solid", "medium-41", "2000", 41, a)?.timeS ?? 0,
  ),
  band(
    "speed lost to the pins, matched, mph",
    "published",
    "ball-tracking records: 1.9–3.2 mph at 300–520 rpm",
    0.2,
    1.9,
    3.2,
    false,
    (a) => bestShot("matched", "solid", "medium-41", "2000", 41, a)?.lossMph ?? 0,
  ),
  band(
    "speed lost to the pins, elite, mph",
    "published",
    "ball-tracking records: 1.9–3.2 mph at 300–520 rpm",
    0.2,
    1.9,
    3.2,
    true,
    (a) => bestShot("elite", "pearl", "medium-41", "3000", 41, a)?.lossMph ?? 0,
  ),
  band(
    "entry angle, rev-dominant on medium-41 (hybrid 3000), deg",
    "published",
    "pocket strikes at 4–6°, USBC, second-hand",
    0.5,
    4,
    6,
    true,
    (a) => bestShot("revDominant", "hybrid", "medium-41", "3000", 41, a)?.entryDeg ?? 0,
  ),
  band(
    "robot: turn, dullest solid, deg",
    "published",
    "USBC ball motion study, second-hand: 2.06–4.89° at 275 rpm; its pattern is not published",
    0.5,
    2.06,
    4.89,
    true,
    (a) => robot("solid", "500", a).turnDeg,
  ),
  band(
    "robot: turn, polished pearl, deg",
    "published",
    "USBC ball motion study, second-hand: 2.06–4.89° at 275 rpm; its pattern is not published",
    0.5,
    2.06,
    4.89,
    false,
    (a) => robot("pearl", "4000 + polish", a).turnDeg,
  ),
  band(
    "robot: breakpoint, dullest solid, ft",
    "published",
    "USBC ball motion study, second-hand: 28.8–39.8 ft; its pattern is not published",
    2,
    28.8,
    39.8,
    false,
    (a) => robot("solid", "500", a).breakpointFt,
  ),
];
