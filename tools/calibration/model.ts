import type { Assumed } from "#engine/assumptions";
import { type CoverId, coverOf } from "#engine/ball/ball";
import { TYPICAL_BALL } from "#engine/ball/typical";
import type { Line } from "#engine/delivery/bowler";
import { release } from "#engine/delivery/release";
import { CELL_Y, type FilmMap } from "#engine/lane/filmMap";
import { xToBoard } from "#engine/lane/geometry";
import type { PatternId } from "#engine/lane/patterns";
import { emptyRun, runAveraged } from "#engine/motion/averaged";
import { trackOf } from "#engine/motion/track";
import { type Ground, groundOf, throwerOn } from "#engine/planning/ground";
import { type PlanQuestion, USUAL_LIMITS } from "#engine/planning/question";
import { meanShot } from "#engine/planning/rating";
import { filmFound, STAGES, type Stage, scoreOf, sessionOf } from "#engine/planning/session";
import { type Situation, STYLES, type StyleId } from "#engine/planning/situations";
import { boardAtPins, entryDegOf, throwBall } from "#engine/planning/thrown";
import { effectiveRaUm, type Finish, finishText, parseFinish } from "#engine/surface/finish";
import { DEGREE, FOOT, MPH } from "#engine/units";

/** The ladder on which every situation is asked, from dull to smooth. */
const LADDER = ["360", "500", "800", "1000", "2000", "3000", "4000", "4000 + polish"].map((text) => parseFinish(text));

/** Reactive covers are never left below 500. */
export function ladderFor({ cover }: Pick<Situation, "cover">): readonly Finish[] {
  const { neverBelow } = coverOf(cover);
  return neverBelow === null ? LADDER : LADDER.filter(({ number }) => number >= neverBelow && number !== 800);
}

function question(
  style: StyleId,
  cover: CoverId,
  pattern: PatternId,
  playedShots: number,
  finish: string,
  assumed: Partial<Assumed>,
): PlanQuestion {
  return {
    seed: 1,
    bowler: STYLES[style],
    ball: { ...TYPICAL_BALL, cover, finish: parseFinish(finish) },
    lane: { pattern: { kind: "named", id: pattern }, playedShots },
    line: null,
    limits: USUAL_LIMITS,
    candidates: null,
    outsideRangeReason: null,
    trial: [],
    readings: [],
    house: null,
    assumptions: assumed,
  };
}

/** One world as the targets ask it: what was worked out once is kept, for many targets look at the same lane. */
export class AskedWorld {
  readonly #assumed: Partial<Assumed>;
  readonly #films = new Map<string, FilmMap>();
  readonly #sessions = new Map<string, readonly Stage[]>();

  constructor(assumed: Partial<Assumed>) {
    this.#assumed = assumed;
  }

