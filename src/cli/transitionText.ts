import type { GameDocument, TransitionDocument } from "#contract/transitionDocument";
import type { PlayQuestion } from "#engine/planning/oilInPlay/session";
import { CHART } from "#words/en/charts";
import { OIL_IN_PLAY } from "#words/en/rooms/oilInPlay";
import { TRANSITION } from "#words/en/transition";
import { fixed } from "#words/figures";
import { type Column, paragraph, textColumns, textTable } from "./textTable.ts";

const WIDTH = 100;

/** A lane in play as text: oil game by game, then everybody's lines. */
export function transitionText({ games, worlds }: TransitionDocument, question: PlayQuestion): string {
  const first = games[0];
  const last = games[games.length - 1];
  const sections = [
    [TRANSITION.heading(question.players.length, question.games, last.shots)],
    oilTable(games),
    [
      TRANSITION.conserved(first.volumeMl, last.volumeMl, last.takenMl),
      TRANSITION.carriedDown(last.change.carriedDownMl),
      TRANSITION.side(question.players[0].bowler.hand),
    ],
    [`${TRANSITION.linesHeading}:`, ...lineRows(games, question)],
    inWorlds(last, worlds, question),
    paragraph(TRANSITION.chosen, "", WIDTH),
  ];
  return `${sections.map((section) => section.join("\n")).join("\n\n")}\n`;
}

function oilTable(games: readonly GameDocument[]): string[] {
  const { columns } = TRANSITION;
  const figures = (heading: readonly [string, string], cell: (game: GameDocument) => string): Column => ({
    heading,
    cells: games.map(cell),
    align: "right",
  });
  const left = (from: number) => (game: GameDocument) => {
    const share = game.change.left.find(({ along, boards }) => along === "middle" && boards[0] === from)?.share ?? null;
    return share === null ? "–" : fixed(100 * share, 0);
  };
  return textTable(
    [
      { heading: columns.moment, cells: games.map(({ game }) => momentName(game)), align: "left" },
      figures(columns.volume, ({ volumeMl }) => fixed(volumeMl, 1)),
      figures(columns.taken, ({ takenMl }) => fixed(takenMl, 1)),
      figures(columns.outside, left(1)),
      figures(columns.track, left(9)),
      figures(columns.middle, left(15)),
      figures(columns.burn, ({ change, game }) => (game === 0 ? "" : fixed(change.burn.board, 0))),
      figures(columns.burnShare, ({ change, game }) => (game === 0 ? "" : fixed(100 * change.burn.share, 0))),
    ],
    3,
  );
}

/** What else the last moment may be, where other worlds were asked. */
function inWorlds({ game, change, players, ranges }: GameDocument, worlds: number, question: PlayQuestion): readonly string[] {
  if (ranges === null) return [];
  const track = change.left.findIndex(({ along, boards }) => along === "middle" && boards[0] === 9);
  const [first] = question.players;
  const sentences = [
    OIL_IN_PLAY.inWorlds(worlds, CHART.afterGame(game), ranges.takenMl, ranges.left[track], ranges.burnBoard),
    ...(players[0].isSensible
      ? [OIL_IN_PLAY.moved(first.bowler.name === "" ? TRANSITION.noName(0) : first.bowler.name, ranges.movedBoards[0])]
      : []),
  ];
  return paragraph(sentences.join(" "), "", WIDTH);
}

function momentName(game: number): string {
  return game === 0 ? TRANSITION.asLaid : TRANSITION.after(game);
}

function lineRows(games: readonly GameDocument[], { players }: PlayQuestion): string[] {
  return players.flatMap(({ bowler }, i) => [
    `  ${bowler.name === "" ? TRANSITION.noName(i) : bowler.name}`,
    ...textColumns([
      { cells: games.map(({ game }) => `    ${momentName(game)}`), align: "left" },
      {
        cells: games.map(({ players: now }) => {
          const { line, isSensible, shot } = now[i];
          return isSensible ? TRANSITION.line(line.laydownBoard, line.launchAngleDeg, shot.hookStartFt) : TRANSITION.notSensible;
        }),
        align: "left",
      },
    ]),
  ]);
}
