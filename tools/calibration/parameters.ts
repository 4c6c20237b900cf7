import type { Assumed } from "#engine/assumptions";

/**
 * What the search may move, and between which ends. The three reactive covers keep their order of dry friction and share one level: nothing published
 * tells them apart. Film reach is relative to the hybrid's; polyester stays as it is, no target speaks of it.
 */
export const FREE = [
  { id: "reactiveDry", low: 0.2, high: 0.245 },
  { id: "urethaneDry", low: 0.1, high: 0.18 },
  { id: "oil", low: 0.01, high: 0.02 },
  { id: "filmRatio", low: 0.45, high: 1 },
  { id: "reachUrethane", low: 0.9, high: 1.5 },
  { id: "reachSolid", low: 1, high: 1.3 },
  { id: "reachPearl", low: 0.7, high: 1 },
  { id: "carriedShare", low: 0.4, high: 1.2 },
] as const;

export type FreeId = (typeof FREE)[number]["id"];

/** Where the prototypes stood. */
export const START: Readonly<Record<FreeId, number>> = {
  reactiveDry: 0.225,
  urethaneDry: 0.165,
  oil: 0.015,
  filmRatio: 0.75,
  reachUrethane: 1.25,
  reachSolid: 1.15,
  reachPearl: 0.85,
  carriedShare: 0.8,
};

export function fromFree(free: Readonly<Record<FreeId, number>>): Partial<Assumed> {
  return {
    "friction.dry.solid": round(free.reactiveDry + 0.005),
    "friction.dry.hybrid": round(free.reactiveDry),
    "friction.dry.pearl": round(free.reactiveDry - 0.005),
    "friction.dry.urethane": free.urethaneDry,
    "friction.oil": free.oil,
    "friction.filmRatio": free.filmRatio,
    "filmReach.urethane": free.reachUrethane,
    "filmReach.solid": free.reachSolid,
    "filmReach.pearl": free.reachPearl,
    "carriedOil.share": free.carriedShare,
  };
}

function round(value: number): number {
  return Number(value.toPrecision(3));
}
