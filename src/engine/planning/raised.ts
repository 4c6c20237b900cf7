import type { GridAxis } from "../pins/carryGrid.ts";

/** So many steps of the fine grid between two nodes that are thrown. */
export const FINE_A_NODE_ACROSS = 4;
export const FINE_A_NODE_ROUND = 3;

/** Lines that are thrown: rows are laydowns, boards; columns launch angles, degrees. */
export interface NodeGrid {
  readonly laydown: GridAxis;
  readonly launch: GridAxis;
}

/** Deliveries that are told at each place. */
export const TOLD_DELIVERIES = 8;
/** Where each kind of number begins at a place, a number a delivery: board at the pins, entry angle, breakpoint's board, and by how much speed and slip left move the log odds of a strike. */
export const TOLD = { board: 0, entry: 8, breakpoint: 16, shift: 24 } as const;
export const TOLD_NUMBERS = 32;

/** Where shots ended, {@link TOLD_NUMBERS} a place; `isThere` 0 where none was thrown or one of them does not get to the pins. */
export interface Outcomes {
  readonly isThere: Uint8Array;
  readonly told: Float64Array;
}

const rooms = new Map<string, Outcomes>();

/** Room for outcomes, empty: the same again for the same purpose, since a plan makes a thousand maps one after the other. */
export function roomFor(purpose: "nodes" | "along" | "line", places: number): Outcomes {
  const last = rooms.get(purpose);
  const room = last?.isThere.length === places ? last : { isThere: new Uint8Array(places), told: new Float64Array(TOLD_NUMBERS * places) };
  rooms.set(purpose, room);
  room.isThere.fill(0);
  return room;
}

export function finer({ from, step, count }: GridAxis, by: number): GridAxis {
  return { from, step: step / by, count: (count - 1) * by + 1 };
}

/** From nodes to the fine grid along the launch angle: rows stay those of the nodes. */
export function raiseAlong(thrown: Outcomes, { laydown, launch }: NodeGrid, along: Outcomes): void {
  const fine = finer(launch, FINE_A_NODE_ROUND).count;
  for (let row = 0; row < laydown.count; row++) {
    for (let node = 0; node < launch.count; node++) {
      const here = row * launch.count + node;
      for (let step = 0; step < FINE_A_NODE_ROUND; step++) {
        raise(thrown, here, 1, node, launch.count, step / FINE_A_NODE_ROUND, along, row * fine + node * FINE_A_NODE_ROUND + step);
      }
    }
  }
}

/** The rest of the way, across: one row of the fine grid, `step` of them past a row of nodes. */
export function raiseAcross(along: Outcomes, { laydown, launch }: NodeGrid, row: number, step: number, line: Outcomes): void {
  const fine = finer(launch, FINE_A_NODE_ROUND).count;
  line.isThere.fill(0);
  for (let column = 0; column < fine; column++) {
    raise(along, row * fine + column, fine, row, laydown.count, step / FINE_A_NODE_ACROSS, line, column);
  }
}

/**
 * One place between the node `here` and the next, `stride` places on, of `count` in their line: boards by cubics through thrown nodes only, the rest by
 * straight lines; nothing beside a node that is missing.
 */
function raise(
  { isThere, told }: Outcomes,
  here: number,
  stride: number,
  node: number,
  count: number,
  share: number,
  into: Outcomes,
  place: number,
): void {
  if (isThere[here] === 0) return;
  const next = here + stride;
  if (share > 0 && (node + 1 === count || isThere[next] === 0)) return;
  into.isThere[place] = 1;
  const from = TOLD_NUMBERS * here;
  const at = TOLD_NUMBERS * place;
  const raised = into.told;
  if (share === 0) {
    for (let n = 0; n < TOLD_NUMBERS; n++) raised[at + n] = told[from + n];
    return;
  }
  const to = TOLD_NUMBERS * next;
  const hasBefore = node > 0 && isThere[here - stride] === 1;
  const hasAfter = node + 2 < count && isThere[next + stride] === 1;
  const far = TOLD_NUMBERS * stride;
  for (let n = 0; n < TOLD_DELIVERIES; n++) {
    // Catmull and Rom's cubic (1974): through both nodes, with the slopes of their neighbours.
    const a = told[from + n];
    const b = told[to + n];
    const before = hasBefore ? told[from + n - far] : 2 * a - b;
    const after = hasAfter ? told[to + n + far] : 2 * b - a;
    const squared = 2 * before - 5 * a + 4 * b - after;
    const cubed = 3 * (a - b) + after - before;
    raised[at + n] = a + 0.5 * share * (b - before + share * (squared + share * cubed));
  }
  for (let n = TOLD_DELIVERIES; n < TOLD_NUMBERS; n++) raised[at + n] = told[from + n] + (told[to + n] - told[from + n]) * share;
}
