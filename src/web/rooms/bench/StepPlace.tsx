import type { SignedEntry } from "#contract/records/ticketWork";
import type { Work } from "#engine/signed/work";
import { BENCH } from "#words/en/rooms/bench";
import type { OnTheBench } from "../../benchWork/onTheBench.ts";

interface PlaceProps {
  readonly here: OnTheBench;
  readonly work: Work<SignedEntry>;
  readonly at: number;
  readonly of: number;
  /** Null: nothing was done before this. */
  readonly onBack: (() => void) | null;
  onShowCautions(): void;
}

/** The way back, which ball and which step, how far this ball is, and the way to the cautions once more. */
export function StepPlace({ here: { ticket, ball }, work, at, of, onBack, onShowCautions }: PlaceProps) {
  return (
    <>
      <div className="bench-place">
        <button type="button" className="button" disabled={onBack === null} onClick={onBack ?? undefined}>
          <span aria-hidden="true">‹</span> {BENCH.back}
        </button>
        <p>
          <strong>{ball.name}</strong>{" "}
          {ball.serial !== null && (
            <span className="bench-serial">
              <span>· </span>
              {ball.serial}
            </span>
          )}{" "}
          <span className="bench-step-of">{BENCH.step(at, of)}</span>
        </p>
        <button type="button" className="bench-triangle" aria-label={BENCH.showCautions} onClick={onShowCautions}>
          △
        </button>
      </div>
      <div className="bench-bar" aria-hidden="true">
        {work.stages.map(({ stage, by, sidesLeft }, i) => {
          const sides = Math.max(1, stage.sideIds.length);
          const share = by !== null ? 1 : stage.sideIds.length === 0 ? 0 : 1 - sidesLeft.length / sides;
          const weight = Math.max(60, sides * (ticket.stages[i].secondsPerSide ?? 0));
          return (
            <span key={stage.id} style={{ flexGrow: weight }}>
              <i style={{ width: `${100 * share}%` }} />
            </span>
          );
        })}
      </div>
    </>
  );
}
