import type { SignedEntry } from "#contract/records/ticketWork";
import type { Work } from "#engine/signed/work";
import type { SideId } from "#engine/surface/padWork/sides";

/** A signed step, and what of it stands. */
export interface StepDone {
  readonly entry: SignedEntry;
  readonly sides: readonly SideId[];
  /** Whether sides of it were opened again and nobody signed for them since. */
  readonly isOpen: boolean;
}

/** What stands of the work, each thing once. A side that is to be worked again is not said to be done; a step of which no side is left is not said at all. */
export function stepsDone({ stages, surface, signed }: Work<SignedEntry>): readonly StepDone[] {
  const standing = new Set([...stages.map(({ by }) => by), ...surface]);
  return signed
    .filter((entry) => standing.has(entry))
    .flatMap((entry) => {
      const again = stages.find(({ stage: { id } }) => id === entry.stageId)?.again ?? [];
      const sides = entry.sidesDone.filter((side) => !again.includes(side));
      const isOpen = sides.length < entry.sidesDone.length;
      return isOpen && sides.length === 0 ? [] : [{ entry, sides, isOpen }];
    });
}
