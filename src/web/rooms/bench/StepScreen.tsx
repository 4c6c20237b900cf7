import { useState } from "react";
import { Link } from "wouter";
import type { Extraction } from "#contract/records/settings";
import type { SignedEntry } from "#contract/records/ticketWork";
import { heatVerdict } from "#engine/rules/heat";
import type { Work } from "#engine/signed/work";
import { type Finish, parseFinish } from "#engine/surface/finish";
import type { SideId } from "#engine/surface/padWork/sides";
import { ABRASIVE_NAMES } from "#words/en/bench";
import { BENCH } from "#words/en/rooms/bench";
import { TICKET } from "#words/en/rooms/ticket";
import type { OnTheBench } from "../../benchWork/onTheBench.ts";
import { abrasiveName, stageName } from "../../benchWork/plannedStages.ts";
import { LineField, WordField } from "../../pieces/PlainFields.tsx";
import { useSettings } from "../../shop/zone.ts";
import { CautionBox } from "./CautionBox.tsx";
import {
  answered,
  type BallState,
  type GuideState,
  isThisBall,
  isTimed,
  nameOf,
  type PlannedStage,
  secondsLeft,
  secondsRun,
  stateOf,
  withBall,
  withMinutes,
  withSeen,
} from "./guide.ts";
import { OilClock } from "./OilClock.tsx";
import { SideClock } from "./SideClock.tsx";
import { UndoSignature } from "./UndoSignature.tsx";
import { useSign } from "./useSign.ts";

interface StepProps {
  readonly here: OnTheBench;
  readonly stage: PlannedStage;
  /** Sides of it that nobody has worked yet. */
  readonly sidesLeft: readonly SideId[];
  /** Sides that are worked once more; empty where all of it is worked. */
  readonly again: readonly SideId[];
  readonly work: Work<SignedEntry>;
  /** Cautions that nobody has seen since the hazard last changed. */
  readonly unseen: readonly string[];
  readonly state: GuideState;
  readonly nowMs: number;
  onChange(change: (old: GuideState) => GuideState): void;
}

/** One step, filling the screen: what stops it, whether it is the right ball, the cautions, the clock, the signature. */
export function StepScreen(props: StepProps) {
  const { here, stage, sidesLeft, work, unseen, state, nowMs, onChange } = props;
  const { ticket, ball } = here;
  const sign = useSign();
  const setting = useSettings().data?.extraction ?? null;
  const stop = ticket.stops.find(({ clearedAt }) => clearedAt === null);
  if (stop !== undefined)
    return (
      <div className="bench-step">
        <h1 role="alert">{BENCH.stoppedFor(stop.why)}</h1>
        <Link href={`/tickets/${ticket.id}`} className="button primary bench-button">
          {BENCH.toTicket}
        </Link>
      </div>
    );
  const isCut = isTimed(stage);
  const [side] = sidesLeft;
  const own = stateOf(state, ticket.id, nameOf(stage, side));
  const set = (next: BallState) => onChange((old) => withBall(old, ticket.id, next));
  const isLookedAt = !isCut || own.looked !== "not yet";
  // What was worked last on this stage, so that a side can be done again.
  const last = work.sides.findLast(({ stageId }) => stageId === stage.id) ?? null;
  const onAgain = last === null ? null : () => sign.takeBack(here, last, BENCH.sideAgain);
  return (
    <div className="bench-step">
      <h1>{titleOf(stage)}</h1>
      <p className="bench-with">{howOf(stage)}</p>
      {ticket.state === "waiting for approval" && (
        <p role="alert" className="stop">
          {BENCH.notApproved}
        </p>
      )}
      {isLookedAt && unseen.length > 0 && <CautionBox ids={unseen} onSeen={() => onChange((old) => withSeen(old, unseen))} />}
      {!isLookedAt ? (
        <Scan ticketId={ticket.id} serial={ball.serial} onLooked={(looked) => set({ ...own, looked })} />
      ) : own.wasCut ? (
        <WasCut state={own} stage={withMinutes(stage, setting)} onSaid={(ranOn) => set(answered(own, ranOn, nowMs))} />
      ) : isCut && side !== undefined ? (
        <SideClock
          stage={stage}
          side={side}
          sidesLeft={sidesLeft}
          before={finishNow(here, work)}
          state={own}
          nowMs={nowMs}
          isHeldBack={unseen.length > 0}
          onChange={set}
          onDone={(seconds) => sign.side(here, stage, side, own, seconds)}
          onAgain={onAgain}
        />
      ) : (
        <Untimed {...props} setting={setting} own={own} set={set} onAgain={onAgain} />
      )}
      <UndoSignature here={here} work={work} isBegun={own.runningSince !== null || own.ranMs > 0 || last !== null} />
    </div>
  );
}

