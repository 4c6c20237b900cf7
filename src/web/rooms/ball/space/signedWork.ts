import type { StageDone } from "#contract/records/stageDone";
import type { Ticket } from "#contract/records/ticket";
import { assume } from "#engine/assumptions";
import { knownAbrasive } from "#engine/surface/abrasives";
import { type PadStage, type SideWork, USUAL_PAD_WORK } from "#engine/surface/padWork/padStage";

/** The newest ticket on which pads were planned: its work is the surface that is being made, or was made last. */
export function newestWork(tickets: readonly Ticket[]): Ticket | null {
  const withPads = tickets.filter(({ stages }) => stages.some(({ sideIds }) => sideIds.length > 0));
  return withPads.toSorted((a, b) => b.receivedAt.localeCompare(a.receivedAt))[0] ?? null;
}

/**
 * The pad work of a ticket that stands, with what was really used and the seconds that the clock counted on each side: told side by side, or with the whole
 * stage. Of before stages had ids they are signed in the order they were planned in.
 *
 * @param done oldest first
 */
export function signedPadWork({ stages }: Pick<Ticket, "stages">, done: readonly StageDone[]): readonly PadStage[] {
  const gone = new Set(done.flatMap(({ takesBack }) => takesBack ?? []));
  const standing = done.filter(({ id, takesBack }) => takesBack === null && !gone.has(id));
  const older = standing.filter(({ stageId }) => stageId === null);
  return standing.flatMap((entry) => {
    const planned = entry.stageId === null ? stages[older.indexOf(entry)] : stages.find(({ id }) => id === entry.stageId);
    const abrasive = knownAbrasive(entry.abrasive) ?? (entry.abrasive === null ? null : knownAbrasive(planned?.abrasive ?? null));
    if (abrasive === null || abrasive.grainUm <= 0) return [];
    const ids = entry.sidesDone.length === entry.sideSeconds.length ? entry.sidesDone : (planned?.sideIds ?? []);
    const sides = ids.flatMap((side, k): SideWork[] => {
      const seconds = entry.sideSeconds[k] ?? 0;
      return seconds > 0 ? [{ side, seconds, force: planned?.force ?? "medium", held: null }] : [];
    });
    return sides.length === 0 ? [] : [padStage(abrasive.grainUm, sides, isByHand(entry.way ?? planned?.way ?? null) ? "hand" : "spinner")];
  });
}

function isByHand(way: string | null): boolean {
  return way?.startsWith("hand") ?? false;
}

function padStage(grainUm: number, sides: readonly SideWork[], by: PadStage["by"]): PadStage {
  const a = assume();
  const { padDiameterIn, sweepDeg, strokeDeg, patchDeg } = USUAL_PAD_WORK;
  const shared = { grainUm, padDiameterIn, sides };
  return by === "hand"
    ? { ...shared, by, strokeSpeed: a["cut.handSpeed"], strokeDeg, patchDeg }
    : { ...shared, by, spinnerRpm: a["cut.spinnerRpm"], sweepDeg };
}
