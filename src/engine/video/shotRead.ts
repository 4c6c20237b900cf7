import { xToBoard } from "../lane/geometry.ts";
import { cholesky } from "../learning/matrix.ts";
import { FOOT } from "../units.ts";
import { FIGURE_IDS, type FigureId, figuresOf } from "./figures.ts";
import type { CourseFit } from "./fitCourse.ts";
import { columnAt, type FreeCourse, freeCourse } from "./freeFriction.ts";
import { deliveredOf } from "./numbersOfCourse.ts";

/** A figure with its 90 % interval. */
export interface Figure {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

export interface SampleRead {
  readonly yFt: number;
  /** By the video's own clock. */
  readonly tS: number;
  readonly board: number;
  readonly boardLow: number;
  readonly boardHigh: number;
}

/** Why a figure is not told. */
export type NoFigure = "pinsNotSeen" | "firstSeenLate" | "hookNotSeen" | "noHook" | "revsNotSeen" | "breakpointNotSeen" | "notSure";

/** One shot read from a video. */
export interface ShotRead {
  readonly samples: readonly SampleRead[];
  readonly figures: Readonly<Record<FigureId, Figure | null>>;
  readonly why: Readonly<Partial<Record<FigureId, NoFigure>>>;
}

/** Half a 90 % interval of a normal quantity, in standard deviations. */
const NINETY = 1.645;
/** Figures are differentiated over this share of a standard deviation. */
const NUDGE = 0.5;

/**
 * What the averaged model with free friction leaves out of the full one (the core's tumbling, the lane's change across), half a 90 % interval. Measured on shots
 * that are not used for the accuracy told: docs/model/video.md.
 */
const MODEL_WITHIN: Readonly<Record<FigureId, number>> = {
  launchSpeedMph: 0.02,
  launchAngleDeg: 0.02,
  laydownBoard: 0.03,
  hookStartFt: 1.3,
  breakpointFt: 0.3,
  breakpointBoard: 0.03,
  entryAngleDeg: 0.22,
  boardAtPins: 0.05,
  speedAtPinsMph: 0.05,
  revRateRpm: 20,
};
const BOARD_WITHIN = 0.03;

/** Figures at the pins want the ball seen past here; those of the launch before here. */
const PINS_SEEN_FT = 58;
const LAUNCH_SEEN_FT = 15;
/** A figure less sure than this, half an interval, is not told. */
const LEAST_SURE: Readonly<Record<FigureId, number>> = {
  launchSpeedMph: 1,
  launchAngleDeg: 0.6,
  laydownBoard: 1.5,
  hookStartFt: 6,
  breakpointFt: 6,
  breakpointBoard: 1.5,
  entryAngleDeg: 3,
  boardAtPins: 3,
  speedAtPinsMph: 2,
  revRateRpm: 90,
};

/** A course as its figures, each with what its fit's covariance makes of it. @param seenFt nearest and furthest place at which the ball was seen */
export function shotRead(fit: CourseFit, seenFt: { readonly first: number; readonly last: number }): ShotRead {
  const value = figuresOf(fit.numbers, fit.course);
  const nudged = nudgesOf(fit);
  const moved = nudged.map((pair) => pair.map(({ numbers, course }) => figuresOf(numbers, course)));
  const why: Partial<Record<FigureId, NoFigure>> = {};
  const figures = Object.fromEntries(
    FIGURE_IDS.map((id) => {
      const figure = around(
        value[id],
        moved.map(([less, more]) => [less[id], more[id]]),
        MODEL_WITHIN[id],
      );
      const reason = whyNot(id, figure, seenFt);
      if (reason !== null) why[id] = reason;
      return [id, reason === null ? figure : null];
    }),
  ) as Record<FigureId, Figure | null>;
  return { samples: samplesOf(fit, nudged, seenFt.last), figures, why };
}

interface Nudged {
  readonly numbers: readonly number[];
  readonly course: FreeCourse;
}

/**
 * Courses a little to either side along each of the covariance's own directions. Spin, axis and friction are tied along a bent ridge, so that draws from the
 * covariance, which is straight, would leave it: each figure's error is by its derivatives there.
 */
function nudgesOf({ numbers, covariance }: CourseFit): (readonly [Nudged, Nudged])[] {
  const lower = cholesky(covariance);
  return numbers.map((_, k) => {
    const to = (share: number): Nudged => {
      const moved = numbers.map((number, i) => number + share * lower[i][k]);
      return { numbers: moved, course: freeCourse(deliveredOf(moved)) };
    };
    return [to(-NUDGE), to(NUDGE)];
  });
}

/** A value with its interval; further out by what the model leaves out. Null where it is not there, or hangs by a hair. */
function around(value: number | null, moved: readonly (readonly [number | null, number | null])[], within: number): Figure | null {
  if (value === null) return null;
  let variance = 0;
  for (const [less, more] of moved) {
    if (less === null || more === null) return null;
    variance += ((more - less) / (2 * NUDGE)) ** 2;
  }
  const half = Math.hypot(NINETY * Math.sqrt(variance), within);
  return { value, low: value - half, high: value + half };
}

function whyNot(id: FigureId, figure: Figure | null, seenFt: { readonly first: number; readonly last: number }): NoFigure | null {
  if (AT_PINS.has(id) && seenFt.last < PINS_SEEN_FT) return "pinsNotSeen";
  if (AT_LAUNCH.has(id) && seenFt.first > LAUNCH_SEEN_FT) return "firstSeenLate";
  if (figure === null) return id === "hookStartFt" ? "noHook" : "notSure";
  if ((figure.high - figure.low) / 2 <= LEAST_SURE[id]) return null;
  return NOT_SURE[id] ?? "notSure";
}

const AT_PINS: ReadonlySet<FigureId> = new Set(["entryAngleDeg", "boardAtPins", "speedAtPinsMph"] as const);
const AT_LAUNCH: ReadonlySet<FigureId> = new Set(["launchSpeedMph", "launchAngleDeg", "laydownBoard"] as const);
const NOT_SURE: Partial<Record<FigureId, NoFigure>> = {
  hookStartFt: "hookNotSeen",
  breakpointFt: "breakpointNotSeen",
  breakpointBoard: "breakpointNotSeen",
  revRateRpm: "revsNotSeen",
};

/** The course foot by foot, no further than the ball was seen. */
function samplesOf({ numbers, course }: CourseFit, nudged: readonly (readonly [Nudged, Nudged])[], lastFt: number): SampleRead[] {
  const samples: SampleRead[] = [];
  for (let yFt = 0; yFt <= Math.min(60, lastFt + 0.5); yFt++) {
    const boardOf = (of: FreeCourse) => xToBoard(columnAt(of.x, yFt * FOOT));
    const figure = around(
      boardOf(course),
      nudged.map(([less, more]) => [boardOf(less.course), boardOf(more.course)]),
      BOARD_WITHIN,
    );
    if (figure === null) continue;
    const { value: board, low: boardLow, high: boardHigh } = figure;
    samples.push({ yFt, tS: numbers[0] + columnAt(course.t, yFt * FOOT), board, boardLow, boardHigh });
  }
  return samples;
}
