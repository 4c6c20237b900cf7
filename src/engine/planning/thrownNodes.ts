import { release } from "../delivery/release.ts";
import { boardToX, xToBoard } from "../lane/geometry.ts";
import { scoredShots, shotKernel } from "../motion/manyShots.ts";
import { MOST_SHOTS } from "../motion/shotKernel.ts";
import { qualityShift } from "../pins/carry.ts";
import type { HitQuality } from "../pins/carryGrid.ts";
import { DEGREE, MPH } from "../units.ts";
import type { Volley } from "./ground.ts";
import { type NodeGrid, type Outcomes, roomFor, TOLD, TOLD_DELIVERIES, TOLD_NUMBERS } from "./raised.ts";
import { NOT_OFF, NOWHERE, type Off, offBy } from "./thrown.ts";

/** The scan that finds which nodes come near the pocket at all looks at every second launch angle. */
export const SCAN_EVERY = 2;
/** Only nodes between four looks of the scan whose boards come into this stretch are thrown: beyond it hardly a ball strikes. */
const NEAR_PINS = { from: 13.5, to: 21, margin: 0.5 } as const;

/** All signs of one standard deviation of speed, rev rate and rotation: the same means and variances as the bowler's own scatter. */
const DELIVERIES: readonly Off[] = [1, -1].flatMap((speed) =>
  [1, -1].flatMap((revs) => [1, -1].map((rotation): Off => [speed, revs, rotation])),
);

/** Throws all deliveries from the nodes near the pins, or from every node there is, on the friction that was laid into the kernel. */
export function throwNodes(volley: Volley, usual: HitQuality, nodes: NodeGrid, everywhere: boolean): Outcomes {
  const wanted = everywhere ? null : nearThePins(volley, nodes);
  const count = nodes.laydown.count * nodes.launch.count;
  const outcomes = roomFor("nodes", count);
  const { isThere, told } = outcomes;
  const { shots } = shotKernel();
  const quality = { ...usual };
  const reached = new Uint8Array(count);
  throwAll(volley, nodes, 1, wanted, DELIVERIES, (shot, node, delivery) => {
    const vx = shots[MOST_SHOTS + shot];
    const vy = shots[2 * MOST_SHOTS + shot];
    quality.speedMph = Math.sqrt(vx * vx + vy * vy) / MPH;
    quality.slipMps = Math.sqrt(shots[3 * MOST_SHOTS + shot] ** 2 + shots[4 * MOST_SHOTS + shot] ** 2);
    const at = TOLD_NUMBERS * node + delivery;
    if (++reached[node] === TOLD_DELIVERIES) isThere[node] = 1;
    told[at + TOLD.board] = xToBoard(shots[shot]);
    told[at + TOLD.entry] = Math.atan2(-vx, vy) / DEGREE;
    told[at + TOLD.breakpoint] = xToBoard(shots[5 * MOST_SHOTS + shot]);
    told[at + TOLD.shift] = qualityShift(usual, quality);
  });
  return outcomes;
}

/** Which nodes to throw: those in or next to a field of the scan into whose range of boards the pocket's neighbourhood falls. */
function nearThePins(volley: Volley, nodes: NodeGrid): Uint8Array {
  const { laydown, launch } = nodes;
  const { shots } = shotKernel();
  const board = new Float64Array(laydown.count * launch.count).fill(NOWHERE);
  throwAll(volley, nodes, SCAN_EVERY, null, [NOT_OFF], (shot, node) => {
    board[node] = xToBoard(shots[shot]);
  });
  const wanted = new Uint8Array(laydown.count * launch.count);
  for (let i = 0; i + 1 < laydown.count; i++) {
    for (let j = 0; j + SCAN_EVERY < launch.count; j += SCAN_EVERY) {
      const at = i * launch.count + j;
      const next = at + launch.count;
      const [a, b, c, d] = [board[at], board[at + SCAN_EVERY], board[next], board[next + SCAN_EVERY]];
      if (Math.max(a, b, c, d) < NEAR_PINS.from - NEAR_PINS.margin || Math.min(a, b, c, d) > NEAR_PINS.to + NEAR_PINS.margin) continue;
      wanted.fill(1, at, at + SCAN_EVERY + 1);
      wanted.fill(1, next, next + SCAN_EVERY + 1);
    }
  }
  return wanted;
}

/** A shot that has reached the pins, where it lies in the kernel, and which it was. */
type Arrived = (shot: number, node: number, delivery: number) => void;

/** Some deliveries from the wanted nodes (null: all) of every so many columns, as many at once as the kernel takes. */
function throwAll(
  { bowler, ball }: Volley,
  { laydown, launch }: NodeGrid,
  every: number,
  wanted: Uint8Array | null,
  deliveries: readonly Off[],
  arrived: Arrived,
): void {
  const kernel = shotKernel();
  const { shots } = kernel;
  const constants = scoredShots(ball);
  const waiting: number[] = [];
  const run = () => {
    kernel.run(waiting.length, constants);
    for (const [shot, which] of waiting.entries()) {
      if (shots[6 * MOST_SHOTS + shot] === 1) arrived(shot, Math.floor(which / deliveries.length), which % deliveries.length);
    }
    waiting.length = 0;
  };
  for (const [delivery, off] of deliveries.entries()) {
    const thrown = offBy(bowler, off);
    for (let j = 0; j < launch.count; j += every) {
      // The same launch from every laydown: only the place differs.
      const start = release(thrown, { laydownBoard: 0, launchAngleDeg: launch.from + j * launch.step });
      for (let i = 0; i < laydown.count; i++) {
        const node = i * launch.count + j;
        if (wanted !== null && wanted[node] === 0) continue;
        const shot = waiting.length;
        shots[shot] = boardToX(laydown.from + i * laydown.step);
        shots[MOST_SHOTS + shot] = start.vx;
        shots[2 * MOST_SHOTS + shot] = start.vy;
        shots[3 * MOST_SHOTS + shot] = start.vx - ball.radius * start.wy;
        shots[4 * MOST_SHOTS + shot] = start.vy + ball.radius * start.wx;
        if (waiting.push(deliveries.length * node + delivery) === MOST_SHOTS) run();
      }
    }
  }
  run();
}
