import { Link } from "wouter";
import type { Ball } from "#contract/records/ball";
import type { CoverId } from "#engine/ball/ball";
import type { BagBallPlan, BagPlan, BagStage, BagStretch } from "#engine/planning/bag/bagPlan";
import type { Worked } from "#engine/planning/bag/states";
import { assumptionText } from "#words/assumptionText";
import { coverWord } from "#words/coverWord";
import { BAG } from "#words/en/bag";
import { BAG_ROOM } from "#words/en/rooms/bag";
import { degrees, feet, fixed, millilitres } from "#words/figures";
import { messageText } from "#words/messageText";
import { saveText } from "../../client/saveFile.ts";
import { Chart } from "../../pieces/Chart.tsx";
import { BallSwatch } from "../../pieces/FinishSwatch.tsx";
import { Fold } from "../../pieces/Fold.tsx";
import { PlainTable } from "../../pieces/PlainTable.tsx";
import { NOT_KNOWN, withKnownFinishes } from "./knownFinishes.ts";
import { stagesCsv } from "./stagesCsv.ts";
import type { BagAnswer as Answer } from "./useBagPlan.ts";

interface BagAnswerProps {
  readonly answer: Answer;
  readonly balls: readonly Ball[];
  /** The form has moved on since. */
  readonly isOld: boolean;
}

/** The plan of a bag: what to do, the picture, which ball when and why, and what it says of the bag. */
export function BagAnswer({ answer: { plan: computed, picture, stagesAGame }, balls, isOld }: BagAnswerProps) {
  const plan = withKnownFinishes(computed, balls);
  return (
    <section className="bag-answer" aria-label={BAG_ROOM.answer}>
      {isOld && <p className="note no-print">{BAG_ROOM.changed}</p>}
      <Sums plan={plan} />
      {plan.stages.length > 0 && (
        <>
          <section className="plate">
            <h2>{BAG_ROOM.picture}</h2>
            <Chart svg={picture} className="bag-picture" file="bag" />
            <Files plan={plan} />
          </section>
          <div className="room-columns">
            <Stretches plan={plan} stagesAGame={stagesAGame} />
            <ForBowler plan={plan} stagesAGame={stagesAGame} />
          </div>
          <section className="plate">
            <h2>{BAG_ROOM.ballsTable}</h2>
            <PlainTable name={BAG_ROOM.ballsTable} rows={plan.balls} keyOf={({ name }) => name} columns={ballColumns(balls)} />
          </section>
          <section className="plate">
            <h2>{BAG_ROOM.table}</h2>
            <PlainTable
              name={BAG_ROOM.table}
              rows={plan.stages}
              keyOf={({ game, part }) => `${game}.${part}`}
              columns={stageColumns(stagesAGame)}
              hasOwnFile
            />
          </section>
        </>
      )}
      <div className="no-print">
        <Fold title={BAG_ROOM.assumed} summary={BAG_ROOM.assumedSummary} startsOpen="never" level={2}>
          <ul className="assumed">
            {plan.assumptions.map((use) => (
              <li key={use.id}>{assumptionText(use)}</li>
            ))}
          </ul>
        </Fold>
      </div>
    </section>
  );
}

function workedWords({ finish, asItLies }: Worked): string {
  if (!asItLies) return finish;
  return finish === NOT_KNOWN ? BAG_ROOM.asItLiesNotKnown : BAG.asItLies(finish);
}

function Sums({ plan }: { readonly plan: BagPlan }) {
  const { strikes, frames, changes, sure, sureShare, messages, mostPossible } = plan;
  return (
    <section className="verdict" aria-live="polite">
      <div>
        {strikes !== null && (
          <>
            <h2 className="pick-sentence">{BAG.strikes(strikes.value, strikes.low, strikes.high, frames)}</h2>
            <p>
              {BAG.changes(changes)}; {BAG.sure[sure]}: {BAG.sureText(sureShare)}.
            </p>
          </>
        )}
        {mostPossible !== null && (
          <p className="verdict-message">
            {BAG.mostPossible(
              mostPossible.gain.value,
              mostPossible.gain.low,
              mostPossible.gain.high,
              mostPossible.minutes,
              mostPossible.changes,
            )}
          </p>
        )}
        {messages.map((message) => (
          <p key={messageText(message)} className="verdict-message">
            {messageText(message)}
          </p>
        ))}
      </div>
    </section>
  );
}

function Files({ plan }: { readonly plan: BagPlan }) {
  return (
    <div className="buttons">
      <button type="button" className="button" onClick={() => saveText(stagesCsv(plan), "gritwright-bag.csv", "text/csv")}>
        {BAG_ROOM.saveCsv}
      </button>
      <button type="button" className="button" onClick={() => print()}>
        {BAG_ROOM.print}
      </button>
    </div>
  );
}

interface OverTime {
  readonly plan: BagPlan;
  readonly stagesAGame: number;
}

