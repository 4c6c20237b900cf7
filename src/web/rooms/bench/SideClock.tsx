import { useEffect, useMemo, useRef, useState } from "react";
import { sideDiagram } from "#drawing/sideDiagram";
import { numberOf } from "#engine/surface/abrasives";
import type { Finish } from "#engine/surface/finish";
import type { SideId } from "#engine/surface/padWork/sides";
import { BENCH } from "#words/en/rooms/bench";
import { type BallState, held, LOOK_MS, looked, type PlannedStage, secondsLeft, secondsRun, started } from "../../benchWork/guide.ts";
import { Picture } from "../../pieces/Picture.tsx";
import { alarm } from "./alarm.ts";

interface ClockProps {
  readonly stage: PlannedStage;
  readonly side: SideId;
  readonly sidesLeft: readonly SideId[];
  /** What lies on the ball until this stage is through; null where nobody knows. */
  readonly before: Finish | null;
  readonly state: BallState;
  readonly nowMs: number;
  /** Whether cautions want to be seen first: until then no clock is started. */
  readonly isHeldBack: boolean;
  /** The spinner starts, for the first time or again. */
  onStart(): void;
  onChange(state: BallState): void;
  /** The side has been worked for so many seconds. */
  onDone(seconds: number): void;
  /** Takes back the side before; null where there is none. */
  readonly onAgain: (() => void) | null;
}

const FLASH_MS = 1500;
/** Steps in which the new texture is drawn over a side: finer is not seen. */
const SWEEPS = 30;

/** A side and its clock. At the end the whole screen flashes, sounds and shakes; the time is the clock's, not the tab's. */
export function SideClock({ stage, side, sidesLeft, before, state, nowMs, isHeldBack, onStart, onChange, onDone, onAgain }: ClockProps) {
  const left = secondsLeft(state, stage, nowMs);
  const run = secondsRun(state, stage, nowMs);
  const isRunning = state.runningSince !== null;
  const isBegun = isRunning || state.ranMs > 0;
  const at = stage.sideIds.length - sidesLeft.length + 1;
  const isFlashing = useSideEnd({ isRunning, left, stage, state, nowMs, onChange, onDone });
  const press = () => {
    if (!isRunning) onStart();
    onChange(isRunning ? held(state, nowMs) : started(state, nowMs));
  };
  useSpace(isHeldBack ? null : press);
  const share = Math.round((SWEEPS * run) / (stage.secondsPerSide ?? 1)) / SWEEPS;
  const svg = useMemo(
    () =>
      sideDiagram({
        side,
        sides: stage.sideIds,
        done: stage.sideIds.filter((one) => !sidesLeft.includes(one)),
        share,
        before,
        after: finishOf(stage),
      }),
    [side, stage, sidesLeft, share, before],
  );
  const isTurn = at > 1 && !isBegun;
  return (
    <div className={`bench-clock${isFlashing ? " flashing" : ""}`}>
      {isTurn && <p className="bench-turn">{BENCH.turn}</p>}
      <button type="button" className="bench-ball" disabled={isHeldBack} aria-label={isRunning ? BENCH.hold : BENCH.start} onClick={press}>
        <Picture svg={svg} className="bench-diagram" />
      </button>
      <ol className="bench-ring visually-hidden" aria-label={BENCH.sidesDone(at - 1, stage.sideIds.length)}>
        {stage.sideIds.map((id) => (
          <li key={id} className={sidesLeft.includes(id) ? (id === side ? "at" : "") : "done"}>
            {BENCH.up[id]}
          </li>
        ))}
      </ol>
      <div className="bench-time">
        <p className={isRunning ? "bench-seconds" : "bench-seconds stands"} role="timer" aria-label={BENCH.seconds(Math.ceil(left))}>
          {Math.ceil(left)}
        </p>
        <p className="bench-side">
          <strong>{BENCH.up[side]}</strong>
          <span>{BENCH.side(at, stage.sideIds.length)}</span>
        </p>
      </div>
      <div className="bench-keys">
        <button
          type="button"
          className="button bench-key"
          disabled={!isBegun && onAgain === null}
          onClick={() => (isBegun ? onChange({ ...held(state, nowMs), ranMs: 0 }) : onAgain?.())}
        >
          <span aria-hidden="true">↺</span>
          {isBegun ? BENCH.sideAgain : BENCH.sideBefore}
        </button>
        <button type="button" className="button primary bench-key" disabled={isHeldBack} onClick={press}>
          <span aria-hidden="true">{isRunning ? "❚❚" : "▶"}</span>
          {isRunning ? BENCH.hold : state.ranMs > 0 ? BENCH.goOn : BENCH.start}
        </button>
        <button
          type="button"
          className="button bench-key"
          disabled={!isBegun}
          onClick={() => {
            onChange({ ...held(state, nowMs), ranMs: 0 });
            onDone(Math.round(run));
          }}
        >
          <span aria-hidden="true">›</span>
          {BENCH.nextSide}
        </button>
      </div>
    </div>
  );
}

interface EndParts extends Pick<ClockProps, "stage" | "state" | "nowMs" | "onChange" | "onDone"> {
  readonly isRunning: boolean;
  readonly left: number;
}

/** Writes a running clock down while it runs, and ends the side when its time is over. @returns whether the screen flashes */
function useSideEnd({ isRunning, left, stage, state, nowMs, onChange, onDone }: EndParts): boolean {
  const [isFlashing, setFlashing] = useState(false);
  const over = useRef("");
  useEffect(() => {
    if (!isRunning) return;
    if (left > 0) {
      if (nowMs - state.lookedMs >= LOOK_MS) onChange(looked(state, nowMs));
      return;
    }
    // Once a side, whatever is drawn before it has been written down.
    if (over.current === state.of) return;
    over.current = state.of;
    alarm();
    setFlashing(true);
    onChange({ ...held(state, nowMs), ranMs: 0 });
    onDone(stage.secondsPerSide ?? 0);
  }, [isRunning, left, nowMs, onChange, onDone, stage, state]);
  useEffect(() => {
    if (!isFlashing) return;
    const timer = setTimeout(() => setFlashing(false), FLASH_MS);
    return () => clearTimeout(timer);
  }, [isFlashing]);
  return isFlashing;
}

/** A wet knuckle on the space bar does what the large key does, wherever the focus is, but not while something is typed. */
function useSpace(press: (() => void) | null): void {
  const newest = useRef(press);
  newest.current = press;
  useEffect(() => {
    const hear = (event: KeyboardEvent): void => {
      if (event.key !== " " || event.repeat || event.target instanceof HTMLInputElement || event.target instanceof HTMLSelectElement)
        return;
      event.preventDefault();
      newest.current?.();
    };
    addEventListener("keydown", hear);
    return () => removeEventListener("keydown", hear);
  }, []);
}

/** What a stage leaves on the ball, where its abrasive has a number. */
function finishOf({ abrasive }: PlannedStage): Finish | null {
  const number = numberOf(abrasive);
  return number === null ? null : { number, polished: false };
}
