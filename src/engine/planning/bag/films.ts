import { handed } from "../../lane/film.ts";
import type { FilmMap } from "../../lane/filmMap.ts";
import type { Player } from "../oilInPlay/player.ts";
import { aimAnew, type LaneNow, laneAsLaid, type PlayQuestion, playOn } from "../oilInPlay/session.ts";
import type { BagQuestion } from "./question.ts";
import { statesOf, strikes } from "./states.ts";

/** The lane at the middle of one stage, and at its end, where the next begins. */
export interface StageLane {
  /** In the frame of the bowler whose bag it is: a left-hander's is mirrored. */
  readonly middle: FilmMap;
  readonly end: LaneNow;
}

/** The oil through the session: the film at the middle of every stage, as the bowler sees it, and how much of it there is, mL. */
export interface BagOil {
  readonly films: readonly FilmMap[];
  readonly oilMl: readonly number[];
}

/** The play of one stage: the others, and the bowler with the ball thrown in it. */
function playOf(question: BagQuestion, thrown: Player): PlayQuestion {
  const { seed, pattern, session, assumptions } = question;
  return { seed, pattern, players: [thrown, ...session.others], games: session.games, assumptions };
}

/** The bowler with a ball in a state. @param thrown ball and state; null: the first strike ball as it lies, before anything has been chosen */
export function bowlerWith(question: BagQuestion, thrown: { readonly ball: number; readonly state: number } | null): Player {
  const index = thrown?.ball ?? Math.max(0, question.balls.findIndex(strikes));
  const state = statesOf(question, index)[thrown?.state ?? 0];
  return { bowler: question.bowler, ball: state.as, limits: question.limits, line: null, shotsAGame: question.session.shotsAGame };
}

/** The lane after practice, where the first stage begins: everybody practises as much as the bowler. */
export function laneAfterPractice(question: BagQuestion, thrown: Player): LaneNow {
  const play = playOf(question, thrown);
  const laid = laneAsLaid(play);
  const share = question.session.practiceShots / thrown.shotsAGame;
  return share > 0 ? aimAnew(play, playOn(play, laid, share)) : laid;
}

/** One stage further. About a tenth of a second with eight players: one unit of the whole. */
export function stageLane(question: BagQuestion, from: LaneNow, thrown: Player): StageLane {
  const play = playOf(question, thrown);
  const half = 0.5 / question.session.stagesAGame;
  const middle = playOn(play, from, half);
  return { middle: handed(middle.film, question.bowler.hand), end: aimAnew(play, playOn(play, middle, half)) };
}
