import { csvText } from "#contract/csv";
import type { GameDocument } from "#contract/transitionDocument";
import type { PlayQuestion } from "#engine/planning/oilInPlay/session";
import { OIL_IN_PLAY } from "#words/en/rooms/oilInPlay";

/** The oil game by game, for other programs: figures bare, units in the headings, shares from 0 to 1. */
export function oilCsv(games: readonly GameDocument[]): string {
  const shares = games[0].change.left.map(({ along, boards: [from, to] }) => OIL_IN_PLAY.shareCsv(OIL_IN_PLAY.alongCsv[along], from, to));
  const rows = games.map(({ game, shots, volumeMl, takenMl, ratio, change: { burn, carriedDownMl, left } }) => [
    game,
    shots,
    volumeMl,
    takenMl,
    carriedDownMl,
    ratio,
    game === 0 ? null : burn.board,
    game === 0 ? null : burn.share,
    ...left.map(({ share }) => share),
  ]);
  return csvText([...OIL_IN_PLAY.oilCsv, ...shares], rows);
}

/** Everybody's line at every moment, boards from each bowler's own side. */
export function linesCsv(games: readonly GameDocument[], { players }: PlayQuestion): string {
  const rows = games.flatMap(({ game, players: now }) =>
    now.map(({ line, shot, isSensible }, i) => [
      game,
      playerName(players[i].bowler.name, i),
      players[i].bowler.hand,
      line.laydownBoard,
      line.launchAngleDeg,
      shot.hookStartFt,
      shot.entryAngleDeg,
      isSensible ? OIL_IN_PLAY.yes : OIL_IN_PLAY.no,
    ]),
  );
  return csvText(OIL_IN_PLAY.linesCsv, rows);
}

/** @param index from 0 */
export function playerName(name: string, index: number): string {
  return name === "" ? OIL_IN_PLAY.drawn(index + 1) : name;
}
