import { useState } from "react";
import { knownFinish } from "#contract/records/benchBall";
import type { Pattern } from "#contract/records/place";
import { TYPICAL_BALL } from "#engine/ball/typical";
import { PIECES_A_GAME } from "#engine/planning/oilInPlay/session";
import { finishText } from "#engine/surface/finish";
import { CHART } from "#words/en/charts";
import { OIL_IN_PLAY } from "#words/en/rooms/oilInPlay";
import { usePool } from "../../client/poolHere.ts";
import { Computing } from "../../pieces/Computing.tsx";
import { OneOf } from "../../pieces/OneOf.tsx";
import { LineField } from "../../pieces/PlainFields.tsx";
import { FindBall } from "../../shop/FindBall.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useKept } from "../../shop/useKept.ts";
import { useRead } from "../../shop/useShop.ts";
import { OilInPlayAnswer } from "./OilInPlayAnswer.tsx";
import { type KnownPlayer, type OilInPlayDraft, transitionFileOf, USUAL_SESSION } from "./oilInPlayDraft.ts";
import { type TransitionState, useTransition } from "./useTransition.ts";

interface OilInPlayProps {
  readonly laneId: string;
  readonly pattern: Pattern;
}

/** What a session does to the oil of a lane: asked for here, worked out in the page, stepped through game by game. */
export function OilInPlay({ laneId, pattern }: OilInPlayProps) {
  const [draft, setDraft] = useKept<OilInPlayDraft>(`gritwright.oilInPlay.${laneId}`, () => USUAL_SESSION);
  const state = useTransition(usePool(), (game) => `${pattern.name}: ${game === 0 ? CHART.asLaid : CHART.afterGame(game)}`);
  const { known, isReading } = useKnownPlayer(draft.ballId);
  const file = transitionFileOf(draft, pattern, known);
  return (
    <>
      <section className="plate no-print">
        <h2>{OIL_IN_PLAY.title}</h2>
        <p className="note">{OIL_IN_PLAY.what}</p>
        <SessionForm draft={draft} problems={state.problems} onChange={setDraft} />
        <WhoIsKnown known={known} onChange={(ballId) => setDraft({ ...draft, ballId })} />
        {!isReading && <Computing {...toldOf(state)} words={OIL_IN_PLAY} onCompute={() => state.compute(file)} onStop={state.stop} />}
      </section>
      {state.answer !== null && <OilInPlayAnswer answer={state.answer} isOld={state.answer.file !== JSON.stringify(file)} />}
    </>
  );
}

function toldOf({ status, progress, answer, failure }: TransitionState) {
  return {
    status,
    progress: progress && { ...progress, said: gameSaid(progress) },
    hint: answer === null ? OIL_IN_PLAY.notYet : null,
    failure: failure === null ? null : OIL_IN_PLAY.failed(failure),
  };
}

/** Which game is being played. The lane as laid is a piece too, before the first. */
function gameSaid({ done, of }: { readonly done: number; readonly of: number }): string {
  const games = (of - 1) / PIECES_A_GAME;
  return OIL_IN_PLAY.progress(Math.min(games, 1 + Math.floor((done - 1) / PIECES_A_GAME)), games);
}

interface SessionFormProps {
  readonly draft: OilInPlayDraft;
  readonly problems: TransitionState["problems"];
  onChange(draft: OilInPlayDraft): void;
}

const FIELDS = [
  ["others", "others.bowlers"],
  ["leftHanders", "others.leftHanders"],
  ["games", "games"],
] as const;

function SessionForm({ draft, problems, onChange }: SessionFormProps) {
  const elsewhere = problems.filter(({ path }) => !FIELDS.some(([, place]) => place === path));
  return (
    <>
      <div className="field-row">
        {FIELDS.map(([key, place]) => (
          <LineField
            key={key}
            label={OIL_IN_PLAY[key]}
            inputMode="numeric"
            value={draft[key]}
            problem={problems.find(({ path }) => path === place)?.allowed}
            onChange={(value) => onChange({ ...draft, [key]: value })}
          />
        ))}
        <OneOf
          label={OIL_IN_PLAY.lanes}
          value={draft.lanes}
          words={OIL_IN_PLAY.lanesWords}
          onChange={(lanes) => onChange({ ...draft, lanes })}
        />
      </div>
      {elsewhere.map(({ path, value, allowed }) => (
        <p key={path} className="failed">
          {path}: {value} – {allowed}
        </p>
      ))}
    </>
  );
}

/** The ball that was chosen, and its owner. */
function useKnownPlayer(ballId: string | null): { readonly known: KnownPlayer | null; readonly isReading: boolean } {
  const ball = useRead(["balls", ballId ?? ""], () => answered(shop.balls[":id"].$get({ param: { id: ballId ?? "" } })), {
    enabled: ballId !== null,
  });
  const bowlerId = ball.data?.bowlerId ?? null;
  const bowler = useRead(["bowlers", bowlerId ?? ""], () => answered(shop.bowlers[":id"].$get({ param: { id: bowlerId ?? "" } })), {
    enabled: bowlerId !== null,
  });
  if (ballId === null || ball.data === undefined) return { known: null, isReading: ballId !== null && ball.error === null };
  return { known: { ball: ball.data, bowler: bowler.data ?? null }, isReading: bowlerId !== null && bowler.isPending };
}

interface WhoIsKnownProps {
  readonly known: KnownPlayer | null;
  onChange(ballId: string | null): void;
}

function WhoIsKnown({ known, onChange }: WhoIsKnownProps) {
  const [isChoosing, setChoosing] = useState(false);
  const choose = (ballId: string | null) => {
    onChange(ballId);
    setChoosing(false);
  };
  if (isChoosing)
    return (
      <div className="find">
        <FindBall
          line={(found) => (
            <button type="button" onClick={() => choose(found.id)}>
              <strong>{found.name}</strong> <span className="serial">{found.serial ?? ""}</span>
            </button>
          )}
        />
        <button type="button" className="button" onClick={() => choose(null)}>
          {OIL_IN_PLAY.without}
        </button>
      </div>
    );
  return (
    <>
      <p className="whose-shot">
        <span>
          {OIL_IN_PLAY.known}:{" "}
          <strong>{known === null ? OIL_IN_PLAY.knownNone : OIL_IN_PLAY.knownIs(known.bowler?.name ?? null, known.ball.name)}</strong>
        </span>
        <button type="button" className="button" onClick={() => setChoosing(true)}>
          {known === null ? OIL_IN_PLAY.choose : OIL_IN_PLAY.other}
        </button>
      </p>
      {known !== null && (known.bowler?.deliveries ?? []).length === 0 && <p className="note">{OIL_IN_PLAY.noDelivery}</p>}
      {known !== null && knownFinish(known.ball) === null && (
        <p className="note">{OIL_IN_PLAY.noFinish(finishText(TYPICAL_BALL.finish))}</p>
      )}
    </>
  );
}
