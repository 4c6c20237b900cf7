import { type Assumed, assume } from "#engine/assumptions";
import type { CoverId } from "#engine/ball/ball";
import { TYPICAL_BALL } from "#engine/ball/typical";
import { CELL_Y } from "#engine/lane/filmMap";
import { xToBoard } from "#engine/lane/geometry";
import { emptyRun } from "#engine/motion/averaged";
import { trackOf } from "#engine/motion/track";
import { filmFound, groundOf, type PlanGround, throwerOn } from "#engine/planning/ground";
import { boardAtPins, COARSE, entryDegOf, type MapGrain, throwBall } from "#engine/planning/outcomeMap";
import type { PlanQuestion } from "#engine/planning/question";
import { type FinishRating, sketchRating } from "#engine/planning/rating";
import { type Situation, STYLES, type StyleId } from "#engine/planning/situations";
import { effectiveRaUm, parseFinish } from "#engine/surface/finish";
import { DEGREE, FOOT, MPH } from "#engine/units";

/** The ladder on which every situation is asked, from dull to smooth. */
export const LADDER = ["360", "500", "800", "1000", "2000", "3000", "4000", "4000 + polish"].map((text) => parseFinish(text));

const LIMITS = { laydownBoard: [9, 36], launchAngleDeg: [-1.5, 4.5], breakpointBoard: [4, 39] } as const;

export function question(style: StyleId, cover: CoverId, pattern: string, playedShots: number, assumed: Partial<Assumed>): PlanQuestion {
  return {
    seed: 1,
    bowler: STYLES[style],
    ball: { ...TYPICAL_BALL, cover, finish: parseFinish("2000") },
    lane: { pattern: { kind: "named", id: pattern }, playedShots },
    line: null,
    limits: LIMITS,
    candidates: null,
    outsideRangeReason: null,
    house: null,
    assumptions: assumed,
  };
}

/** Chances of the ladder in one situation, on the lane as found (worn by the matched bowler, whoever bowls now). */
export function ladderChances(situation: Situation, assumed: Partial<Assumed>, grain: MapGrain = COARSE): readonly FinishRating[] {
  const { style, cover, pattern, playedShots } = situation;
  const worn = filmFound(groundOf(question("matched", cover, pattern, playedShots, assumed)));
  const ground = groundOf(question(style, cover, pattern, 0, assumed));
  return ladderFor(situation).map((finish) => sketchRating(ground, finish, worn, grain));
}

/** Reactive covers are never left below 500. */
export function ladderFor({ cover }: Situation) {
  return cover === "urethane" || cover === "polyester" ? LADDER : LADDER.filter((finish) => finish.number >= 500 && finish.number !== 800);
}

/** By how much, in points of chance, the best finish outside the trade's interval beats the best inside; negative where the trade is right. */
export function outsideLead(situation: Situation, ratings: readonly FinishRating[]): number {
  const most = effectiveRaUm(parseFinish(situation.from)) + 1e-9;
  const least = effectiveRaUm(parseFinish(situation.to)) - 1e-9;
  let inside = 0;
  let outside = 0;
  for (const { effectiveRaUm: ra, chance } of ratings) {
    if (ra <= most && ra >= least) inside = Math.max(inside, chance);
    else outside = Math.max(outside, chance);
  }
  return 100 * (outside - inside);
}

export interface Thrown {
  readonly ground: PlanGround;
  readonly boardAtPins: number;
  readonly exitBoard: number;
  readonly entryDeg: number;
  readonly timeS: number;
  readonly lossMph: number;
  readonly breakpointFt: number;
}

/** The mean shot of a style with a finish on its own best line. */
export function bestShot(
  style: StyleId,
  cover: CoverId,
  pattern: string,
  finishText: string,
  lengthFt: number,
  assumed: Partial<Assumed>,
): Thrown | null {
  const ground = groundOf(question(style, cover, pattern, 0, assumed));
  const finish = parseFinish(finishText);
  const film = filmFound(ground);
  const line = sketchRating(ground, finish, film).stages[0].line;
  if (line === null) return null;
  const thrower = throwerOn(film, ground.question, finish, ground.assumed);
  const run = emptyRun();
  throwBall(thrower, line.laydownBoard, line.launchAngleDeg, run);
  const track = trackOf(thrower, line);
  return {
    ground,
    boardAtPins: boardAtPins(run),
    exitBoard: xToBoard(track.x[Math.round((lengthFt * FOOT) / CELL_Y)]),
    entryDeg: entryDegOf(run),
    timeS: run.t,
    lossMph: STYLES[style].speedMph - Math.hypot(run.vx, run.vy) / MPH,
    breakpointFt: run.breakY / FOOT,
  };
}

/** How many boards further a freshly cut ball hooks than one worn smooth, on the line of the smooth one. */
export function resurfacingBoards(assumed: Partial<Assumed>): number {
  const ground = groundOf(question("matched", "solid", "medium-41", 0, assumed));
  const film = filmFound(ground);
  const [fresh, worn] = [parseFinish("1000"), parseFinish("4500")];
  const line = sketchRating(ground, worn, film).stages[0].line;
  if (line === null) return 0;
  const boards = [fresh, worn].map((finish) => {
    const run = emptyRun();
    throwBall(throwerOn(film, ground.question, finish, ground.assumed), line.laydownBoard, line.launchAngleDeg, run);
    return boardAtPins(run);
  });
  return boards[0] - boards[1];
}

/** The governing body's robot: turn and loss read at 49 ft, one shot a cover on the light pattern. Its pattern is not published. */
export function robot(cover: CoverId, finishText: string, assumed: Partial<Assumed>): { turnDeg: number; breakpointFt: number } {
  const q = question("matched", cover, "light-38", 0, assumed);
  const ground = groundOf({ ...q, bowler: { ...q.bowler, speedMph: 17, revRateRpm: 275 } });
  const run = emptyRun();
  throwBall(throwerOn(filmFound(ground), ground.question, parseFinish(finishText), assume(assumed)), 20, 1.5, run);
  return { turnDeg: Math.atan2(-run.vx, run.vy) / DEGREE + 1.5, breakpointFt: run.breakY / FOOT };
}
