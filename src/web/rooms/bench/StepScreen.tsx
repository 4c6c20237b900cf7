import { Link } from "wouter";
import type { Extraction } from "#contract/records/settings";
import type { SignedEntry } from "#contract/records/ticketWork";
import { heatVerdict } from "#engine/rules/heat";
import type { StageStanding } from "#engine/signed/entries";
import type { Work } from "#engine/signed/work";
import { type Finish, parseFinish } from "#engine/surface/finish";
import { BENCH } from "#words/en/rooms/bench";
import { messageText } from "#words/messageText";
import {
  answered,
  type BallState,
  type GuideState,
  isTimed,
  nameOf,
  type PlannedStage,
  secondsLeft,
  secondsRun,
  stateOf,
  withBall,
  withMinutes,
  withSeen,
} from "../../benchWork/guide.ts";
import type { OnTheBench } from "../../benchWork/onTheBench.ts";
import { abrasiveName, stageName } from "../../benchWork/plannedStages.ts";
import { useSign } from "../../benchWork/useSign.ts";
import { thisDevice } from "../../shop/device.ts";
import { useSettings } from "../../shop/zone.ts";
import { Scan, WasCut } from "./BeforeStep.tsx";
import { OilClock } from "./OilClock.tsx";
import { Instead, OtherPad } from "./OtherPad.tsx";
import { SideClock } from "./SideClock.tsx";
import { Sign } from "./Sign.tsx";
import { TakenSide } from "./TakenSide.tsx";
import { UndoSignature } from "./UndoSignature.tsx";

interface StepProps {
  readonly here: OnTheBench;
  readonly planned: PlannedStage;
  /** With what is really used. */
  readonly stage: PlannedStage;
  readonly standing: StageStanding<SignedEntry>;
  readonly work: Work<SignedEntry>;
  /** Cautions that nobody has seen since the hazard last changed. */
  readonly unseen: readonly string[];
  readonly state: GuideState;
  readonly nowMs: number;
  onChange(change: (old: GuideState) => GuideState): void;
}

/** One step, filling the screen: what stops it, whether it is the right ball, the cautions, the clock, the signature. */
export function StepScreen(props: StepProps) {
  const { here, planned, stage, standing, work, unseen, state, nowMs, onChange } = props;
  const { ticket, ball } = here;
  const { sidesLeft, running } = standing;
  const sign = useSign();
  const setting = useSettings().data?.extraction ?? null;
  const stop = ticket.stops.find(({ clearedAt }) => clearedAt === null);
  if (stop !== undefined) return <Stopped ticketId={ticket.id} why={stop.why} />;
  const isCut = isTimed(stage);
  const [side] = sidesLeft;
  const own = stateOf(state, ticket.id, nameOf(stage, side));
  const set = (next: BallState) => onChange((old) => withBall(old, ticket.id, next));
  const onUsed = (abrasive: string | null) => set({ ...own, used: abrasive === null ? null : { stageId: stage.id, abrasive } });
  const isLookedAt = !isCut || own.looked !== "not yet";
  const isMine = running?.began?.device === thisDevice() && running.began.side === side;
  const isTaken = isCut && side !== undefined && running !== null && running.began?.device !== thisDevice();
  // What was worked last on this stage, so that a side can be done again.
  const last = work.sides.findLast(({ stageId, at }) => stageId === stage.id && at > (standing.instead?.at ?? "")) ?? null;
  const onAgain = last === null ? null : () => sign.takeBack(here, last, BENCH.sideAgain);
  const isBegun = own.runningSince !== null || own.ranMs > 0;
  const seen = () => {
    onChange((old) => withSeen(old, unseen));
    sign.read(here, unseen);
  };
  return (
    <div className="bench-step">
      <h1>{titleOf(stage)}</h1>
      <p className="bench-with">{howOf(stage)}</p>
      {ticket.state === "waiting for approval" && (
        <p role="alert" className="stop">
          {BENCH.notApproved}
        </p>
      )}
      {standing.instead !== null && <Instead here={here} used={standing.instead} planned={planned} work={work} />}
      {isLookedAt && !isTaken && unseen.length > 0 && <CautionBox ids={unseen} onSeen={seen} />}
      {!isLookedAt ? (
        <Scan ticketId={ticket.id} serial={ball.serial} onLooked={(looked) => set({ ...own, looked })} />
      ) : isTaken ? (
        <TakenSide running={running} state={own} nowMs={nowMs} onChange={set} onTakeOver={() => sign.begin(here, stage, side)} />
      ) : own.wasCut ? (
        <WasCut state={own} stage={withMinutes(stage, setting, own)} onSaid={(ranOn) => set(answered(own, ranOn, nowMs))} />
      ) : isCut && side !== undefined ? (
        <>
          <SideClock
            stage={stage}
            side={side}
            sidesLeft={sidesLeft}
            before={finishNow(here, work)}
            state={own}
            nowMs={nowMs}
            isHeldBack={unseen.length > 0}
            onStart={() => isMine || sign.begin(here, stage, side)}
            onChange={set}
            onDone={(seconds) => sign.side(here, stage, side, own, seconds)}
            onAgain={onAgain}
          />
          {!isBegun && last === null && <OtherPad planned={planned} stage={stage} onUsed={onUsed} />}
        </>
      ) : (
        <Untimed {...props} setting={setting} own={own} set={set} onAgain={onAgain} onUsed={onUsed} />
      )}
      <UndoSignature here={here} work={work} isBegun={isBegun || last !== null} />
    </div>
  );
}

function Stopped({ ticketId, why }: { readonly ticketId: string; readonly why: string }) {
  return (
    <div className="bench-step">
      <h1 role="alert">{BENCH.stoppedFor(why)}</h1>
      <Link href={`/tickets/${ticketId}`} className="button primary bench-button">
        {BENCH.toTicket}
      </Link>
    </div>
  );
}

interface UntimedProps extends StepProps {
  readonly setting: Extraction | null;
  readonly own: BallState;
  set(state: BallState): void;
  readonly onAgain: (() => void) | null;
  onUsed(abrasive: string | null): void;
}

/** A step without sides, or whose sides are all done: a clock where oil is drawn out, and the signature. */
function Untimed({ here, planned, stage, standing, setting, nowMs, unseen, own, set, onAgain, onUsed }: UntimedProps) {
  const isHeat = stage.kind === "extract" || (stage.kind === "dryOff" && setting !== null);
  const timed = withMinutes(stage, setting, own);
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
          planned={planned}
          stage={stage}
          again={standing.again}
          clock={isHeat ? { isOver, secondsRun: Math.round(secondsRun(own, timed, nowMs)) } : null}
          isOnSight={own.looked === "on sight"}
          isHeldBack={unseen.length > 0}
          onAgain={onAgain}
          onUsed={onUsed}
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

/** One box when the hazard changes, not on every step; nothing is started or signed before it was seen. */
export function CautionBox({ ids, onSeen }: { readonly ids: readonly string[]; onSeen(): void }) {
  return (
    <div className="bench-cautions" role="note">
      <div>
        <strong>{BENCH.hazard}</strong>
        <ul>
          {ids.map((id) => (
            <li key={id}>{messageText({ id: `caution.${id}`, params: {} })}</li>
          ))}
        </ul>
      </div>
      <button type="button" className="button primary bench-button" onClick={onSeen}>
        {BENCH.seen}
      </button>
    </div>
  );
}
