import { type Assumed, assume } from "../../assumptions.ts";
import type { Ball } from "../../ball/ball.ts";
import { COVERS } from "../../ball/covers.ts";
import { NO_FINDINGS } from "../../rules/stops.ts";
import { ABRASIVES } from "../../surface/abrasives.ts";
import type { BenchBall } from "../../surface/benchBall.ts";
import { fadeLaw, raAfter } from "../../surface/fade.ts";
import { effectiveRaUm, type Finish, finishText, readingOfEffectiveRa, sameFinish } from "../../surface/finish.ts";
import { type BenchHabits, planStages, type Stage, USUAL_HABITS } from "../../surface/stages.ts";
import type { BagBall, BagQuestion, BagWork } from "./question.ts";
import { surfaceWord } from "./surfaceWord.ts";

/** One way in which a ball can go to the lanes: as it lies in the bag, or with a finish put on before. */
export interface BallState {
  readonly ball: number;
  readonly finish: Finish;
  /** As it lies: no work, the surface faded by its games. */
  readonly isToday: boolean;
  /** Bench time before the session. */
  readonly minutes: number;
  /** The ball as the models take it. */
  readonly as: Ball;
}

/** A spare or house ball is not asked to strike: it is left out of the choice. */
export function strikes({ ball }: BagBall): boolean {
  return ball.job === "strike" || ball.job === "control";
}

/** Every state that a ball can be brought into with what is at hand and in the time, as it lies first, then from dull to smooth. */
export function statesOf(question: BagQuestion, index: number): readonly BallState[] {
  const own = question.balls[index];
  if (!strikes(own)) return [];
  const assumed = assume(question.assumptions);
  const today: BallState = { ball: index, finish: own.ball.finish, isToday: true, minutes: 0, as: asItLies(own, assumed) };
  if (surfaceWord(question).before === "no") return [today];
  const fresh = (own.finishes ?? COVERS[own.ball.cover].usual)
    .filter((finish) => own.gamesSince > 0 || !sameFinish(finish, own.ball.finish))
    .toSorted((a, b) => effectiveRaUm(b) - effectiveRaUm(a))
    .flatMap((finish): BallState[] => {
      const minutes = benchMinutes(own, finish, question.work);
      if (minutes === null || minutes > question.work.minutesBefore) return [];
      return [{ ball: index, finish, isToday: false, minutes, as: { ...own.ball, finish, raMicroinch: null } }];
    });
  return [today, ...fresh];
}

/** How a plan names a state: the finish, and whether the ball stays as it lies. */
export interface Worked {
  readonly finish: string;
  readonly asItLies: boolean;
}

export function workedAs({ finish, isToday }: BallState): Worked {
  return { finish: finishText(finish), asItLies: isToday };
}

export function sameState(a: BallState, b: BallState): boolean {
  return a.ball === b.ball && a.isToday === b.isToday && sameFinish(a.finish, b.finish);
}

/** Today's finish with its games on it: a reading speaks for itself, else the cover's fade does. */
function asItLies({ ball, gamesSince }: BagBall, assumed: Assumed): Ball {
  if (ball.raMicroinch !== null || gamesSince === 0) return ball;
  const faded = raAfter(fadeLaw(ball.cover, assumed), effectiveRaUm(ball.finish, assumed), gamesSince);
  return { ...ball, raMicroinch: readingOfEffectiveRa(faded, assumed) };
}

/** Bench time for a finish, minutes; null where an abrasive that the stages need is not at hand, or the cover never takes the finish. */
function benchMinutes(own: BagBall, finish: Finish, work: BagWork): number | null {
  const { neverBelow } = COVERS[own.ball.cover];
  if (neverBelow !== null && finish.number < neverBelow) return null;
  const { stages, benchSeconds } = planStages(benchBall(own), finish, NO_FINDINGS, USUAL_HABITS);
  return stages.every((stage) => isAtHand(stage, work)) ? benchSeconds / 60 : null;
}

function isAtHand({ kind, abrasive }: Stage, { numbers, polish }: BagWork): boolean {
  if (kind === "polish") return polish;
  if (abrasive === null || numbers === null) return true;
  const { grade } = ABRASIVES[abrasive];
  return grade === null || numbers.includes(grade.number);
}

function benchBall({ ball, gamesSince }: BagBall): BenchBall {
  const { cover, diameterIn, finish, raMicroinch } = ball;
  return {
    cover,
    hardnessD: null,
    diameterIn,
    finish,
    history: [],
    gamesSince,
    raMicroinch,
    compared: null,
    trackWear: "none",
    plug: "none",
    oil: "clean",
  };
}

const BY_HAND: BenchHabits = { ...USUAL_HABITS, by: "hand", dry: true };

/** Time for one dry pad by hand on all sides, minutes. */
export function handMinutes(own: BagBall, number: number): number {
  const { stages } = planStages(benchBall(own), { number, polished: false }, NO_FINDINGS, BY_HAND);
  const last = stages.findLast(({ kind }) => kind === "cut");
  return last === undefined ? 0 : (last.sides * (last.secondsPerSide + 15)) / 60;
}
