import { type GameRanges, rangesOver, WORLDS_PLAYED } from "#engine/planning/oilInPlay/inWorlds";
import { type LaneNow, PIECES_A_GAME, type PlayQuestion } from "#engine/planning/oilInPlay/session";
import type { Executor, StopSignal } from "./executor.ts";

/** How far a lane in play has got, in pieces, and the lane as laid and after every game that is through. */
export interface TransitionProgress {
  readonly done: number;
  readonly of: number;
  readonly lanes: readonly LaneNow[];
}

export interface TransitionRun {
  readonly executor: Executor;
  readonly onProgress?: (progress: TransitionProgress) => void;
  readonly signal?: StopSignal;
}

/**
 * A lane in play, as laid and after each game. Each piece begins where the last one ended, so that one follows the other; between them it can be stopped.
 *
 * @throws {EngineFault} when the question cannot be answered as put; the signal's reason when it was stopped
 */
export async function runTransition(question: PlayQuestion, { executor, onProgress, signal }: TransitionRun): Promise<readonly LaneNow[]> {
  const of = 1 + question.games * PIECES_A_GAME;
  let now = await executor.run({ kind: "laneAsLaid", question }, signal ?? null);
  const lanes = [now];
  onProgress?.({ done: 1, of, lanes: [...lanes] });
  for (let piece = 1; piece < of; piece++) {
    now = await executor.run({ kind: "playPiece", question, now }, signal ?? null);
    if (piece % PIECES_A_GAME === 0) lanes.push(now);
    onProgress?.({ done: piece + 1, of, lanes: [...lanes] });
  }
  return lanes;
}

/** What else a lane that was played through may come to: the same session in other worlds, side by side. */
export async function rangesOfTransition(
  question: PlayQuestion,
  lanes: readonly LaneNow[],
  { executor, signal }: Pick<TransitionRun, "executor" | "signal">,
): Promise<readonly GameRanges[]> {
  const worlds = Array.from({ length: WORLDS_PLAYED }, (_, world) => world);
  const played = await Promise.all(worlds.map((world) => executor.run({ kind: "playedInWorld", question, world }, signal ?? null)));
  return rangesOver(played, question, lanes);
}
