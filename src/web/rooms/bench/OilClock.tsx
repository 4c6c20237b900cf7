import { useEffect } from "react";
import { Link } from "wouter";
import type { Extraction } from "#contract/records/settings";
import { heatVerdict, NEVER_ABOVE_F, WARN_ABOVE_F } from "#engine/rules/heat";
import { BENCH } from "#words/en/rooms/bench";
import { type BallState, held, LOOK_MS, longer, looked, type PlannedStage, secondsLeft, started } from "../../benchWork/guide.ts";

interface OilProps {
  readonly stage: PlannedStage;
  /** Null: the shop has not said how it draws oil out. */
  readonly setting: Extraction | null;
  readonly makerLimitF: number | null;
  readonly state: BallState;
  readonly nowMs: number;
  onChange(state: BallState): void;
}

/** Drawing oil out, or the rest after it, by the shop's own setting: degrees, minutes, and how far that is from what ruins a ball. */
export function OilClock({ stage, setting, makerLimitF, state, nowMs, onChange }: OilProps) {
  const left = Math.ceil(secondsLeft(state, stage, nowMs));
  useEffect(() => {
    if (state.runningSince === null) return;
    // Over: it stands at its whole time, so that no reload asks about it.
    if (left === 0) onChange(held(state, nowMs));
    else if (nowMs - state.lookedMs >= LOOK_MS) onChange(looked(state, nowMs));
  }, [left, nowMs, onChange, state]);
  if (setting === null)
    return (
      <div className="oil-clock">
        <p className="bench-big">{BENCH.oilNotSet}</p>
        <Link href="/shop" className="button bench-button">
          {BENCH.toShop}
        </Link>
      </div>
    );
  const isRest = stage.kind === "dryOff";
  const minutes = (isRest ? setting.restMinutes : setting.minutes) + (state.moreMinutes ?? 0);
  const isRunning = state.runningSince !== null;
  const { verdict, limitF, limitBy } = heatVerdict(setting.temperatureF, makerLimitF);
  if (!isRest && verdict === "refuse")
    return (
      <p role="alert" className="stop">
        {BENCH.oilRefused(setting.temperatureF, limitF, limitBy)}
      </p>
    );
  return (
    <div className="oil-clock">
      {!isRest && verdict === "warn" && (
        <p role="alert" className="stop">
          {BENCH.oilWarn(setting.temperatureF)}
        </p>
      )}
      <p className={isRunning ? "bench-seconds" : "bench-seconds stands"} role="timer">
        {`${Math.floor(left / 60)}:${String(left % 60).padStart(2, "0")}`}
      </p>
      <p className="bench-with">{isRest ? BENCH.oilRestOf(minutes) : BENCH.oilOf(minutes, setting.wipeMinutes)}</p>
      {!isRest && <Degrees setF={setting.temperatureF} limitF={limitF} />}
      <p className="bench-side">
        <strong>{isRest ? BENCH.oilRest(minutes) : BENCH.oilFor(setting.temperatureF, setting.minutes, setting.restMinutes)}</strong>
        <span>{isRest ? BENCH.shopSetting : BENCH.oilBy(setting.method)}</span>
      </p>
      <div className="bench-keys oil-keys">
        <button
          type="button"
          className="button bench-key"
          disabled={!isRunning && state.ranMs === 0}
          onClick={() => onChange(longer(state, nowMs))}
        >
          {BENCH.oilMore}
        </button>
        {left > 0 && (
          <button
            type="button"
            className="button primary bench-key"
            onClick={() => onChange(isRunning ? held(state, nowMs) : started(state, nowMs))}
          >
            {isRunning ? BENCH.hold : state.ranMs > 0 ? BENCH.goOn : isRest ? BENCH.restStart : BENCH.oilStart}
          </button>
        )}
      </div>
    </div>
  );
}

const ROOM_F = 70;
const END_F = 150;

/** The setting between the room and what ruins a ball. */
function Degrees({ setF, limitF }: { readonly setF: number; readonly limitF: number }) {
  const at = (degrees: number) => `${(100 * (degrees - ROOM_F)) / (END_F - ROOM_F)}%`;
  return (
    <div className="oil-degrees" role="img" aria-label={BENCH.oilScale(setF, limitF)}>
      <span className="oil-set" style={{ width: at(setF) }}>
        {BENCH.oilSet(setF)}
      </span>
      {[WARN_ABOVE_F, Math.min(limitF, NEVER_ABOVE_F)].map((mark) => (
        <span key={mark} className="oil-mark" style={{ left: at(mark) }}>
          <span>{mark === WARN_ABOVE_F ? BENCH.oilCracks : BENCH.oilNever(mark)}</span>
        </span>
      ))}
    </div>
  );
}
