import type { Line } from "../delivery/bowler.ts";
import { xToBoard } from "../lane/geometry.ts";
import { emptyRun } from "../motion/averaged.ts";
import type { Finish } from "../surface/finish.ts";
import { FOOT, MPH } from "../units.ts";
import { weightedMean } from "../worlds/weightedMean.ts";
import { band } from "./comparison.ts";
import { groundIn, throwerOn } from "./ground.ts";
import type { PlanQuestion } from "./question.ts";
import { filmFound } from "./session.ts";
import { boardAtPins, entryDegOf, OFF_LANE_BOARD, throwBall } from "./thrown.ts";
import { weighedBy } from "./trial.ts";

/** The figures of a mean shot that differ from world to world. */
export const BAND_FIGURES = ["boardAtPins", "entryAngleDeg", "hookStartFt", "breakpointBoard", "breakpointFt", "speedAtPinsMph"] as const;
export type BandFigure = (typeof BAND_FIGURES)[number];

/** Where nine worlds of ten have a figure; null where fewer than nine of ten have it at all: a ball that leaves the lane, or never hooks. */
export type BandRange = { readonly low: number; readonly high: number } | null;

/** One shot in the worlds. */
export interface ShotBand extends Readonly<Record<BandFigure, BandRange>> {
  readonly worlds: number;
}

/** Worlds on a lane as laid, and on one that shots have worn, where each has its own wear to work out. */
const ASKED = { fresh: 128, worn: 16 } as const;
/** A figure that so many of the worlds do not have is not given. */
const WITHOUT = 0.1;

/** The mean shot on a line, in every world: constants, house and night, and a delivery that is off by what is not known of it. */
export function shotBand(question: PlanQuestion, finish: Finish, line: Line): ShotBand {
  const asked = question.lane.playedShots > 0 ? ASKED.worn : ASKED.fresh;
  const weighed = weighedBy(question)
    .toSorted((a, b) => (question.trial.length === 0 ? 0 : b.weight - a.weight))
    .slice(0, asked);
  const weights = weighed.map(({ weight }) => weight);
  const run = emptyRun();
  const seen = weighed.map(({ world }): Readonly<Record<BandFigure, number | null>> => {
    const ground = groundIn(world, question);
    throwBall(throwerOn(filmFound(ground), ground.question, finish, ground.assumed), line.laydownBoard, line.launchAngleDeg, run);
    const arrives = run.reached === 1 && xToBoard(run.breakX) > OFF_LANE_BOARD;
    return {
      boardAtPins: arrives ? boardAtPins(run) : null,
      entryAngleDeg: arrives ? entryDegOf(run) : null,
      hookStartFt: run.hookY < 0 ? null : run.hookY / FOOT,
      breakpointBoard: xToBoard(run.breakX),
      breakpointFt: run.breakY / FOOT,
      speedAtPinsMph: arrives ? Math.hypot(run.vx, run.vy) / MPH : null,
    };
  });
  const ranges = Object.fromEntries(
    BAND_FIGURES.map((id) => [
      id,
      rangeOf(
        seen.map((one) => one[id]),
        weights,
      ),
    ]),
  ) as Record<BandFigure, BandRange>;
  return { worlds: weighed.length, ...ranges };
}

function rangeOf(values: readonly (number | null)[], weights: readonly number[]): BandRange {
  const missing = weightedMean(
    values.map((value) => (value === null ? 1 : 0)),
    weights,
  );
  if (missing > WITHOUT) return null;
  const there = values.flatMap((value, i) => (value === null ? [] : [{ value, weight: weights[i] }]));
  const figures = there.map(({ value }) => value);
  const own = there.map(({ weight }) => weight);
  return band(figures, weightedMean(figures, own), own);
}
