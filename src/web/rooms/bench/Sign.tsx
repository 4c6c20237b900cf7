import type { SideId } from "#engine/surface/padWork/sides";
import { BENCH } from "#words/en/rooms/bench";
import { TICKET } from "#words/en/rooms/ticket";
import { isTimed, type PlannedStage } from "../../benchWork/guide.ts";
import type { OnTheBench } from "../../benchWork/onTheBench.ts";
import { useSign } from "../../benchWork/useSign.ts";
import { WordField } from "../../pieces/PlainFields.tsx";
import { usable } from "./used.ts";

interface SignProps {
  readonly here: OnTheBench;
  readonly planned: PlannedStage;
  /** With what is really used. */
  readonly stage: PlannedStage;
  /** Sides that are worked once more; empty where all of it is worked. */
  readonly again: readonly SideId[];
  /** Of heat or rest: whether it has had its time; null where there is no such clock. */
  readonly clock: { readonly isOver: boolean; readonly secondsRun: number } | null;
  readonly isOnSight: boolean;
  readonly isHeldBack: boolean;
  readonly onAgain: (() => void) | null;
  onUsed(abrasive: string | null): void;
}

/** What was done is signed, with what was really used. */
export function Sign({ here, planned, stage, again, clock, isOnSight, isHeldBack, onAgain, onUsed }: SignProps) {
  const sign = useSign();
  const isEarly = clock !== null && !clock.isOver;
  const note = [isOnSight ? BENCH.scanSkipped : "", isEarly ? BENCH.withoutClock : ""].filter((part) => part !== "").join(" ");
  const initials = sign.initials ?? TICKET.initials;
  return (
    <div className="bench-sign">
      {isTimed(stage) && <p>{BENCH.cannotUndo}</p>}
      {isOnSight && <p className="note">{BENCH.scanSkipped}</p>}
      {planned.abrasive !== null && <WordField label={BENCH.used} value={stage.abrasive ?? ""} words={usable(planned)} onChange={onUsed} />}
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
          onClick={() => {
            if (again.length > 0) sign.sidesAgain(here, stage, again);
            else sign.stage(here, stage, { note, secondsRun: clock?.secondsRun ?? null });
            // Where it is to be done again, it begins with what was planned.
            onUsed(null);
          }}
        >
          {isEarly ? BENCH.signWithoutClock(initials) : BENCH.sign(initials)}
        </button>
      </div>
    </div>
  );
}
