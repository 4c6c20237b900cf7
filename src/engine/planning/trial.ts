import { refuse } from "../fault.ts";
import { emptyRun } from "../motion/averaged.ts";
import { type Finish, finishText, sameFinish } from "../surface/finish.ts";
import { effectiveNumber } from "../worlds/effectiveNumber.ts";
import type { World } from "../worlds/ensemble.ts";
import { type Ground, groundIn, throwerOn } from "./ground.ts";
import { fitOfReadings } from "./padReadings.ts";
import type { PlanQuestion, TrialShot } from "./question.ts";
import { filmFound } from "./session.ts";
import { boardAtPins, throwBall } from "./thrown.ts";
import { worldsAsked } from "./worldsAsked.ts";

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
  const thrower = throwerOn(filmFound(ground), question, finish, assumed);
  const run = emptyRun();
  const boards = new Map<number, number>();
  const board = ({ speedMph }: TrialShot) => {
    const speed = speedMph ?? bowler.speedMph;
    const known = boards.get(speed);
    if (known !== undefined) return known;
    throwBall({ ...thrower, bowler: { ...bowler, speedMph: speed } }, line.laydownBoard, line.launchAngleDeg, run);
    const found = boardAtPins(run);
    boards.set(speed, found);
    return found;
  };
  return own.reduce((sum, shot) => sum + board(shot), 0) / own.length;
}

/** Logarithm of how well a world says what was seen in a trial, and read on the bench: 0 without either. */
export function fitOf(ground: Ground): number {
  return trialMeans(ground.question).reduce(
    (sum, seen) => sum - 0.5 * ((predictedBoard(ground, seen.finish) - seen.boardAtPins) / seen.sdBoards) ** 2,
    fitOfReadings(ground.question.readings, ground.assumed),
  );
}

/** A world with what it counts for after a trial. */
export interface Weighed {
  readonly world: World;
  readonly weight: number;
}

/** Where the worlds count for fewer than this, further ones are drawn. */
const LEAST_EFFECTIVE = 50;

/**
 * The worlds by how well each says the trial: share × exp(fit), the greatest 1; their shares without one. Where few are left of them, so that a few constants on a few nights would
 * speak for all, each is asked on its further nights too: what a house's lanes and a hand are like that night is no world's to know.
 */
export function weighedBy(question: PlanQuestion): readonly Weighed[] {
  const { own: worlds, draws, drawn } = worldsAsked(question);
  if (question.trial.length === 0) return worlds.map((world) => ({ world, weight: world.weight }));
  const logOf = (world: World) => Math.log(world.weight) + fitOf(groundIn(world, question));
  let all = worlds.map((world) => ({ world, log: logOf(world) }));
  const weighed = () => {
    const best = Math.max(...all.map(({ log }) => log));
    return all.map(({ world, log }) => ({ world, weight: Math.exp(log - best) }));
  };
  if (effectiveNumber(weighed().map(({ weight }) => weight)) >= LEAST_EFFECTIVE) return weighed();
  const further = Array.from({ length: draws - worlds.length }, (_, i) => drawn(worlds.length + i));
  all = [...all, ...further.map((world) => ({ world, log: logOf(world) }))];
  return weighed();
}
