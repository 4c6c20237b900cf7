import { useState } from "react";
import type { GameDocument } from "#contract/transitionDocument";
import type { FilmChange } from "#engine/planning/oilInPlay/filmChange";
import { type GameRanges, WORLDS_PLAYED } from "#engine/planning/oilInPlay/inWorlds";
import type { PlayerNow, PlayQuestion } from "#engine/planning/oilInPlay/session";
import { CHART } from "#words/en/charts";
import { OIL } from "#words/en/rooms/lanes";
import { OIL_IN_PLAY } from "#words/en/rooms/oilInPlay";
import { degrees, feet, fixed, launchAngle } from "#words/figures";
import { saveText } from "../../client/saveFile.ts";
import { Chart } from "../../pieces/Chart.tsx";
import { Facts } from "../../pieces/Facts.tsx";
import { OneOf } from "../../pieces/OneOf.tsx";
import { PlainTable } from "../../pieces/PlainTable.tsx";
import { linesCsv, oilCsv, playerName } from "./transitionCsv.ts";
import type { PlayedAnswer } from "./useTransition.ts";

interface AnswerProps {
  readonly answer: PlayedAnswer;
  /** The form has moved on since. */
  readonly isOld: boolean;
}

/** The lane through a session: one moment at a time on the whole chart and in figures, then all of them side by side. */
export function OilInPlayAnswer({ answer: { played, games, strips, ranges }, isOld }: AnswerProps) {
  const [wanted, setWanted] = useState(0);
  const at = Math.min(wanted, games.length - 1);
  const { lane, game } = games[at];
  const first = played.question.players[0].bowler;
  return (
    <section className="oil-in-play" aria-label={OIL_IN_PLAY.answer}>
      {isOld && <p className="note no-print">{OIL_IN_PLAY.changed}</p>}
      <section className="plate">
        <h2>{OIL_IN_PLAY.answer}</h2>
        <Steps at={at} last={games.length - 1} onStep={setWanted} />
        <Chart svg={lane} className="lane-chart" file={`oil-after-game-${at}`} />
        <Figures game={game} />
        {at > 0 && <InWorlds game={at} ranges={ranges?.[at] ?? null} left={game.change.left} who={playerName(first.name, 0)} />}
        <p className="note">
          {OIL_IN_PLAY.thick(playerName(first.name, 0))} {OIL_IN_PLAY.side[first.hand]}
        </p>
        <h3>{OIL_IN_PLAY.shares}</h3>
        <Shares left={game.change.left} />
        <h3>{OIL_IN_PLAY.lines}</h3>
        <Lines players={game.players} question={played.question} />
      </section>
      {games.length > 1 && (
        <section className="plate">
          <h2>{OIL_IN_PLAY.all}</h2>
          <Chart svg={strips} className="lane-chart" file="oil-in-play" />
          <p className="note">{OIL_IN_PLAY.chosen}</p>
          <SaveTables games={games.map((one) => one.game)} question={played.question} />
        </section>
      )}
    </section>
  );
}

function momentName(game: number): string {
  return game === 0 ? CHART.asLaid : CHART.afterGame(game);
}

interface StepsProps {
  readonly at: number;
  readonly last: number;
  onStep(game: number): void;
}

/** Through the moments, by button, or by arrow key among their names. */
function Steps({ at, last, onStep }: StepsProps) {
  const words = Object.fromEntries(Array.from({ length: last + 1 }, (_, game) => [String(game), momentName(game)]));
  return (
    <div className="oil-steps no-print">
      <OneOf label={OIL_IN_PLAY.moment} value={String(at)} words={words} onChange={(game) => onStep(Number(game))} />
      <button type="button" className="button" disabled={at === 0} onClick={() => onStep(at - 1)}>
        {OIL_IN_PLAY.earlier}
      </button>
      <button type="button" className="button" disabled={at === last} onClick={() => onStep(at + 1)}>
        {OIL_IN_PLAY.later}
      </button>
    </div>
  );
}

function Figures({ game: { game, shots, volumeMl, takenMl, ratio, change } }: { readonly game: GameDocument }) {
  const { burn, carriedDownMl } = change;
  return (
    <Facts
      rows={[
        [OIL_IN_PLAY.shots, fixed(shots, 0)],
        [OIL_IN_PLAY.oil, OIL.mL(volumeMl)],
        [OIL_IN_PLAY.taken, OIL.mL(takenMl)],
        [OIL_IN_PLAY.carried, OIL.mL(carriedDownMl)],
        [OIL.ratio, OIL.ratioValue(ratio, null)],
        [OIL_IN_PLAY.burn, game === 0 ? OIL_IN_PLAY.notYetWorn : OIL_IN_PLAY.burnAt(burn.board, 100 * burn.share)],
      ]}
    />
  );
}

