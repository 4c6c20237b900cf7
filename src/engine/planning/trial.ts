import { refuse } from "../fault.ts";
import { emptyRun } from "../motion/averaged.ts";
import { type Finish, finishText, sameFinish } from "../surface/finish.ts";
import { type Ground, throwerOn } from "./ground.ts";
import type { PlanQuestion, TrialShot } from "./question.ts";
import { filmFound } from "./session.ts";
import { boardAtPins, throwBall } from "./thrown.ts";

/** What the model itself may be off by on one line, boards, standard deviation: chosen, so that ten shots are not believed to a tenth of a board. */
const MODEL_SD = 0.3;

/** The shots of one finish in a trial, as one: where they arrived in the mean, and how well that is known. */
export interface TrialMean {
  readonly finish: Finish;
  readonly shots: number;
  readonly boardAtPins: number;
  /** Of the mean: reading, the bowler's own scatter, and the model. */
  readonly sdBoards: number;
}

/** @throws EngineFault where shots were seen but no line is named: a board says nothing without it */
export function trialMeans({ trial, line, bowler }: Pick<PlanQuestion, "trial" | "line" | "bowler">): readonly TrialMean[] {
  if (trial.length === 0) return [];
  if (line === null) refuse("line", null, "laydownBoard and launchAngleDeg: the line of the trial");
  const finishes = trial
    .filter(({ finish }, i) => trial.findIndex((other) => sameFinish(other.finish, finish)) === i)
    .map(({ finish }) => finish);
  return finishes.map((finish) => {
    const own = trial.filter((shot) => sameFinish(shot.finish, finish));
    const reading = own.reduce((sum, { sdBoards }) => sum + sdBoards ** 2, 0) / own.length;
    const scatter = BOARDS_A_DEGREE ** 2 * bowler.spread.launchAngleDeg ** 2 + bowler.spread.laydownBoards ** 2;
    return {
      finish,
      shots: own.length,
      boardAtPins: own.reduce((sum, shot) => sum + shot.boardAtPins, 0) / own.length,
      sdBoards: Math.hypot(Math.sqrt((reading + scatter) / own.length), MODEL_SD),
    };
  });
}

/** By how many boards the arrival moves for a degree of launch, about: between what a hooking ball forgives and what a straight one does. Chosen. */
const BOARDS_A_DEGREE = 6;

/** Where a world says that the shots of a finish arrive in the mean, each at the speed that was seen. */
export function predictedBoard(ground: Ground, finish: Finish): number {
  const { question, assumed } = ground;
  const { line, trial, bowler } = question;
  const own = trial.filter((shot) => sameFinish(shot.finish, finish));
  if (line === null || own.length === 0) refuse("trial", finishText(finish), "a finish of the trial, on a named line");
  const found = filmFound(ground);
  const run = emptyRun();
  const board = ({ speedMph }: TrialShot) => {
    const thrown = { ...question, bowler: { ...bowler, speedMph: speedMph ?? bowler.speedMph } };
    throwBall(throwerOn(found, thrown, finish, assumed), line.laydownBoard, line.launchAngleDeg, run);
    return boardAtPins(run);
  };
  return own.reduce((sum, shot) => sum + board(shot), 0) / own.length;
}

/** Logarithm of how well a world says what was seen: 0 without a trial. */
export function fitOf(ground: Ground): number {
  return trialMeans(ground.question).reduce(
    (sum, seen) => sum - 0.5 * ((predictedBoard(ground, seen.finish) - seen.boardAtPins) / seen.sdBoards) ** 2,
    0,
  );
}
