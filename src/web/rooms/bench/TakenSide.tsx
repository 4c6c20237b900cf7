import { useEffect } from "react";
import type { SignedEntry } from "#contract/records/ticketWork";
import { BENCH } from "#words/en/rooms/bench";
import { type BallState, held } from "../../benchWork/guide.ts";
import { usePeople } from "../../shop/usePeople.ts";
import { useShopTimes } from "../../shop/zone.ts";

interface TakenProps {
  readonly running: SignedEntry;
  readonly state: BallState;
  readonly nowMs: number;
  onChange(state: BallState): void;
  onTakeOver(): void;
}

/** Another device has begun this side. Nobody sands it twice unasked; a clock that ran here stands. */
export function TakenSide({ running, state, nowMs, onChange, onTakeOver }: TakenProps) {
  const times = useShopTimes();
  const name = usePeople().data?.find(({ id }) => id === running.personId)?.name ?? running.initials;
  useEffect(() => {
    if (state.runningSince !== null) onChange(held(state, nowMs));
  }, [state, nowMs, onChange]);
  const side = running.began?.side;
  return (
    <div className="bench-cautions" role="alert">
      <div>
        <strong>{BENCH.taken(name, side === undefined ? "–" : BENCH.up[side], times.at(running.at))}</strong>
        <p>{BENCH.takenWhy}</p>
      </div>
      <button type="button" className="button primary bench-button" onClick={onTakeOver}>
        {BENCH.takeOver}
      </button>
    </div>
  );
}
