import { benchBallNow } from "#contract/records/benchBall";
import type { SignedEntry } from "#contract/records/ticketWork";
import type { Work } from "#engine/signed/work";
import { BENCH } from "#words/en/rooms/bench";
import type { PlannedStage } from "../../benchWork/guide.ts";
import type { OnTheBench } from "../../benchWork/onTheBench.ts";
import { abrasiveName, plannedStages, stageName } from "../../benchWork/plannedStages.ts";
import { WordField } from "../../pieces/PlainFields.tsx";
import { useChangeTicket } from "../../shop/useTicket.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { usable } from "./used.ts";

interface OtherProps {
  readonly planned: PlannedStage;
  readonly stage: PlannedStage;
  onUsed(abrasive: string): void;
}

/** Another pad than planned, said before it touches the ball: its own cautions come first. */
export function OtherPad({ planned, stage, onUsed }: OtherProps) {
  if (planned.abrasive === null) return null;
  return (
    <details className="bench-other" open={stage.abrasive !== planned.abrasive || undefined}>
      <summary>{BENCH.otherPad}</summary>
      <WordField label={BENCH.used} value={stage.abrasive ?? ""} words={usable(planned)} onChange={onUsed} />
    </details>
  );
}

interface InsteadProps {
  readonly here: OnTheBench;
  readonly used: SignedEntry;
  readonly planned: PlannedStage;
  readonly work: Work<SignedEntry>;
}

/** What was used in the place of this stage does not do what it would: it is still to be done, or the work is planned anew from what lies on the ball. */
export function Instead({ here: { ticket, ball }, used, planned, work }: InsteadProps) {
  const change = useChangeTicket(ticket);
  const anew = ticket.finishAfter === null ? null : plannedStages(benchBallNow(ticket, ball, work), ticket.finishAfter);
  const isOther = anew !== null && pathOf(anew) !== pathOf(ticket.stages);
  const toDo = abrasiveName(planned.abrasive) ?? stageName(planned);
  return (
    <div className="bench-instead" role="status">
      <p>{BENCH.instead(BENCH.tool(abrasiveName(used.abrasive) ?? "–", null), BENCH.tool(toDo, null))}</p>
      {isOther && (
        <button type="button" className="button" disabled={change.isPending} onClick={() => change.mutate({ stages: anew })}>
          {BENCH.planFromHere}
        </button>
      )}
      <WriteFault error={change.error} />
    </div>
  );
}

function pathOf(stages: readonly { readonly kind?: string | null | undefined; readonly abrasive?: string | null | undefined }[]): string {
  return stages.map(({ kind, abrasive }) => `${kind ?? ""} ${abrasive ?? ""}`).join();
}
