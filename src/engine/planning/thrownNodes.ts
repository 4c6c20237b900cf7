import { release } from "../delivery/release.ts";
import { boardToX, xToBoard } from "../lane/geometry.ts";
import { scoredShots, shotKernel } from "../motion/manyShots.ts";
import { MOST_SHOTS } from "../motion/shotKernel.ts";
import { qualityShift } from "../pins/carry.ts";
import type { HitQuality } from "../pins/carryGrid.ts";
import { DEGREE, MPH } from "../units.ts";
import type { Volley } from "./ground.ts";
import { type NodeGrid, noOutcomes, OUTCOME, type Outcomes } from "./raised.ts";
import { NOT_OFF, NOWHERE, type Off, offBy } from "./thrown.ts";

/** The scan that finds which nodes come near the pocket at all looks at every second launch angle. */
export const SCAN_EVERY = 2;
/** Only nodes between four looks of the scan whose boards come into this stretch are thrown: beyond it hardly a ball strikes. */
const NEAR_PINS = { from: 13.5, to: 21, margin: 0.5 } as const;

/** Which nodes to throw: those in or next to a field of the scan into whose range of boards the pocket's neighbourhood falls. The friction has been laid. */
export function nearThePins(volley: Volley, usual: HitQuality, { laydown, launch }: NodeGrid): Uint8Array {
  const columns = (launch.count - 1) / SCAN_EVERY + 1;
  const looks = { laydown, launch: { from: launch.from, step: SCAN_EVERY * launch.step, count: columns } };
  const looked = noOutcomes(laydown.count * columns);
  throwNodes(volley, usual, looks, null, NOT_OFF, looked);
  const { isThere, told } = looked;
  const board = Float64Array.from(isThere, (there, at) => (there === 1 ? told[OUTCOME * at] : NOWHERE));
  const wanted = new Uint8Array(laydown.count * launch.count);
  for (let i = 0; i + 1 < laydown.count; i++) {
    for (let j = 0; j + 1 < columns; j++) {
      const at = i * columns + j;
      const [a, b, c, d] = [board[at], board[at + 1], board[at + columns], board[at + columns + 1]];
      if (Math.max(a, b, c, d) < NEAR_PINS.from - NEAR_PINS.margin || Math.min(a, b, c, d) > NEAR_PINS.to + NEAR_PINS.margin) continue;
      for (let column = j * SCAN_EVERY; column <= (j + 1) * SCAN_EVERY; column++) {
        wanted[i * launch.count + column] = 1;
        wanted[(i + 1) * launch.count + column] = 1;
      }
    }
  }
  return wanted;
}

/** One delivery from the nodes that are wanted, or from all of them: on the friction that was laid into the kernel, as many at once as it takes. */
export function throwNodes(
  volley: Volley,
  usual: HitQuality,
  nodes: NodeGrid,
  wanted: Uint8Array | null,
  delivery: Off,
  outcomes: Outcomes,
): void {
  const { laydown, launch } = nodes;
  const { bowler, ball } = volley;
  const { shots } = shotKernel();
  outcomes.isThere.fill(0);
  const thrown = offBy(bowler, delivery);
  const places: number[] = [];
  for (let j = 0; j < launch.count; j++) {
    // The same launch from every laydown: only the place differs.
    const start = release(thrown, { laydownBoard: 0, launchAngleDeg: launch.from + j * launch.step });
    for (let i = 0; i < laydown.count; i++) {
      const at = i * launch.count + j;
      if (wanted !== null && wanted[at] === 0) continue;
      const shot = places.length;
      shots[shot] = boardToX(laydown.from + i * laydown.step);
      shots[MOST_SHOTS + shot] = start.vx;
      shots[2 * MOST_SHOTS + shot] = start.vy;
      shots[3 * MOST_SHOTS + shot] = start.vx - ball.radius * start.wy;
      shots[4 * MOST_SHOTS + shot] = start.vy + ball.radius * start.wx;
      if (places.push(at) === MOST_SHOTS) runAll(volley, usual, places, outcomes);
    }
  }
  runAll(volley, usual, places, outcomes);
}

/** Runs the shots that are waiting and tells where each ended. */
function runAll({ ball }: Volley, usual: HitQuality, places: number[], { isThere, told }: Outcomes): void {
  const kernel = shotKernel();
  const { shots } = kernel;
  kernel.run(places.length, scoredShots(ball));
  const quality = { ...usual };
  for (const [shot, at] of places.entries()) {
    if (shots[6 * MOST_SHOTS + shot] === 0) continue;
    const vx = shots[MOST_SHOTS + shot];
    const vy = shots[2 * MOST_SHOTS + shot];
    quality.speedMph = Math.sqrt(vx * vx + vy * vy) / MPH;
    quality.slipMps = Math.sqrt(shots[3 * MOST_SHOTS + shot] ** 2 + shots[4 * MOST_SHOTS + shot] ** 2);
    isThere[at] = 1;
    told[OUTCOME * at] = xToBoard(shots[shot]);
    told[OUTCOME * at + 1] = Math.atan2(-vx, vy) / DEGREE;
    told[OUTCOME * at + 2] = xToBoard(shots[5 * MOST_SHOTS + shot]);
    told[OUTCOME * at + 3] = qualityShift(usual, quality);
  }
  places.length = 0;
}
