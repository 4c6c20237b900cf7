import type { GridAxis } from "../pins/carryGrid.ts";

/** So many steps of the fine grid between two nodes that are thrown. */
export const FINE_A_NODE_ACROSS = 4;
export const FINE_A_NODE_ROUND = 3;

/** Lines that are thrown: rows are laydowns, boards; columns launch angles, degrees. */
export interface NodeGrid {
  readonly laydown: GridAxis;
  readonly launch: GridAxis;
}

/** Where shots ended, {@link OUTCOME} numbers a place; `isThere` 0 where none was thrown or its ball does not get to the pins. */
export interface Outcomes {
  readonly isThere: Uint8Array;
  /** Board at the pins, entry angle, breakpoint's board, and by how much speed and slip left move the log odds of a strike. */
  readonly told: Float64Array;
}
export const OUTCOME = 4;

export function noOutcomes(places: number): Outcomes {
  return { isThere: new Uint8Array(places), told: new Float64Array(OUTCOME * places) };
}

/** A place of the fine grid with what a shot of one delivery comes to there. */
export type AtPlace = (at: number, board: number, entry: number, breakpoint: number, shift: number) => void;

export function finer({ from, step, count }: GridAxis, by: number): GridAxis {
  return { from, step: step / by, count: (count - 1) * by + 1 };
}

/** Room for what {@link raiseAlong} makes. */
export function noneAlong({ laydown, launch }: NodeGrid): Outcomes {
  return noOutcomes(laydown.count * finer(launch, FINE_A_NODE_ROUND).count);
}

/** From nodes to the fine grid along the launch angle: rows stay those of the nodes. */
export function raiseAlong(thrown: Outcomes, { laydown, launch }: NodeGrid, along: Outcomes): void {
  const fine = finer(launch, FINE_A_NODE_ROUND).count;
  along.isThere.fill(0);
  for (let row = 0; row < laydown.count; row++) {
    const put: AtPlace = (place, board, entry, breakpoint, shift) => {
      const at = row * fine + place;
      along.isThere[at] = 1;
      along.told[OUTCOME * at] = board;
      along.told[OUTCOME * at + 1] = entry;
      along.told[OUTCOME * at + 2] = breakpoint;
      along.told[OUTCOME * at + 3] = shift;
    };
    raiseLine(thrown, row * launch.count, 1, launch.count, FINE_A_NODE_ROUND, 0, 1, put);
  }
}

/** The rest of the way, across. */
export function raiseAcross(along: Outcomes, { laydown, launch }: NodeGrid, each: AtPlace): void {
  const fine = finer(launch, FINE_A_NODE_ROUND).count;
  for (let column = 0; column < fine; column++) raiseLine(along, column, fine, laydown.count, FINE_A_NODE_ACROSS, column, fine, each);
}

/**
 * A line of nodes, `stride` apart, raised to `by` steps between two: boards by cubics through thrown nodes only, the rest by straight lines; nothing beside
 * a node that is missing. Places begin at `place` and lie `apart`.
 */
function raiseLine(
  { isThere, told }: Outcomes,
  first: number,
  stride: number,
  count: number,
  by: number,
  place: number,
  apart: number,
  each: AtPlace,
): void {
  for (let node = 0; node < count; node++) {
    const here = first + node * stride;
    if (isThere[here] === 0) continue;
    const at = OUTCOME * here;
    const a = told[at];
    each(place + node * by * apart, a, told[at + 1], told[at + 2], told[at + 3]);
    const next = here + stride;
    if (node + 1 === count || isThere[next] === 0) continue;
    const to = OUTCOME * next;
    const b = told[to];
    // Catmull and Rom's cubic (1974): through both nodes, with the slopes of their neighbours.
    const before = node > 0 && isThere[here - stride] === 1 ? told[at - OUTCOME * stride] : 2 * a - b;
    const after = node + 2 < count && isThere[next + stride] === 1 ? told[to + OUTCOME * stride] : 2 * b - a;
    const squared = 2 * before - 5 * a + 4 * b - after;
    const cubed = 3 * (a - b) + after - before;
    for (let step = 1; step < by; step++) {
      const share = step / by;
      each(
        place + (node * by + step) * apart,
        a + 0.5 * share * (b - before + share * (squared + share * cubed)),
        told[at + 1] + (told[to + 1] - told[at + 1]) * share,
        told[at + 2] + (told[to + 2] - told[at + 2]) * share,
        told[at + 3] + (told[to + 3] - told[at + 3]) * share,
      );
    }
  }
}
