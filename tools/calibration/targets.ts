import { SITUATIONS, type Situation } from "#engine/planning/situations";
import { type AskedWorld, outsideLead } from "./model.ts";

/** One fact that worlds are weighed by, or that is kept out and predicted. */
export interface Target {
  readonly name: string;
  readonly mark: "published" | "common practice";
  readonly source: string;
  /** Kept out of the weights. */
  readonly leftOut: boolean;
  /** What is wanted, in the target's own unit: at least and at most. */
  readonly wanted: readonly [low: number, high: number];
  /** One unit of badness. */
  readonly unit: number;
  readonly unitName: string;
  /** What a world says; null where it has no line to say it on. */
  readonly predict: (world: AskedWorld) => number | null;
}

/** How far a world misses a target, in the target's units of badness; one that says nothing misses by this much. */
const SAYS_NOTHING = 4;

export function missOf({ wanted: [low, high], unit }: Target, said: number | null): number {
  if (said === null) return SAYS_NOTHING;
  return (said < low ? low - said : said > high ? said - high : 0) / unit;
}

const NO_LEAD: readonly [number, number] = [Number.NEGATIVE_INFINITY, 0];

/** Whether it takes whole ladders to ask it. */
export function isLadder({ unitName }: Target): boolean {
  return unitName === "strikes in 100" || unitName === "steps";
}

/** Situations kept out, by their place in the registry: one of each kind of lane. */
const LEFT_OUT_SITUATIONS = new Set([1, 5, 8, 11]);

export function situationName({ style, cover, pattern, playedShots, from, to }: Situation): string {
  return `${style}, ${cover}, ${pattern}${playedShots > 0 ? ` after ${playedShots} shots` : ""}: ${from} to ${to}`;
}

function situation(at: Situation, index: number): Target {
  return {
    name: situationName(at),
    mark: "common practice",
    source: "the trade's rule for the situation: by how many strikes in 100 the best finish outside leads",
    leftOut: LEFT_OUT_SITUATIONS.has(index),
    wanted: NO_LEAD,
    unit: 1.5,
    unitName: "strikes in 100",
    predict: (world) => outsideLead(at, world.ladder(at, "fresh")),
  };
}

function exitRule(pattern: "light-38" | "medium-41" | "heavy-44", lengthFt: number, leftOut: boolean): Target {
  return {
    name: `board at the exit of the oil, ${pattern}`,
    mark: "common practice",
    source: "exit board ≈ length in feet − 31, ± 3",
    leftOut,
    wanted: [lengthFt - 34, lengthFt - 28],
    unit: 1,
    unitName: "board",
    predict: (world) => world.bestShot("matched", "hybrid", pattern, "2000", lengthFt)?.exitBoard ?? null,
  };
}

const TRACKED = "ball-tracking records: 1.9–3.2 mph at 300–520 rpm";
const ROBOT = "USBC ball motion study, second-hand, read at 49 ft at 275 rpm; its pattern is not published";

/** The league night's ladder of balls, from strong to weak: as a house pattern breaks down the best of them moves down it. */
const LEAGUE_LADDER = [
  { cover: "solid", finish: "1000" },
  { cover: "hybrid", finish: "2000" },
  { cover: "pearl", finish: "3000" },
  { cover: "pearl", finish: "4000 + polish" },
] as const;
const LEAGUE_SHOTS = [0, 40, 80, 120];

export const TARGETS: readonly Target[] = [
  ...SITUATIONS.map(situation),
  {
    name: "boards that resurfacing wins back (1000 against worn 4500, same line)",
    mark: "published",
    source: "pro-shop wear study, second-hand: 4–5 boards",
    leftOut: false,
    wanted: [4, 5],
    unit: 0.75,
    unitName: "board",
    predict: (world) => world.resurfacingBoards(),
  },
  exitRule("light-38", 38, true),
  exitRule("medium-41", 41, false),
  exitRule("heavy-44", 44, false),
  {
    name: "time to the pins, matched",
    mark: "published",
    source: "ball-tracking records: 2.0–2.6 s",
    leftOut: false,
    wanted: [2, 2.6],
    unit: 0.1,
    unitName: "s",
    predict: (world) => world.bestShot("matched", "solid", "medium-41", "2000", 41)?.timeS ?? null,
  },
  {
    name: "speed lost to the pins, matched",
    mark: "published",
    source: TRACKED,
    leftOut: false,
    wanted: [1.9, 3.2],
    unit: 0.2,
    unitName: "mph",
    predict: (world) => world.bestShot("matched", "solid", "medium-41", "2000", 41)?.lossMph ?? null,
  },
  {
    name: "speed lost to the pins, elite",
    mark: "published",
    source: TRACKED,
    leftOut: true,
    wanted: [1.9, 3.2],
    unit: 0.2,
    unitName: "mph",
    predict: (world) => world.bestShot("elite", "pearl", "medium-41", "3000", 41)?.lossMph ?? null,
  },
  {
    name: "entry angle, rev-dominant on medium-41 (hybrid 3000)",
    mark: "published",
    source: "pocket strikes at 4–6°, USBC, second-hand",
    leftOut: true,
    wanted: [4, 6],
    unit: 0.5,
    unitName: "deg",
    predict: (world) => world.bestShot("revDominant", "hybrid", "medium-41", "3000", 41)?.entryDeg ?? null,
  },
  {
    name: "robot: turn, dullest solid",
    mark: "published",
    source: `${ROBOT}: 2.06–4.89°`,
    leftOut: true,
    wanted: [2.06, 4.89],
    unit: 0.5,
    unitName: "deg",
    predict: (world) => world.robot("solid", "500").turnDeg,
  },
  {
    name: "robot: turn, polished pearl",
    mark: "published",
    source: `${ROBOT}: 2.06–4.89°`,
    leftOut: false,
    wanted: [2.06, 4.89],
    unit: 0.5,
    unitName: "deg",
    predict: (world) => world.robot("pearl", "4000 + polish").turnDeg,
  },
  {
    name: "robot: breakpoint, dullest solid",
    mark: "published",
    source: `${ROBOT}: 28.8–39.8 ft`,
    leftOut: false,
    wanted: [28.8, 39.8],
    unit: 2,
    unitName: "ft",
    predict: (world) => world.robot("solid", "500").breakpointFt,
  },
  {
    name: "league night on the house pattern: steps by which the best of four balls goes back up the ladder, solid to polished pearl",
    mark: "common practice",
    source: "solid on the fresh, then hybrid, pearl, polished pearl as the oil goes",
    leftOut: true,
    wanted: [Number.NEGATIVE_INFINITY, 0],
    unit: 1,
    unitName: "steps",
    predict: (world) => {
      const best = LEAGUE_SHOTS.map((shots) => world.bestOf(LEAGUE_LADDER, "house-40", shots));
      return best.reduce((back, ball, i) => back + (i > 0 ? Math.max(0, best[i - 1] - ball) : 0), 0);
    },
  },
];
