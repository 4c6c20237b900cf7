import { useEffect, useRef, useState } from "react";
import type { SignedEntry } from "#contract/records/ticketWork";
import { sideDiagram } from "#drawing/sideDiagram";
import type { Work } from "#engine/signed/work";
import type { SideId } from "#engine/surface/padWork/sides";
import { ABRASIVE_NAMES } from "#words/en/bench";
import { SIDE_NAMES } from "#words/en/padWork";
import { BENCH } from "#words/en/rooms/bench";
import { TICKET } from "#words/en/rooms/ticket";
import { messageText } from "#words/messageText";
import type { OnTheBench } from "../../benchWork/onTheBench.ts";
import { abrasiveName, stageName } from "../../benchWork/plannedStages.ts";
import { Picture } from "../../pieces/Picture.tsx";
import { LineField, WordField } from "../../pieces/PlainFields.tsx";
import { alarm } from "./alarm.ts";
import {
  answered,
  type BallState,
  type GuideState,
  held,
  isThisBall,
  isTimed,
  looked,
  nameOf,
  type PlannedStage,
  secondsLeft,
  secondsRun,
  started,
  stateOf,
  withBall,
} from "./guide.ts";
import { useSign } from "./useSign.ts";

interface StepProps {
  readonly here: OnTheBench;
  readonly stage: PlannedStage;
  /** Sides of it that nobody has worked yet. */
  readonly sidesLeft: readonly SideId[];
  /** Sides that are worked once more; empty where all of it is worked. */
  readonly again: readonly SideId[];
  readonly work: Work<SignedEntry> | null;
  readonly place: { readonly at: number; readonly of: number };
  readonly state: GuideState;
  readonly nowMs: number;
  onChange(change: (old: GuideState) => GuideState): void;
}

/** One step, filling the screen: what stops it, whether it is the right ball, the cautions, the clock, the signature. */
export function StepScreen({ here, stage, sidesLeft, again, work, place, state, nowMs, onChange }: StepProps) {
  const { ticket, ball } = here;
  const sign = useSign();
  const stop = ticket.stops.find(({ clearedAt }) => clearedAt === null);
  const isCut = isTimed(stage);
  const [side] = sidesLeft;
  const own = stateOf(state, ticket.id, nameOf(stage, side));
  const set = (next: BallState) => onChange((old) => withBall(old, ticket.id, next));
  const unseen = stage.cautions.filter((id) => !state.seen.includes(id));
  // What was worked last on this stage, so that a side can be done again.
  const last = work === null ? null : lastSide(stage, work);
  return (
    <div className="bench-step">
      <p className="bench-place">
        {BENCH.step(place.at, place.of)} · <strong>{ball.name}</strong> {ball.serial}
      </p>
      <h1>{stageName(stage)}</h1>
      <p className="bench-with">{howOf(stage)}</p>
      {stop !== undefined ? (
        <p role="alert" className="stop">
          {BENCH.stopped}: {stop.why}
        </p>
      ) : isCut && own.looked === "not yet" ? (
        <Scan ticketId={ticket.id} serial={ball.serial} onLooked={(looked) => set({ ...own, looked })} />
      ) : unseen.length > 0 ? (
        <Cautions ids={unseen} onSeen={() => onChange((old) => ({ ...old, seen: [...old.seen, ...unseen] }))} />
      ) : own.wasCut ? (
        <WasCut state={own} stage={stage} onSaid={(ranOn) => set(answered(own, ranOn, nowMs))} />
      ) : isCut && side !== undefined ? (
        <SideClock
          stage={stage}
          side={side}
          sidesLeft={sidesLeft}
          state={own}
          nowMs={nowMs}
          onChange={set}
          onDone={() => sign.side(here, stage, side, own, stage.secondsPerSide ?? 0)}
          onAgain={last === null ? null : () => sign.takeBack(here, last, BENCH.sideAgain)}
        />
      ) : (
        <Sign
          here={here}
          stage={stage}
          again={again}
          isOnSight={own.looked === "on sight"}
          onAgain={last === null ? null : () => sign.takeBack(here, last, BENCH.sideAgain)}
        />
      )}
    </div>
  );
}

/** The newest entry that tells of one side of a stage; null where none does. */
function lastSide(stage: PlannedStage, { sides }: Work<SignedEntry>): SignedEntry | null {
  return sides.findLast(({ stageId }) => stageId === stage.id) ?? null;
}

function howOf({ abrasive, way, force }: PlannedStage): string {
  const name = abrasiveName(abrasive);
  const water = way === null ? null : way.endsWith("wet") ? BENCH.wet : BENCH.dry;
  return [name, name === null ? null : water, force === null ? null : BENCH.force[force]].filter((part) => part !== null).join(" · ");
}