  ground(style: StyleId, cover: CoverId, pattern: PatternId): Ground {
    return groundOf(question(style, cover, pattern, 0, "2000", this.#assumed));
  }

  /** The lane worn by the matched bowler, whoever bowls now. */
  film(pattern: PatternId, cover: CoverId, playedShots: number, finish = "2000"): FilmMap {
    const key = `${pattern} ${playedShots > 0 ? `${cover} ${playedShots} ${finish}` : ""}`;
    const kept = this.#films.get(key);
    if (kept) return kept;
    const film = filmFound(groundOf(question("matched", cover, pattern, playedShots, finish, this.#assumed)));
    this.#films.set(key, film);
    return film;
  }

  /** A finish on a lane through a session of so many stages. */
  session(at: Pick<Situation, "style" | "cover" | "pattern" | "playedShots">, finish: Finish, stages: number): readonly Stage[] {
    const { style, cover, pattern, playedShots } = at;
    const key = `${style} ${cover} ${pattern} ${playedShots} ${finishText(finish)}`;
    const kept = this.#sessions.get(key);
    if (kept && kept.length >= stages) return kept.slice(0, stages);
    const session = sessionOf(this.ground(style, cover, pattern), finish, this.film(pattern, cover, playedShots), stages, "strikeChance");
    this.#sessions.set(key, session);
    return session;
  }

  /** Scores of the ladder in one situation, 0–1: on the lane as found, or through the session. */
  ladder(situation: Situation, span: "fresh" | "session"): readonly number[] {
    const { style, cover, pattern } = situation;
    const ground = this.ground(style, cover, pattern);
    return ladderFor(situation).map((finish) =>
      scoreOf(ground, finish, this.session(situation, finish, span === "fresh" ? 1 : STAGES), "strikeChance"),
    );
  }

  /** The mean shot of a style with a finish on its own best line; null where it has none. */
  bestShot(style: StyleId, cover: CoverId, pattern: PatternId, finish: string, lengthFt: number): Thrown | null {
    const at = { style, cover, pattern, playedShots: 0 };
    const [{ choice, film }] = this.session(at, parseFinish(finish), 1);
    if (choice.best === null) return null;
    const ground = this.ground(style, cover, pattern);
    const thrower = throwerOn(film, ground.question, parseFinish(finish), ground.assumed);
    const { line } = choice.best;
    const run = emptyRun();
    throwBall(thrower, line.laydownBoard, line.launchAngleDeg, run);
    const track = trackOf(thrower, line);
    return {
      exitBoard: xToBoard(track.x[Math.round((lengthFt * FOOT) / CELL_Y)]),
      entryDeg: entryDegOf(run),
      timeS: run.t,
      lossMph: STYLES[style].speedMph - Math.hypot(run.vx, run.vy) / MPH,
    };
  }

  /** How many boards further a freshly cut ball hooks than one worn smooth, on the line of the smooth one; null where that has no line. */
  resurfacingBoards(): number | null {
    const at = { style: "matched", cover: "solid", pattern: "medium-41", playedShots: 0 } as const;
    const [fresh, worn] = [parseFinish("1000"), parseFinish("4500")];
    const [{ choice, film }] = this.session(at, worn, 1);
    if (choice.best === null) return null;
    const ground = this.ground(at.style, at.cover, at.pattern);
    const [one, other] = [fresh, worn].map((finish) => boardOn(ground, film, finish, choice.best?.line ?? null));
    return one - other;
  }

  /** The governing body's robot: turn read at 49 ft, one shot a cover on the light pattern. Its pattern is not published. */
  robot(cover: CoverId, finish: string): { turnDeg: number; breakpointFt: number } {
    const q = question("matched", cover, "light-38", 0, finish, this.#assumed);
    const ground = groundOf({ ...q, bowler: { ...q.bowler, speedMph: 17, revRateRpm: 275 } });
    const { ball, bowler, friction } = throwerOn(this.film("light-38", cover, 0), ground.question, parseFinish(finish), ground.assumed);
    const run = emptyRun();
    runAveraged(ball, friction, release(bowler, { laydownBoard: 20, launchAngleDeg: ROBOT_LAUNCH_DEG }), 0, run, null, 49 * FOOT);
    return { turnDeg: Math.atan2(-run.vx, run.vy) / DEGREE + ROBOT_LAUNCH_DEG, breakpointFt: run.breakY / FOOT };
  }

  /** The mean shot of a situation on a line that is named, with the dullest finish that the trade would put on. */
  shotOn(situation: Situation, line: Line): readonly [board: number, entryDeg: number, hookFt: number] {
    const { style, cover, pattern, playedShots, from } = situation;
    const ground = this.ground(style, cover, pattern);
    const thrower = throwerOn(this.film(pattern, cover, playedShots), ground.question, parseFinish(from), ground.assumed);
    const { boardAtPins: board, entryAngleDeg, hookStartFt } = meanShot(thrower, line);
    return [board, entryAngleDeg, hookStartFt ?? NEVER_HOOKS_FT];
  }

  /** The best line of a situation with that finish on the lane as found, in steps that a bowler can play. */
  lineOf(situation: Situation): Line {
    const { best } = this.session(situation, parseFinish(situation.from), 1)[0].choice;
    if (best === null) throw new Error(`no line in ${JSON.stringify(situation)}`);
    return { laydownBoard: Math.round(2 * best.line.laydownBoard) / 2, launchAngleDeg: Number(best.line.launchAngleDeg.toFixed(1)) };
  }

  /** Which of some balls scores best on a lane worn by the matched bowler, by its place. */
  bestOf(balls: readonly { readonly cover: CoverId; readonly finish: string }[], pattern: PatternId, playedShots: number): number {
    const film = this.film(pattern, "hybrid", playedShots);
    const scores = balls.map(({ cover, finish }) => {
      const ground = this.ground("matched", cover, pattern);
      return sessionOf(ground, parseFinish(finish), film, 1, "strikeChance")[0].choice.score;
    });
    return scores.indexOf(Math.max(...scores));
  }
}

/** A ball that does not hook before the pins is counted as hooking there. */
const NEVER_HOOKS_FT = 60;
const ROBOT_LAUNCH_DEG = 1.5;

export interface Thrown {
  readonly exitBoard: number;
  readonly entryDeg: number;
  readonly timeS: number;
  readonly lossMph: number;
}

function boardOn(ground: Ground, film: FilmMap, finish: Finish, line: Line | null): number {
  if (line === null) return 0;
  const run = emptyRun();
  throwBall(throwerOn(film, ground.question, finish, ground.assumed), line.laydownBoard, line.launchAngleDeg, run);
  return boardAtPins(run);
}

/** By how much, in strikes in a hundred, the best finish outside the trade's interval beats the best inside; negative where the trade is right. */
export function outsideLead(situation: Situation, scores: readonly number[]): number {
  const most = effectiveRaUm(parseFinish(situation.from)) + 1e-9;
  const least = effectiveRaUm(parseFinish(situation.to)) - 1e-9;
  let inside = 0;
  let outside = 0;
  ladderFor(situation).forEach((finish, i) => {
    const ra = effectiveRaUm(finish);
    if (ra <= most && ra >= least) inside = Math.max(inside, scores[i]);
    else outside = Math.max(outside, scores[i]);
  });
  return 100 * (outside - inside);
}
