import { ensemble } from "../../worlds/ensemble.ts";
import { band } from "../comparison.ts";
import { type FilmChange, filmChange } from "./filmChange.ts";
import { type LaneNow, type PlayQuestion, playSession } from "./session.ts";

/** So many of the ensemble's worlds are played through: the first, which stand for all. A session in one costs as much as the one that is drawn. */
export const WORLDS_PLAYED = 8;

/** A session in one world, as laid and after every game: what ranges are told of. */
export interface PlayedInWorld {
  readonly weight: number;
  readonly games: readonly {
    readonly volumeMl: number;
    readonly takenMl: number;
    readonly change: FilmChange;
    /** Boards that each player has moved in since the lane was laid. */
    readonly movedBoards: readonly number[];
  }[];
}

/** Low and high end of the stretch that nine worlds of ten lie in; the middle world's own figure lies in it. */
export type Range = readonly [number, number];

/** What one moment of a session comes to over the worlds. */
export interface GameRanges {
  readonly volumeMl: Range;
  readonly takenMl: Range;
  /** As the middle world's own, part by part. */
  readonly left: readonly (Range | null)[];
  readonly burnBoard: Range;
  /** Boards moved in since the lane was laid, player by player: where a line lies differs from world to world by more than it moves. */
  readonly movedBoards: readonly Range[];
}

/** The session in a world by its number: its constants, its house and night; the players' hands are as they are given. */
export function playedInWorld(question: PlayQuestion, world: number): PlayedInWorld {
  const { weight, values, night } = ensemble().worlds[world];
  const lanes = playSession({ ...question, assumptions: { ...values, ...night.lane, ...question.assumptions } });
  const { hand } = question.players[0].bowler;
  return {
    weight,
    games: lanes.map((lane) => ({
      volumeMl: lane.volumeMl,
      takenMl: lane.takenMl,
      change: filmChange(lanes[0].film, lane.film, hand),
      movedBoards: lane.players.map((_, player) => movedBoards(lanes, lane, player)),
    })),
  };
}

function movedBoards([laid]: readonly LaneNow[], now: LaneNow, player: number): number {
  return now.players[player].line.laydownBoard - laid.players[player].line.laydownBoard;
}

/** @param played at least one world, through as many games as the middle world */
export function rangesOver(played: readonly PlayedInWorld[], { players }: PlayQuestion, lanes: readonly LaneNow[]): readonly GameRanges[] {
  const weights = played.map(({ weight }) => weight);
  const over = (middle: number, figure: (world: PlayedInWorld) => number): Range => {
    const { low, high } = band(played.map(figure), middle, weights);
    return [low, high];
  };
  const { hand } = players[0].bowler;
  return lanes.map((lane, game) => {
    const middle = filmChange(lanes[0].film, lane.film, hand);
    return {
      volumeMl: over(lane.volumeMl, (world) => world.games[game].volumeMl),
      takenMl: over(lane.takenMl, (world) => world.games[game].takenMl),
      left: middle.left.map(({ share }, part) =>
        share === null ? null : over(share, (world) => world.games[game].change.left[part].share ?? share),
      ),
      burnBoard: over(middle.burn.board, (world) => world.games[game].change.burn.board),
      movedBoards: lane.players.map((_, player) =>
        over(movedBoards(lanes, lane, player), (world) => world.games[game].movedBoards[player]),
      ),
    };
  });
}
