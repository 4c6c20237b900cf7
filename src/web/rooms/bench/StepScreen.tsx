import { useEffect, useRef, useState } from "react";
import { sideDiagram } from "#drawing/sideDiagram";
import { SIDE_NAMES } from "#words/en/padWork";
import { BENCH } from "#words/en/rooms/bench";
import { TICKET } from "#words/en/rooms/ticket";
import { messageText } from "#words/messageText";
import { abrasiveName } from "../../benchWork/plannedStages.ts";
import type { OnTheBench } from "../../benchWork/signedStages.ts";
import { Picture } from "../../pieces/Picture.tsx";
import { LineField } from "../../pieces/PlainFields.tsx";
import { alarm } from "./alarm.ts";
import {
  type GuideState,
  held,
  isThisBall,
  isTimed,
  nameOf,
  type PlannedStage,
  type Step,
  secondsLeft,
  sideAgain,
  sideFinished,
  signedOff,
  started,
} from "./guide.ts";
import { useSign } from "./useSign.ts";

interface StepProps {
  readonly here: OnTheBench;
  readonly step: Step;
  readonly place: { readonly at: number; readonly of: number };
  readonly state: GuideState;
  readonly nowMs: number;
  onChange(state: GuideState): void;
}

/** One step, filling the screen: what stops it, whether it is the right ball, the cautions, the clock, the signature. */
export function StepScreen({ here, step, place, state, nowMs, onChange }: StepProps) {
  const { ticket, ball } = here;
  const stage = ticket.stages[step.stage];
  const stop = ticket.stops.find(({ clearedAt }) => clearedAt === null);
  const isCut = isTimed(stage);
  const isLookedAt = !isCut || state.scanned.includes(ticket.id);
  const isSeen = stage.cautions.length === 0 || state.seen.includes(nameOf(step));
  const isOver = isCut && state.side >= (stage.sides ?? 0);
  return (
    <div className="bench-step">
      <p className="bench-place">
        {BENCH.step(place.at, place.of)} · <strong>{ball.name}</strong> {ball.serial}
      </p>
      <h1>{stage.what}</h1>
      <p className="bench-with">{howOf(stage)}</p>
      {stop !== undefined ? (
        <p role="alert" className="stop">
          {BENCH.stopped}: {stop.why}
        </p>
      ) : !isLookedAt ? (
        <Scan
          ticketId={ticket.id}
          serial={ball.serial}
          onLooked={(onSight) =>
            onChange({ ...state, scanned: [...state.scanned, ticket.id], onSight: onSight ? [...state.onSight, ticket.id] : state.onSight })
          }
        />
      ) : !isSeen ? (
        <Cautions ids={stage.cautions} onSeen={() => onChange({ ...state, seen: [...state.seen, nameOf(step)] })} />
      ) : isCut && !isOver ? (
        <SideClock stage={stage} state={state} nowMs={nowMs} onChange={onChange} />
      ) : (
        <Sign here={here} step={step} stage={stage} state={state} onChange={onChange} />
      )}
    </div>
  );
}

function howOf({ abrasive, way, force }: PlannedStage): string {
  const name = abrasiveName(abrasive);
  const water = way === null ? null : way.endsWith("wet") ? BENCH.wet : BENCH.dry;
  return [name, name === null ? null : water, force === null ? null : BENCH.force[force]].filter((part) => part !== null).join(" · ");
}

interface ScanProps {
  readonly ticketId: string;
  readonly serial: string | null;
  onLooked(onSight: boolean): void;
}

/** Before the first cut: is it the right ball? A scanner types and ends with Enter. */
function Scan({ ticketId, serial, onLooked }: ScanProps) {
  const [given, setGiven] = useState("");
  const [isWrong, setWrong] = useState(false);
  return (
    <form
      className="bench-scan"
      onSubmit={(event) => {
        event.preventDefault();
        if (isThisBall(given, ticketId, serial)) onLooked(false);
        else setWrong(true);
      }}
    >
      <LineField
        label={BENCH.scan}
        help={BENCH.scanWhy}
        value={given}
        problem={isWrong ? BENCH.scanWrong : undefined}
        onChange={(text) => {
          setGiven(text);
          setWrong(false);
        }}
      />
      <button type="submit" className="button primary bench-button">
        {BENCH.goOn}
      </button>
      <button type="button" className="button bench-button" onClick={() => onLooked(true)}>
        {BENCH.scanSkip}
      </button>
    </form>
  );
}

