import type { StageDone } from "#contract/records/stageDone";
import type { Ticket } from "#contract/records/ticket";
import { assume } from "#engine/assumptions";
import { ABRASIVES, type Abrasive } from "#engine/surface/abrasives";
import { type PadStage, type SideWork, USUAL_PAD_WORK } from "#engine/surface/padWork/padStage";

/** The newest ticket on which pads were planned: its work is the surface that is being made, or was made last. */
export function newestWork(tickets: readonly Ticket[]): Ticket | null {
  const withPads = tickets.filter(({ stages }) => stages.some(({ sideIds }) => sideIds.length > 0));
  return withPads.toSorted((a, b) => b.receivedAt.localeCompare(a.receivedAt))[0] ?? null;
}

/**
 * The pad work of a ticket that has been signed, with the seconds that the clock counted on each side. Stages are signed in the order they were planned in.
 *
 * @param done oldest first
 */
export function signedPadWork({ stages }: Pick<Ticket, "stages">, done: readonly StageDone[]): readonly PadStage[] {
  return done.flatMap((signed, i) => {
    const planned = stages[i];
    const known: Abrasive | undefined =
      signed.abrasive === null ? undefined : (ABRASIVES as Readonly<Record<string, Abrasive>>)[planned?.abrasive ?? signed.abrasive];
    if (planned === undefined || known === undefined || known.grainUm <= 0) return [];
    const sides = planned.sideIds.flatMap((side, k): SideWork[] => {
      const seconds = signed.sideSeconds[k] ?? 0;
      return seconds > 0 ? [{ side, seconds, force: planned.force ?? "medium", held: null }] : [];
    });
    return sides.length === 0 ? [] : [padStage(known.grainUm, sides, isByHand(signed.way ?? planned.way) ? "hand" : "spinner")];
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
