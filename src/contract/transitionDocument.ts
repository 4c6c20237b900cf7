import { toFilmSheet } from "#engine/lane/filmMap";
import { type FilmChange, filmChange } from "#engine/planning/oilInPlay/filmChange";
import { type GameRanges, WORLDS_PLAYED } from "#engine/planning/oilInPlay/inWorlds";
import type { LaneNow, PlayerNow, PlayQuestion } from "#engine/planning/oilInPlay/session";
import { ensemble } from "#engine/worlds/ensemble";
import type { Resolved } from "./resolve/question.ts";

/** The lane after so many games, as data: film on whole boards and half feet, from the lane's right edge. */
export interface GameDocument {
  readonly game: number;
  readonly shots: number;
  readonly volumeMl: number;
  readonly takenMl: number;
  readonly ratio: number;
  /** Against the lane as laid, from the first player's side. */
  readonly change: FilmChange;
  readonly players: readonly PlayerNow[];
  /** Where nine worlds of ten lie; null where nobody asked. */
  readonly ranges: GameRanges | null;
}

export interface TransitionDocument {
  readonly gritwright: 1;
  readonly kind: "transition";
  readonly engineVersion: string;
  /** How many worlds the ranges are of, 0 where nobody asked, and of which ensemble. */
  readonly worlds: number;
  readonly ensemble: string;
  readonly games: readonly GameDocument[];
  readonly defaults: readonly string[];
}

export function transitionDocumentOf(
  { question, defaults }: Resolved<PlayQuestion>,
  lanes: readonly LaneNow[],
  ranges: readonly GameRanges[] | null,
  engineVersion: string,
): TransitionDocument {
  const { hand } = question.players[0].bowler;
  const games = lanes.map(({ shots, film, volumeMl, takenMl, players }, game) => ({
    game,
    shots,
    volumeMl,
    takenMl,
    ratio: toFilmSheet(film).ratio,
    change: filmChange(lanes[0].film, film, hand),
    players,
    ranges: ranges?.[game] ?? null,
  }));
  const worlds = ranges === null ? 0 : WORLDS_PLAYED;
  return { gritwright: 1, kind: "transition", engineVersion, worlds, ensemble: ensemble().digest, games, defaults };
}