function placeOf(stage: number, stagesAGame: number): string {
  return BAG.place(1 + Math.floor(stage / stagesAGame), 1 + (stage % stagesAGame), stagesAGame);
}

function whenOf({ fromStage, toStage }: BagStretch, stagesAGame: number): readonly [string, string] {
  return [placeOf(fromStage, stagesAGame), placeOf(toStage, stagesAGame)];
}

function Stretches({ plan, stagesAGame }: OverTime) {
  return (
    <section className="plate">
      <h2>{BAG_ROOM.why}</h2>
      {plan.stretches.map((stretch) => {
        const { runnerUp, gain, reasons } = stretch;
        return (
          <div key={stretch.fromStage} className="bag-stretch">
            <p>
              <strong>{BAG.stretch(stretch.ball, workedWords(stretch), ...whenOf(stretch, stagesAGame))}</strong>
            </p>
            {runnerUp !== null && gain !== null && (
              <p>
                {BAG.against(runnerUp.ball, workedWords(runnerUp), gain.value, gain.low, gain.high)}; {reasons.map(messageText).join("; ")}.
              </p>
            )}
          </div>
        );
      })}
    </section>
  );
}

/** For the customer: which ball when, in words, without chances. */
function ForBowler({ plan, stagesAGame }: OverTime) {
  const worked = plan.balls.filter(({ role, asItLies }) => role === "thrown" && !asItLies);
  return (
    <section className="plate">
      <h2>{BAG_ROOM.forBowler}</h2>
      {worked.length === 0 ? (
        <p>{BAG_ROOM.forBowlerStay}</p>
      ) : (
        worked.map(({ name, finish }) => <p key={name}>{BAG_ROOM.forBowlerWork(name, finish)}</p>)
      )}
      {plan.stretches.map((stretch) => {
        const [from, to] = whenOf(stretch, stagesAGame);
        return <p key={stretch.fromStage}>{BAG_ROOM.forBowlerLine(from === to ? from : `${from} – ${to}`, stretch.ball)}</p>;
      })}
    </section>
  );
}

function ballColumns(balls: readonly Ball[]) {
  const linkOf = (plan: BagBallPlan) => balls.find(({ name }) => name === plan.name)?.id ?? null;
  return [
    {
      name: BAG_ROOM.ball,
      cell: (plan: BagBallPlan) => {
        const id = linkOf(plan);
        return (
          <span className="bag-ball">
            <BallSwatch finish={plan.finish === NOT_KNOWN ? null : plan.finish} />
            {id === null ? plan.name : <Link href={`/balls/${id}`}>{plan.name}</Link>}
            <small>{coverWord(plan.cover as CoverId | null)}</small>
          </span>
        );
      },
    },
    { name: BAG_ROOM.doWhat, cell: workOf },
    { name: BAG_ROOM.role, cell: ({ role }: BagBallPlan) => BAG_ROOM.roles[role] },
    {
      name: BAG_ROOM.lost,
      cell: ({ lostWithout }: BagBallPlan) =>
        lostWithout === null
          ? ""
          : BAG_ROOM.lostWords(fixed(Math.max(0, lostWithout.value), 1), fixed(lostWithout.low, 1), fixed(lostWithout.high, 1)),
    },
  ];
}

function workOf({ asItLies, role, finish, minutes, byHand, name }: BagBallPlan): string {
  const work = role === "thrown" && !asItLies ? BAG_ROOM.minutes(finish, fixed(minutes, 0)) : BAG_ROOM.doNothing;
  return byHand === null ? work : `${work}; ${BAG.byHand(name, byHand.number, byHand.beforeGame, byHand.minutes)}`;
}

function stageColumns(stagesAGame: number) {
  const dash = "–";
  return [
    { name: BAG_ROOM.when, cell: ({ game, part }: BagStage) => BAG.place(game, part, stagesAGame), kind: "day" as const },
    { name: BAG_ROOM.ball, cell: (stage: BagStage) => `${stage.ball}, ${workedWords(stage)}` },
    {
      name: BAG_ROOM.line,
      cell: ({ line }: BagStage) => (line === null ? dash : BAG.line(line.laydownBoard, line.launchAngleDeg)),
      kind: "figure" as const,
    },
    {
      name: BAG_ROOM.hook,
      cell: ({ hookStartFt }: BagStage) => (hookStartFt === null ? dash : feet(hookStartFt)),
      kind: "figure" as const,
    },
    {
      name: BAG_ROOM.entry,
      cell: ({ entryAngleDeg }: BagStage) => (entryAngleDeg === null ? dash : degrees(entryAngleDeg)),
      kind: "figure" as const,
    },
    {
      name: BAG_ROOM.strikes,
      cell: ({ chance: { value, low, high } }: BagStage) => `${fixed(100 * value, 0)} (${fixed(100 * low, 0)}–${fixed(100 * high, 0)})`,
      kind: "figure" as const,
    },
    { name: BAG_ROOM.oilLeft, cell: ({ oilMl }: BagStage) => millilitres(oilMl), kind: "figure" as const },
  ];
}
