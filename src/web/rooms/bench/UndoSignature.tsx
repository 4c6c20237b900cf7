import type { SignedEntry } from "#contract/records/ticketWork";
import type { Work } from "#engine/signed/work";
import { BENCH } from "#words/en/rooms/bench";
import type { OnTheBench } from "../../benchWork/onTheBench.ts";
import { stageName } from "../../benchWork/plannedStages.ts";
import { useSign } from "../../benchWork/useSign.ts";

interface UndoProps {
  readonly here: OnTheBench;
  readonly work: Work<SignedEntry>;
  /** Whether the next step is begun: from then on a signature is taken back in the ticket, with a reason. */
  readonly isBegun: boolean;
}

/** A signature corrects the record, not the ball: the last one can be undone until the next step is begun. */
export function UndoSignature({ here, work, isBegun }: UndoProps) {
  const sign = useSign();
  const last = work.signed.at(-1) ?? null;
  if (last === null || isBegun) return null;
  return (
    <p className="bench-undo">
      {BENCH.wasSigned(stageName({ kind: last.kind, what: last.label }), last.initials)}{" "}
      <button type="button" className="link" onClick={() => sign.takeBack(here, last, BENCH.undone)}>
        {BENCH.undoSignature}
      </button>
    </p>
  );
}
