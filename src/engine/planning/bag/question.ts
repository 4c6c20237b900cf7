import type { Assumed } from "../../assumptions.ts";
import type { Ball } from "../../ball/ball.ts";
import type { Bowler } from "../../delivery/bowler.ts";
import type { PatternSource } from "../../lane/lane.ts";
import type { EventRules } from "../../rules/events.ts";
import type { BookId } from "../../rules/ruleBooks.ts";
import type { Finish } from "../../surface/finish.ts";
import type { Player } from "../oilInPlay/player.ts";
import type { Limits } from "../question.ts";

/** A ball that the bowler owns, as it lies in the bag today. */
export interface BagBall {
  readonly ball: Ball;
  /** Games on today's finish. */
  readonly gamesSince: number;
  /** Finishes that it may be given; null: the cover's usual range. Today's is always among them. */
  readonly finishes: readonly Finish[] | null;
}

/** What is bowled on one oiling. */
export interface BagSession {
  readonly games: number;
  /** Stages of a game at which the ball may be changed, 1, 2 or 4. */
  readonly stagesAGame: number;
  /** Shots of practice before the first that counts; they wear the oil. */
  readonly practiceShots: number;
  /** The bowler's own shots of a game that fall on one lane. */
  readonly shotsAGame: number;
  readonly others: readonly Player[];
}

/** What there is to work the balls with, and when. */
export interface BagWork {
  /** Numbers of the abrasives at hand; null: all. */
  readonly numbers: readonly number[] | null;
  readonly polish: boolean;
  /** On the bench before the session, and by hand in practice and in each break between games; minutes, 0 for none. */
  readonly minutesBefore: number;
  readonly minutesInPractice: number;
  readonly minutesBetweenGames: number;
}

/** Everything the bag plan is computed from. */
export interface BagQuestion {
  readonly seed: number;
  readonly bowler: Bowler;
  readonly limits: Limits;
  readonly balls: readonly BagBall[];
  readonly pattern: PatternSource;
  readonly session: BagSession;
  readonly work: BagWork;
  /** Whose word counts on when a surface may be touched. */
  readonly rules: { readonly book: BookId; readonly on: string; readonly event: EventRules | null };
  readonly assumptions: Readonly<Partial<Assumed>>;
}

/** First balls of a game that can be strikes; fill balls of the tenth frame are left out. */
export const FRAMES_A_GAME = 10;

export function stageCount({ games, stagesAGame }: BagSession): number {
  return games * stagesAGame;
}

/** The stages at which balls are rated: every second one, the first and the last. The oil changes slowly; between them a straight line. */
export function ratedStages(session: BagSession): readonly number[] {
  const last = stageCount(session) - 1;
  return Array.from({ length: last + 1 }, (_, stage) => stage).filter((stage) => stage % 2 === 0 || stage === last);
}

/** Value at a stage of a row that was worked out at the rated stages. */
export function atStage(session: BagSession, row: readonly number[], stage: number): number {
  const rated = ratedStages(session);
  const after = rated.findIndex((at) => at >= stage);
  if (after <= 0) return row[0];
  const share = (stage - rated[after - 1]) / (rated[after] - rated[after - 1]);
  return row[after - 1] + share * (row[after] - row[after - 1]);
}

/** First balls of one stage. */
export function framesAStage({ stagesAGame }: BagSession): number {
  return FRAMES_A_GAME / stagesAGame;
}

/** With more of the shots than this on one's own lines, what one throws wears the oil that one is to throw on. */
const OWN_SHARE = 0.5;

export function ownWearMatters({ session }: BagQuestion): boolean {
  const all = session.others.reduce((sum, { shotsAGame }) => sum + shotsAGame, session.shotsAGame);
  return session.shotsAGame / all > OWN_SHARE;
}
