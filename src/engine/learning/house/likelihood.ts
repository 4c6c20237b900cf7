import { leaveChanceAt } from "../../pins/carry.ts";
import { cholesky, dotProduct, logDet, solveCholesky } from "../matrix.ts";
import { truncated } from "../normal.ts";
import { ARROWS_TO_FT, type Arrived, type Eye, FLUSH, RIGHT_FT, type ShotSeen, type Turned } from "./notes.ts";
import { LATENT } from "./observe.ts";
import { lifts, type Scatter, scatter } from "./scatter.ts";

/** Logarithm of the chance of what was seen of one shot, given what the model shows at a place. */
export type ShotLikelihood = (shown: ArrayLike<number>) => number;

/** One shot in so many is something else altogether: another line, a slip, a wrong note. Its figures may then lie anywhere within five times the scatter. */
const OUTLIERS = 0.05;
const OUTLIER_WIDTH = 5;
/** A leave is not believed further than this: the table of the pins is a model too. */
const LEAVE_BELIEVED = 0.8;
const ANY_LEAVE = 0.05;

export interface Read {
  readonly latent: number;
  readonly value: number;
  readonly eyeSd: number;
}

/**
 * The likelihood of one shot. Its own scatter about what was meant is common to all that is seen of it, so the figures are taken as jointly normal, with the
 * mean and the covariance of off·z + bend·z² for normal z (second-order delta method); "early" and "high"
 * are intervals of what lies behind them, taken one after the other given the figures (a normal is put for the truncated one in between).
 */
export function shotLikelihood(shot: ShotSeen, about: Scatter, expectedFt: number, distances: readonly number[], eye: Eye): ShotLikelihood {
  const covariance: Covariance = (a, b) => scatter(about, a, b);
  const lift = lifts(about);
  const reads = readsOf(shot, distances, eye);
  const figures = figuresPart(reads, covariance);
  const { hookFt, boardAtPins, entryDeg } = LATENT;
  const behind = [hookFt, boardAtPins];
  const gains = behind.map((latent) => gainOf(latent, reads, covariance, figures));
  const left = (a: 0 | 1, b: 0 | 1): number =>
    Math.max(
      a === b ? 1e-6 : Number.NEGATIVE_INFINITY,
      covariance(behind[a], behind[b]) -
        dotProduct(
          gains[a],
          reads.map(({ latent }) => covariance(behind[b], latent)),
        ),
    );
  const variances = [left(0, 0), left(1, 1)];
  const shared = left(0, 1);
  return (meant) => {
    const shown = lift.map((by, latent) => meant[latent] + by);
    const off = reads.map(({ latent, value }) => value - shown[latent]);
    let log = figures.log(off);
    const hook = shown[hookFt] + dotProduct(gains[0], off);
    let pins = shown[boardAtPins] + dotProduct(gains[1], off);
    let pinsVariance = variances[1];
    if (shot.turned !== null) {
      const variance = variances[0] + eye.turnFt ** 2;
      const sd = Math.sqrt(variance);
      const [low, high] = turnedBounds(shot.turned, expectedFt);
      const cut = truncated((low - hook) / sd, (high - hook) / sd);
      log += Math.log((1 - OUTLIERS) * cut.chance + OUTLIERS / 3);
      pins += (shared / sd) * cut.mean;
      pinsVariance = Math.max(1e-6, pinsVariance - (shared ** 2 / variance) * (1 - cut.variance));
    }
    if (shot.arrived !== null) {
      const sd = Math.sqrt(pinsVariance + eye.pinsBoards ** 2);
      const [low, high] = arrivedBounds(shot.arrived);
      log += Math.log((1 - OUTLIERS) * truncated((low - pins) / sd, (high - pins) / sd).chance + OUTLIERS / 3);
    }
    if (shot.leave !== null) log += leavePart(shot.leave, pins, Math.sqrt(pinsVariance), shown[entryDeg]);
    return log;
  };
}

/** The figures that were read of a shot. */
export function readsOf(shot: ShotSeen, distances: readonly number[], eye: Eye): readonly Read[] {
  const reads: Read[] = shot.boards.map(({ atFt, board }) => ({
    latent: LATENT.boards + distances.indexOf(atFt),
    value: board,
    eyeSd: atFt <= ARROWS_TO_FT ? eye.arrowsBoards : eye.breakpointBoards,
  }));
  const add = (latent: number, value: number | null, eyeSd: number) => {
    if (value !== null) reads.push({ latent, value, eyeSd });
  };
  add(LATENT.breakpointBoard, shot.breakpointBoard, eye.breakpointBoards);
  add(LATENT.breakpointFt, shot.breakpointFt, eye.breakpointFt);
  add(LATENT.boardAtPins, shot.boardAtPins, eye.pinsBoards);
  add(shot.speedAt === "launch" ? LATENT.launchMph : LATENT.pinsMph, shot.speedMph, eye.speedMph);
  return reads;
}

type Covariance = (a: number, b: number) => number;

interface FiguresPart {
  readonly log: (off: readonly number[]) => number;
  readonly solve: (b: readonly number[]) => readonly number[];
}

/** Figures together: normal with the shot's scatter and the eye's error, or, one time in twenty, five times as wide. */
function figuresPart(reads: readonly Read[], covariance: Covariance): FiguresPart {
  if (reads.length === 0) return { log: () => 0, solve: () => [] };
  const lower = cholesky(reads.map((a, i) => reads.map((b, k) => covariance(a.latent, b.latent) + (i === k ? a.eyeSd ** 2 : 0))));
  const norm = -0.5 * (logDet(lower) + reads.length * Math.log(2 * Math.PI));
  const wide = OUTLIERS / OUTLIER_WIDTH ** reads.length;
  return {
    solve: (b) => solveCholesky(lower, b),
    log: (off) => {
      const square = dotProduct(off, solveCholesky(lower, off));
      return norm + Math.log((1 - OUTLIERS) * Math.exp(-0.5 * square) + wide * Math.exp((-0.5 * square) / OUTLIER_WIDTH ** 2) + 1e-300);
    },
  };
}

/** By how much what lies behind moves with each figure's error. */
function gainOf(latent: number, reads: readonly Read[], covariance: Covariance, figures: FiguresPart): readonly number[] {
  return figures.solve(reads.map((read) => covariance(latent, read.latent)));
}

function turnedBounds(turned: Turned, expectedFt: number): readonly [number, number] {
  if (turned === "early") return [Number.NEGATIVE_INFINITY, expectedFt - RIGHT_FT];
  return turned === "late" ? [expectedFt + RIGHT_FT, Number.POSITIVE_INFINITY] : [expectedFt - RIGHT_FT, expectedFt + RIGHT_FT];
}

function arrivedBounds(arrived: Arrived): readonly [number, number] {
  if (arrived === "light") return [Number.NEGATIVE_INFINITY, FLUSH[0]];
  return arrived === "high" ? [FLUSH[1], Number.POSITIVE_INFINITY] : FLUSH;
}

/** Three-point Gauss–Hermite over the board at the pins (Abramowitz & Stegun 25.4.46). */
const NODES: readonly (readonly [number, number])[] = [
  [-1.7320508075688772, 1 / 6],
  [0, 2 / 3],
  [1.7320508075688772, 1 / 6],
];

function leavePart(leave: number, board: number, sd: number, entryDeg: number): number {
  let chance = 0;
  for (const [z, weight] of NODES) chance += weight * leaveChanceAt(leave, board + z * sd, entryDeg);
  return Math.log(LEAVE_BELIEVED * Math.max(0, chance) + (1 - LEAVE_BELIEVED) * ANY_LEAVE);
}