interface UntimedProps extends StepProps {
  readonly setting: Extraction | null;
  readonly own: BallState;
  set(state: BallState): void;
  readonly onAgain: (() => void) | null;
}

/** A step without sides, or whose sides are all done: a clock where oil is drawn out, and the signature. */
function Untimed({ here, stage, setting, again, nowMs, unseen, own, set, onAgain }: UntimedProps) {
  const isHeat = stage.kind === "extract" || (stage.kind === "dryOff" && setting !== null);
  const timed = withMinutes(stage, setting);
  const isOver = !isHeat || (setting !== null && secondsLeft(own, timed, nowMs) === 0);
  const isRefused =
    stage.kind === "extract" && setting !== null && heatVerdict(setting.temperatureF, here.ball.heatLimitF).verdict === "refuse";
  const clock = { stage: timed, setting, makerLimitF: here.ball.heatLimitF, state: own, nowMs, onChange: set };
  return (
    <>
      {isHeat && <OilClock {...clock} />}
      {!isRefused && (
        <Sign
          here={here}
          stage={stage}
          again={again}
          clock={isHeat ? { isOver, secondsRun: Math.round(secondsRun(own, timed, nowMs)) } : null}
          isOnSight={own.looked === "on sight"}
          isHeldBack={unseen.length > 0}
          onAgain={onAgain}
        />
      )}
    </>
  );
}

/** What lies on the ball: the last signed cut, else what it came with. */
function finishNow({ ticket }: OnTheBench, { finish }: Work<SignedEntry>): Finish | null {
  return finish ?? (ticket.finishBefore === null ? null : parseFinish(ticket.finishBefore));
}

function titleOf(stage: PlannedStage): string {
  const tool = abrasiveName(stage.abrasive);
  return stage.kind === "cut" && tool !== null ? BENCH.tool(tool, waterOf(stage)) : stageName(stage);
}

function waterOf({ way }: PlannedStage): string | null {
  return way === null ? null : way.endsWith("wet") ? BENCH.water.wet : BENCH.water.dry;
}

function howOf({ abrasive, way, force, kind }: PlannedStage): string {
  const name = kind === "cut" ? null : abrasiveName(abrasive);
  const water = kind !== "cut" || way === null ? null : way.endsWith("wet") ? BENCH.wet : BENCH.dry;
  return [name, water, force === null ? null : BENCH.force[force]].filter((part) => part !== null).join(" · ");
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
        {BENCH.check}
      </button>
      <button type="button" className="button bench-button" onClick={() => onLooked("on sight")}>
        {BENCH.scanSkip}
      </button>
    </form>
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
      <p>{isTimed(stage) ? BENCH.didItRun : BENCH.didItGoOn}</p>
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

interface SignProps {
  readonly here: OnTheBench;
  readonly stage: PlannedStage;
  readonly again: readonly SideId[];
  /** Of heat or rest: whether it has had its time; null where there is no such clock. */
  readonly clock: { readonly isOver: boolean; readonly secondsRun: number } | null;
  readonly isOnSight: boolean;
  readonly isHeldBack: boolean;
  readonly onAgain: (() => void) | null;
}

/** What was done is signed, with what was really used. */
function Sign({ here, stage, again, clock, isOnSight, isHeldBack, onAgain }: SignProps) {
  const sign = useSign();
  const [used, setUsed] = useState(stage.abrasive);
  const isEarly = clock !== null && !clock.isOver;
  const note = [isOnSight ? BENCH.scanSkipped : "", isEarly ? BENCH.withoutClock : ""].filter((part) => part !== "").join(" ");
  const initials = sign.initials ?? TICKET.initials;
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
          className={isEarly ? "button bench-button" : "button primary bench-button"}
          disabled={sign.initials === null || isHeldBack}
          onClick={() =>
            again.length > 0
              ? sign.sidesAgain(here, stage, used, again)
              : sign.stage(here, stage, used, { note, secondsRun: clock?.secondsRun ?? null })
          }
        >
          {isEarly ? BENCH.signWithoutClock(initials) : BENCH.sign(initials)}
        </button>
      </div>
    </div>
  );
}

/** Everything that could have been used, the planned one first. */
function usable(planned: string): Readonly<Record<string, string>> {
  return { [planned]: abrasiveName(planned) ?? planned, ...ABRASIVE_NAMES };
}
