import type { Line } from "../delivery/bowler.ts";
import { targetBoard } from "../delivery/bowler.ts";
import type { FilmMap } from "../lane/filmMap.ts";
import { type AveragedRun, emptyRun } from "../motion/averaged.ts";
import { turns } from "../motion/phases.ts";
import type { Thrower } from "../motion/track.ts";
import { type CarryResult, carryOf } from "../pins/carry.ts";
import type { Finish } from "../surface/finish.ts";
import { DEGREE, FOOT, MPH } from "../units.ts";
import { type Ground, roughnessOf, throwerOn } from "./ground.ts";
import { hitsOn } from "./hits.ts";
import type { Metric } from "./metric.ts";
import type { MissLoss, Move } from "./plan.ts";
import type { PlanQuestion } from "./question.ts";
import { chanceAt, filmFound, heldChance, heldThrough, mapOf, STAGES, type Stage, scoreOf, sessionOf } from "./session.ts";
import type { SoftChoice, SoftLine } from "./softLines.ts";
import { spreadSample } from "./spreadSample.ts";
import { STRAIGHT } from "./straight.ts";
import { boardAtPins, entryDegOf, throwBall } from "./thrown.ts";

/** The mean shot on a line, told in the trade's units. */
export interface MeanShot {
  readonly boardAtPins: number;
  readonly entryAngleDeg: number;
  readonly hookStartFt: number | null;
  readonly rollStartFt: number | null;
  readonly slipAtPinsMps: number;
  readonly speedAtPinsMph: number;
}

/** One finish in the middle world: what is drawn and told in words. What it is worth comes from all worlds. */
export interface FinishRating {
  readonly finish: Finish;
  readonly effectiveRaUm: number;
  /** The lane as found, before the first shot. */
  readonly found: FilmMap;
  /** In the metric's unit, higher is better; through the session, or on the lane as found in the first answer. */
  readonly score: number;
  /** Of the near-best lines the one that asks for the least move from today's; null where there is no line. */
  readonly line: Line | null;
  readonly shot: MeanShot | null;
  readonly missLoss: MissLoss | null;
  /** What the pins do on the line, on the lane as found; null in the first answer, for a spare or house ball, and where there is no line. */
  readonly carry: CarryResult | null;
  /** On the line that is played today; null where nobody knows one, or on it no ball comes near the pins. */
  readonly onTodaysLine: { readonly shot: MeanShot; readonly chance: number; readonly move: Move | null } | null;
}

/** What a rating is asked under: the same for every finish. */
export interface RatingAsked {
  readonly metric: Metric;
  readonly todaysLine: Line | null;
  readonly span: "fresh" | "session";
}

/** Lines that lose at most this much against the best are as good as that one: half a strike in a hundred. */
const AS_GOOD_A_LINE = 0.005;
/** Shots with which leaves are counted, and the only ones that are drawn at random: always the same. */
const HITS = 256;
const HITS_SEED = 5;
let sample: Float64Array | null = null;
export function leaveSample(): Float64Array {
  sample ??= spreadSample(HITS, HITS_SEED);
  return sample;
}

export function rateFinish(ground: Ground, finish: Finish, { metric, todaysLine, span }: RatingAsked): FinishRating {
  const { question, assumed } = ground;
  const found = filmFound(ground, metric);
  const session = sessionOf(ground, finish, found, span === "fresh" ? 1 : STAGES, metric);
  const [fresh] = session;
  const line = lineFor(fresh, metric, todaysLine, held(session, question, metric));
  const thrower = throwerOn(found, question, finish, assumed);
  const isWhole = span === "session" && line !== null && metric !== "leastHook";
  return {
    finish,
    effectiveRaUm: roughnessOf(question, finish, assumed),
    found,
    score: scoreOf(ground, finish, session, metric),
    line,
    shot: line && meanShot(thrower, line),
    missLoss: isWhole && metric !== "expectedPins" ? missLoss(ground, finish, fresh, line) : null,
    carry: isWhole ? carryOf(hitsOn(thrower, question.ball.massLb, line, leaveSample())) : null,
    onTodaysLine: todaysLine && onLine(thrower, session, metric, todaysLine, line),
  };
}