/** Shown when the hazard changes, not on every step. */
function Cautions({ ids, onSeen }: { readonly ids: readonly string[]; onSeen(): void }) {
  return (
    <div className="bench-cautions">
      <h2>{BENCH.cautions}</h2>
      <ul>
        {ids.map((id) => (
          <li key={id}>{messageText({ id: `caution.${id}`, params: {} })}</li>
        ))}
      </ul>
      <button type="button" className="button primary bench-button" onClick={onSeen}>
        {BENCH.seen}
      </button>
    </div>
  );
}

interface ClockProps {
  readonly stage: PlannedStage;
  readonly state: GuideState;
  readonly nowMs: number;
  onChange(state: GuideState): void;
}

/** A side and its clock. At the change the whole screen flashes, sounds and shakes; the time is the clock's, not the tab's. */
function SideClock({ stage, state, nowMs, onChange }: ClockProps) {
  const left = secondsLeft(state, stage, nowMs);
  const isRunning = state.runningSince !== null;
  const [isFlashing, setFlashing] = useState(false);
  const over = useRef(false);
  useEffect(() => {
    if (!isRunning || left > 0 || over.current) return;
    over.current = true;
    alarm();
    setFlashing(true);
    onChange(sideFinished(state, stage));
  }, [isRunning, left, onChange, stage, state]);
  useEffect(() => {
    if (!isFlashing) return;
    const timer = setTimeout(() => setFlashing(false), FLASH_MS);
    return () => clearTimeout(timer);
  }, [isFlashing]);
  useEffect(() => {
    if (isRunning) over.current = false;
  }, [isRunning]);
  const side = stage.sideIds[state.side];
  return (
    <div className={`bench-clock${isFlashing ? " flashing" : ""}`}>
      <div>
        <p className="bench-side">
          {BENCH.side(state.side + 1, stage.sides ?? 0)}
          {side !== undefined && `: ${SIDE_NAMES[side]}`}
        </p>
        {state.side > 0 && !isRunning && <p className="bench-turn">{BENCH.turn}</p>}
        <p className="bench-seconds" role="timer" aria-label={BENCH.seconds(Math.ceil(left))}>
          {Math.ceil(left)}
        </p>
      </div>
      {side !== undefined && <Picture svg={sideDiagram(side)} className="bench-diagram" />}
      <div className="bench-buttons">
        <button type="button" className="button bench-button" onClick={() => onChange(sideAgain(held(state, nowMs)))}>
          {BENCH.sideAgain}
        </button>
        <button
          type="button"
          className="button primary bench-button"
          onClick={() => onChange(isRunning ? held(state, nowMs) : started(state, nowMs))}
        >
          {isRunning ? BENCH.hold : state.ranMs > 0 ? BENCH.goOn : state.side > 0 ? BENCH.nextSide : BENCH.start}
        </button>
      </div>
    </div>
  );
}

const FLASH_MS = 1500;

interface SignProps {
  readonly here: OnTheBench;
  readonly step: Step;
  readonly stage: PlannedStage;
  readonly state: GuideState;
  onChange(state: GuideState): void;
}

/** What was done is signed: it cannot be undone. */
function Sign({ here, step, stage, state, onChange }: SignProps) {
  const sign = useSign();
  return (
    <div className="bench-sign">
      {isTimed(stage) && <p>{BENCH.cannotUndo}</p>}
      {state.onSight.includes(here.ticket.id) && <p className="note">{BENCH.scanSkipped}</p>}
      <div className="bench-buttons">
        {isTimed(stage) && (
          <button type="button" className="button bench-button" onClick={() => onChange(sideAgain(state))}>
            {BENCH.sideAgain}
          </button>
        )}
        <button
          type="button"
          className="button primary bench-button"
          disabled={sign.initials === null}
          onClick={() => {
            sign.write(here, step, stage, state);
            onChange(signedOff(state));
          }}
        >
          {BENCH.sign(sign.initials ?? TICKET.initials)}
        </button>
      </div>
    </div>
  );
}