interface ScanProps {
  readonly ticketId: string;
  readonly serial: string | null;
  onLooked(how: "scanned" | "on sight"): void;
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
        if (isThisBall(given, ticketId, serial)) onLooked("scanned");
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
      <button type="button" className="button bench-button" onClick={() => onLooked("on sight")}>
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

interface CutProps {
  readonly state: BallState;
  readonly stage: PlannedStage;
  onSaid(ranOn: boolean): void;
}

/** The page or its machine went in the middle of a side. Only who stood there knows whether the spinner went on. */
function WasCut({ state, stage, onSaid }: CutProps) {
  return (
    <div className="bench-cautions">
      <h2>{BENCH.wasCut(Math.round(secondsRun(state, stage, 0)), stage.secondsPerSide ?? 0)}</h2>
      <p>{BENCH.didItRun}</p>
      <div className="bench-buttons">
        <button type="button" className="button primary bench-button" onClick={() => onSaid(false)}>
          {BENCH.itStood}
        </button>
        <button type="button" className="button bench-button" onClick={() => onSaid(true)}>
          {BENCH.itRanOn}
        </button>
      </div>
    </div>
  );
}

interface ClockProps {
  readonly stage: PlannedStage;
  readonly side: SideId;
  readonly sidesLeft: readonly SideId[];
  readonly state: BallState;
  readonly nowMs: number;
  onChange(state: BallState): void;
  onDone(): void;
  /** Takes back the side before; null where there is none. */
  readonly onAgain: (() => void) | null;
}

/** A side and its clock. At the change the whole screen flashes, sounds and shakes; the time is the clock's, not the tab's. */
function SideClock({ stage, side, sidesLeft, state, nowMs, onChange, onDone, onAgain }: ClockProps) {
  const left = secondsLeft(state, stage, nowMs);
  const isRunning = state.runningSince !== null;
  const isBegun = isRunning || state.ranMs > 0;
  const at = stage.sideIds.length - sidesLeft.length + 1;
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
    onDone();
  }, [isRunning, left, nowMs, onChange, onDone, state]);
  useEffect(() => {
    if (!isFlashing) return;
    const timer = setTimeout(() => setFlashing(false), FLASH_MS);
    return () => clearTimeout(timer);
  }, [isFlashing]);
  return (
    <div className={`bench-clock${isFlashing ? " flashing" : ""}`}>
      <div>
        <p className="bench-side">
          {BENCH.side(at, stage.sideIds.length)}: {SIDE_NAMES[side]}
        </p>
        <ol className="bench-ring" aria-label={BENCH.sidesDone(at - 1, stage.sideIds.length)}>
          {stage.sideIds.map((id) => (
            <li key={id} className={sidesLeft.includes(id) ? (id === side ? "at" : "") : "done"}>
              {SIDE_NAMES[id]}
            </li>
          ))}
        </ol>
        {at > 1 && !isRunning && <p className="bench-turn">{BENCH.turn}</p>}
        <p className="bench-seconds" role="timer" aria-label={BENCH.seconds(Math.ceil(left))}>
          {Math.ceil(left)}
        </p>
      </div>
      <Picture svg={sideDiagram(side)} className="bench-diagram" />
      <div className="bench-buttons">
        <button
          type="button"
          className="button bench-button"
          disabled={!isBegun && onAgain === null}
          onClick={() => (isBegun ? onChange({ ...held(state, nowMs), ranMs: 0 }) : onAgain?.())}
        >
          {isBegun ? BENCH.sideAgain : BENCH.sideBefore}
        </button>
        <button
          type="button"
          className="button primary bench-button"
          onClick={() => onChange(isRunning ? held(state, nowMs) : started(state, nowMs))}
        >
          {isRunning ? BENCH.hold : state.ranMs > 0 ? BENCH.goOn : at > 1 ? BENCH.nextSide : BENCH.start}
        </button>
      </div>
    </div>
  );
}

const FLASH_MS = 1500;
/** How often a running clock is written down, ms: so much is not known after a power cut. */
const LOOK_MS = 1000;

interface SignProps {
  readonly here: OnTheBench;
  readonly stage: PlannedStage;
  readonly again: readonly SideId[];
  readonly isOnSight: boolean;
  readonly onAgain: (() => void) | null;
}

/** What was done is signed, with what was really used. */
function Sign({ here, stage, again, isOnSight, onAgain }: SignProps) {
  const sign = useSign();
  const [used, setUsed] = useState(stage.abrasive);
  return (
    <div className="bench-sign">
      {isTimed(stage) && <p>{BENCH.cannotUndo}</p>}
      {isOnSight && <p className="note">{BENCH.scanSkipped}</p>}
      {stage.abrasive !== null && (
        <WordField label={BENCH.used} value={used ?? ""} words={usable(stage.abrasive)} onChange={(chosen) => setUsed(chosen)} />
      )}
      <div className="bench-buttons">
        {isTimed(stage) && onAgain !== null && (
          <button type="button" className="button bench-button" onClick={onAgain}>
            {BENCH.sideBefore}
          </button>
        )}
        <button
          type="button"
          className="button primary bench-button"
          disabled={sign.initials === null}
          onClick={() => (again.length > 0 ? sign.sidesAgain(here, stage, used, again) : sign.stage(here, stage, used, isOnSight))}
        >
          {BENCH.sign(sign.initials ?? TICKET.initials)}
        </button>
      </div>
    </div>
  );
}

/** Everything that could have been used, the planned one first. */
function usable(planned: string): Readonly<Record<string, string>> {
  return { [planned]: abrasiveName(planned) ?? planned, ...ABRASIVE_NAMES };
}
