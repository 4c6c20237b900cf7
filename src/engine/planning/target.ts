import type { Assumed } from "../assumptions.ts";

/** The pocket as a window in board and entry angle: what a hit must be for the chance to count it. */
export interface Pocket {
  readonly middle: number;
  readonly straightHalf: number;
  readonly steepHalf: number;
}

/** The entry angle at which the published window is widest, deg. */
const STEEP_DEG = 6;

/**
 * The published 90 % zone: less than a board for a straight ball, boards 17.0–18.5 at 6°; a straight line between, no wider above.
 * It says where a hit is a *pocket hit*; which pins fall is the carry table's business. See docs/model/pocket.md.
 */
export function pocketOf(a: Assumed): Pocket {
  return { middle: a["pocket.middle"], straightHalf: a["pocket.straightWidth"] / 2, steepHalf: a["pocket.steepWidth"] / 2 };
}

/** Half the window's width at an entry angle, boards. */
export function pocketHalfWidth(pocket: Pocket, entryDeg: number): number {
  const steepness = Math.min(1, Math.max(0, entryDeg / STEEP_DEG));
  return pocket.straightHalf + (pocket.steepHalf - pocket.straightHalf) * steepness;
}

export function inPocket(pocket: Pocket, board: number, entryDeg: number): boolean {
  return Math.abs(board - pocket.middle) <= pocketHalfWidth(pocket, entryDeg);
}

/** Half the width over which {@link pocketShare} softens the window's edge, boards. */
const EDGE = 0.25;

/**
 * How much a sampled shot counts, 0–1: the window averaged over ±¼ board. The mean over a spread of a board or more hardly changes, but a few hundred
 * samples then give a curve smooth enough to find its top (docs/model/pocket.md has both errors).
 */
export function pocketShare(pocket: Pocket, board: number, entryDeg: number): number {
  const inside = (pocketHalfWidth(pocket, entryDeg) - Math.abs(board - pocket.middle)) / (2 * EDGE) + 0.5;
  return inside <= 0 ? 0 : Math.min(inside, 1);
}