interface InWorldsProps {
  readonly game: number;
  readonly ranges: GameRanges | null;
  readonly left: FilmChange["left"];
  /** The player whose move is told. */
  readonly who: string;
}

/** What the moment may be in other worlds: the picture shows one of them. */
function InWorlds({ game, ranges, left, who }: InWorldsProps) {
  if (ranges === null) return <p className="reading">{OIL_IN_PLAY.inWorldsSoon}</p>;
  const track = left.findIndex(({ along, boards }) => along === "middle" && boards[0] === TRACK_FROM);
  return (
    <p>
      {OIL_IN_PLAY.picture} {OIL_IN_PLAY.inWorlds(WORLDS_PLAYED, momentName(game), ranges.takenMl, ranges.left[track], ranges.burnBoard)}{" "}
      {OIL_IN_PLAY.moved(who, ranges.movedBoards[0])}
    </p>
  );
}

/** The boards about the second arrow begin here. */
const TRACK_FROM = 9;

function Shares({ left }: { readonly left: FilmChange["left"] }) {
  const first = left.filter(({ along }) => along === left[0].along);
  const parts = left.filter(({ boards }) => boards[0] === left[0].boards[0]).map(({ along }) => along);
  return (
    <PlainTable
      name={OIL_IN_PLAY.shares}
      rows={parts}
      keyOf={(part) => part}
      columns={[
        { name: OIL_IN_PLAY.part, cell: (part) => OIL_IN_PLAY.along[part] },
        ...first.map(({ boards: [from, to] }) => ({
          name: OIL_IN_PLAY.boards(from, to),
          kind: "figure" as const,
          cell: (part: FilmChange["left"][number]["along"]) => {
            const share = left.find(({ along, boards }) => along === part && boards[0] === from)?.share ?? null;
            return share === null ? OIL_IN_PLAY.neverOiled : fixed(100 * share, 0);
          },
        })),
      ]}
    />
  );
}

interface LinesProps {
  readonly players: readonly PlayerNow[];
  readonly question: PlayQuestion;
}

function Lines({ players, question }: LinesProps) {
  const rows = players.map((now, index) => ({ now, index, bowler: question.players[index].bowler }));
  type Row = (typeof rows)[number];
  const figure = (name: string, cell: (now: PlayerNow) => string) => ({ name, kind: "figure" as const, cell: ({ now }: Row) => cell(now) });
  return (
    <PlainTable
      name={OIL_IN_PLAY.lines}
      rows={rows}
      keyOf={({ index }) => index}
      columns={[
        {
          name: OIL_IN_PLAY.who,
          cell: ({ now, index, bowler }: Row) => {
            const who = playerName(bowler.name, index);
            const named = bowler.hand === "left" ? OIL_IN_PLAY.leftHanded(who) : who;
            return now.isSensible ? named : `${named} (${OIL_IN_PLAY.straight})`;
          },
        },
        figure(OIL_IN_PLAY.laydown, ({ line }) => fixed(line.laydownBoard, 0)),
        figure(OIL_IN_PLAY.launch, ({ line }) => launchAngle(line.launchAngleDeg, 1)),
        figure(OIL_IN_PLAY.hook, ({ shot }) => (shot.hookStartFt === null ? OIL_IN_PLAY.neverOiled : feet(shot.hookStartFt))),
        figure(OIL_IN_PLAY.entry, ({ shot }) => degrees(shot.entryAngleDeg)),
      ]}
    />
  );
}

function SaveTables({ games, question }: { readonly games: readonly GameDocument[]; readonly question: PlayQuestion }) {
  return (
    <div className="buttons">
      <button type="button" className="button" onClick={() => saveText(oilCsv(games), "gritwright-oil-in-play.csv", "text/csv")}>
        {OIL_IN_PLAY.saveOil}
      </button>
      <button
        type="button"
        className="button"
        onClick={() => saveText(linesCsv(games, question), "gritwright-lines-in-play.csv", "text/csv")}
      >
        {OIL_IN_PLAY.saveLines}
      </button>
    </div>
  );
}