/** A control ball is held on one line: that is its choice. */
function held(session: readonly Stage[], { limits }: PlanQuestion, metric: Metric): SoftChoice {
  return metric === "leastChange" ? heldThrough(session, limits) : session[0].choice;
}

/** The line that the plan names: of those as good as the best the one that asks for the least move; a spare ball's straight down the middle, where hook is measured. */
function lineFor({ choice }: Stage, metric: Metric, todaysLine: Line | null, from: SoftChoice): Line | null {
  if (metric === "leastHook") return STRAIGHT;
  const { lines, best } = from.best === null ? choice : from;
  if (best === null || todaysLine === null) return best?.line ?? null;
  const asGood = lines.filter(({ chance }) => chance >= best.chance - AS_GOOD_A_LINE);
  const size = ({ line }: SoftLine) => {
    const { feetBoards, targetBoards } = moveBetween(todaysLine, line);
    return Math.abs(feetBoards) + Math.abs(targetBoards);
  };
  return asGood.reduce((least, one) => (size(one) < size(least) ? one : least), best).line;
}

/** How feet and target move from one line to another, boards, positive inward (away from the bowler's own gutter). */
export function moveBetween(from: Line, to: Line): Move {
  return { feetBoards: to.laydownBoard - from.laydownBoard, targetBoards: targetBoard(to) - targetBoard(from) };
}

function onLine(
  thrower: Thrower,
  session: readonly Stage[],
  metric: Metric,
  todaysLine: Line,
  line: Line | null,
): FinishRating["onTodaysLine"] {
  if (metric === "leastHook") return null;
  return {
    shot: meanShot(thrower, todaysLine),
    chance: heldChance(session, todaysLine, metric),
    move: line && moveBetween(todaysLine, line),
  };
}

/** Strikes lost, 0–1, when the middle of the bowler's shots is off by a board of laydown, half a degree of launch, or a mile an hour; the mean of both sides. */
function missLoss(ground: Ground, finish: Finish, { film, map }: Stage, line: Line): MissLoss {
  const here = chanceAt(map, line);
  const lost = (one: number, other: number) => Math.max(0, here - (one + other) / 2);
  const beside = (boards: number, degrees: number) =>
    chanceAt(map, { laydownBoard: line.laydownBoard + boards, launchAngleDeg: line.launchAngleDeg + degrees });
  const atSpeed = (mph: number) => {
    const { bowler } = ground.question;
    const faster = { ...ground, question: { ...ground.question, bowler: { ...bowler, speedMph: bowler.speedMph + mph } } };
    return chanceAt(mapOf(faster, finish, film, "strikeChance"), line);
  };
  return {
    board: lost(beside(1, 0), beside(-1, 0)),
    halfDegree: lost(beside(0, 0.5), beside(0, -0.5)),
    mph: lost(atSpeed(1), atSpeed(-1)),
  };
}

export function meanShot(thrower: Thrower, line: Line): MeanShot {
  const run = emptyRun();
  throwBall(thrower, line.laydownBoard, line.launchAngleDeg, run);
  return told(run, line);
}

function told(run: AveragedRun, { launchAngleDeg }: Line): MeanShot {
  const entryAngleDeg = entryDegOf(run);
  return {
    boardAtPins: boardAtPins(run),
    entryAngleDeg,
    hookStartFt: run.hookY < 0 || !turns(-launchAngleDeg * DEGREE, entryAngleDeg * DEGREE) ? null : run.hookY / FOOT,
    rollStartFt: run.rollY < 0 ? null : run.rollY / FOOT,
    slipAtPinsMps: Math.hypot(run.ux, run.uy),
    speedAtPinsMph: Math.hypot(run.vx, run.vy) / MPH,
  };
}
