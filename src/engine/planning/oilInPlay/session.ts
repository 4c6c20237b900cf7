import type { Assumed } from "../../assumptions.ts";
import type { Line } from "../../delivery/bowler.ts";
import { filmOfPattern, handed } from "../../lane/film.ts";
import { CELL_Y, type FilmMap, volumeMl } from "../../lane/filmMap.ts";
import { xToBoard } from "../../lane/geometry.ts";
import type { PatternSource } from "../../lane/lane.ts";
import { wearLaw, wornFilm } from "../../lane/wear.ts";
import { trackOf } from "../../motion/track.ts";
import { FOOT } from "../../units.ts";
import { roughnessOf, throwerOn } from "../ground.ts";
import { type MeanShot, meanShot } from "../rating.ts";
import { lineNow } from "../session.ts";
import { STRAIGHT } from "../straight.ts";
import { groundOfPlayer, type Player } from "./player.ts";

/** A lane in play. Nothing in it is drawn; the seed is that of the players who were. */
export interface PlayQuestion {
  readonly seed: number;
  readonly pattern: PatternSource;
  readonly players: readonly Player[];
  readonly games: number;
  readonly assumptions: Readonly<Partial<Assumed>>;
}

/** How one player plays it at a moment. */
export interface PlayerNow {
  readonly line: Line;
  /** False where there is no sensible line: the ball is then thrown straight, and wears the middle. */
  readonly isSensible: boolean;
  readonly shot: MeanShot;
  /** Where the mean shot runs: boards from the hand's side at every second foot from the foul line. */
  readonly boards: readonly number[];
}

/** The lane at one moment. Films are in the lane's own frame, whatever the hands. */
export interface LaneNow {
  readonly shots: number;
  readonly film: FilmMap;
  readonly volumeMl: number;
  /** Oil that has left the lane on balls, since the pattern was laid; volume + taken is what was laid. */
  readonly takenMl: number;
  readonly players: readonly PlayerNow[];
}

/** A game is played in so many pieces; at each everybody looks for the line anew. */
export const PIECES_A_GAME = 4;
/** Within a piece the players take turns this many times: who goes first then hardly matters. */
const ROUNDS_A_PIECE = 3;

/** The lane as laid, before the first ball. */
export function laneAsLaid(question: PlayQuestion): LaneNow {
  const film = filmOfPattern(question.pattern);
  return aimAnew(question, { shots: 0, film, volumeMl: volumeMl(film), takenMl: 0, players: [] });
}

/** The lane a piece of a game later, everybody's line found anew. Pure, and short enough to be one unit of a longer computation. */
export function playPiece(question: PlayQuestion, now: LaneNow): LaneNow {
  return aimAnew(question, playOn(question, now, 1 / PIECES_A_GAME));
}

/** The lane after a share of a game, everybody on the line they had. */
export function playOn(question: PlayQuestion, now: LaneNow, gameShare: number): LaneNow {
  const { film, takenMl } = wornByAll(question, now, gameShare);
  const shots = now.shots + question.players.reduce((sum, player) => sum + player.shotsAGame * gameShare, 0);
  return { ...now, shots, film, volumeMl: volumeMl(film), takenMl: now.takenMl + takenMl };
}

/** The same lane with everybody on the best line for it. */
export function aimAnew(question: PlayQuestion, now: LaneNow): LaneNow {
  return { ...now, players: question.players.map((player, i) => playerNow(question, player, now.film, now.players[i] ?? null)) };
}

/** The lane as laid, and after every game. */
export function playSession(question: PlayQuestion): readonly LaneNow[] {
  const games = [laneAsLaid(question)];
  for (let game = 0; game < question.games; game++) {
    let now = games[game];
    for (let piece = 0; piece < PIECES_A_GAME; piece++) now = playPiece(question, now);
    games.push(now);
  }
  return games;
}

function wornByAll(question: PlayQuestion, now: LaneNow, gameShare: number): { film: FilmMap; takenMl: number } {
  let { film } = now;
  let takenMl = 0;
  for (let round = 0; round < ROUNDS_A_PIECE; round++) {
    question.players.forEach((player, i) => {
      const ground = groundOfPlayer(player, question);
      const { hand } = player.bowler;
      const seen = handed(film, hand);
      const track = trackOf(throwerOn(seen, ground.question, player.ball.finish, ground.assumed), now.players[i].line);
      const law = wearLaw(player.ball.cover, roughnessOf(ground.question, player.ball.finish, ground.assumed), ground.assumed);
      const worn = wornFilm(seen, [track], (player.shotsAGame * gameShare) / ROUNDS_A_PIECE, law);
      film = handed(worn.film, hand);
      takenMl += worn.takenMl;
    });
  }
  return { film, takenMl };
}

function playerNow(question: PlayQuestion, player: Player, film: FilmMap, before: PlayerNow | null): PlayerNow {
  const ground = groundOfPlayer(player, question);
  const seen = handed(film, player.bowler.hand);
  const found = player.line ?? lineNow(ground, seen);
  const line = found ?? before?.line ?? STRAIGHT;
  const thrower = throwerOn(seen, ground.question, player.ball.finish, ground.assumed);
  const { x } = trackOf(thrower, line);
  const boards = Array.from({ length: 31 }, (_, i) => xToBoard(x[Math.round((2 * i * FOOT) / CELL_Y)]));
  return { line, isSensible: found !== null, shot: meanShot(thrower, line), boards };
}
