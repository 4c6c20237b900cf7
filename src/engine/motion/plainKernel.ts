import { CELL_X, CELL_Y, COLUMNS, FIRST_X, ROWS } from "../lane/filmMap.ts";
import { LEAST_OF_SLIP, SHORTEST, SLOWEST } from "./averaged.ts";
import { ROLL_SLIP } from "./phases.ts";
import { MOST_SHOTS, SHOT_NUMBERS, type ShotConstants, type ShotKernel } from "./shotKernel.ts";

const f = Math.fround;
const PER_X = f(1 / CELL_X);
const PER_Y = f(1 / CELL_Y);
const LEFT_EDGE = f(FIRST_X);
const LAST_COLUMN = f(COLUMNS - 1.0001);
const LAST_ROW = f(ROWS - 1.0001);
const SIXTH = f(1 / 6);
const HALF = f(0.5);
const USED_UP = f(LEAST_OF_SLIP);
const SHORT = f(SHORTEST);
const SLOW = f(SLOWEST);
const ROLLS = f(ROLL_SLIP ** 2);
/** Keeps a ball without spin from dividing by nothing, m²/s². */
const STILL = f(1e-6);
/** Nearer to the end than this is there, m. */
const THERE = f(1e-4);

/**
 * The kernel without vectors: the same operations on the same single-precision numbers in the same order, so that it gives the same bits. It is used where
 * the vector kernel cannot be loaded, and the vector kernel is tested against it.
 */
export function plainKernel(): ShotKernel {
  const grip = new Float32Array(COLUMNS * ROWS);
  const shots = new Float32Array(SHOT_NUMBERS * MOST_SHOTS);
  return {
    grip,
    shots,
    run(count, constants) {
      for (let shot = 0; shot < count; shot++) runOne(grip, shots, shot, constants);
    },
  };
}

function runOne(grip: Float32Array, shots: Float32Array, shot: number, all: ShotConstants): void {
  const k = f(all.slipGain);
  const epsilon2 = f(all.epsilon2);
  const resist = f(all.resistance);
  const until = f(all.until);
  const longest = f(all.longestStep);
  let x = shots[shot];
  let vx = shots[MOST_SHOTS + shot];
  let vy = shots[2 * MOST_SHOTS + shot];
  let ux = shots[3 * MOST_SHOTS + shot];
  let uy = shots[4 * MOST_SHOTS + shot];
  let y = f(0);
  let breakX = x;
  let slip2 = f(f(ux * ux) + f(uy * uy));
  while (slip2 > ROLLS && vy > SLOW && f(until - y) > THERE) {
    const rx = f(vx - ux);
    const ry = f(vy - uy);
    // One division for both 1/(slip · v_y), which pulls, and 1/v_y.
    let slip = f(Math.sqrt(f(slip2 + epsilon2)));
    let both = f(1 / f(slip * vy));
    let inverse = f(slip * both);
    // Rolling resistance hardly changes within a step: once a step is enough.
    const drag = f(f(resist / f(Math.sqrt(f(f(f(rx * rx) + f(ry * ry)) + STILL)))) * inverse);

    let pull = f(gripAt(grip, x, y) * both);
    const ax = f(vx * inverse);
    const avx = -f(pull * ux);
    const avy = -f(pull * uy);
    const aux = f(f(k * avx) + f(drag * rx));
    const auy = f(f(k * avy) + f(drag * ry));
    let step = f(USED_UP / f(k * pull));
    if (step < SHORT) step = SHORT;
    if (step > longest) step = longest;
    if (step > f(until - y)) step = f(until - y);
    const half = f(step * HALF);

    let pvx = f(vx + f(half * avx));
    let pvy = f(vy + f(half * avy));
    let pux = f(ux + f(half * aux));
    let puy = f(uy + f(half * auy));
    slip = slipOf(pux, puy, epsilon2);
    both = f(1 / f(slip * pvy));
    inverse = f(slip * both);
    pull = f(gripAt(grip, f(x + f(half * ax)), f(y + half)) * both);
    const bx = f(pvx * inverse);
    const bvx = -f(pull * pux);
    const bvy = -f(pull * puy);
    const bux = f(f(k * bvx) + f(drag * f(pvx - pux)));
    const buy = f(f(k * bvy) + f(drag * f(pvy - puy)));

    pvx = f(vx + f(half * bvx));
    pvy = f(vy + f(half * bvy));
    pux = f(ux + f(half * bux));
    puy = f(uy + f(half * buy));
    slip = slipOf(pux, puy, epsilon2);
    both = f(1 / f(slip * pvy));
    inverse = f(slip * both);
    pull = f(gripAt(grip, f(x + f(half * bx)), f(y + half)) * both);
    const cx = f(pvx * inverse);
    const cvx = -f(pull * pux);
    const cvy = -f(pull * puy);
    const cux = f(f(k * cvx) + f(drag * f(pvx - pux)));
    const cuy = f(f(k * cvy) + f(drag * f(pvy - puy)));

    pvx = f(vx + f(step * cvx));
    pvy = f(vy + f(step * cvy));
    pux = f(ux + f(step * cux));
    puy = f(uy + f(step * cuy));
    slip = slipOf(pux, puy, epsilon2);
    both = f(1 / f(slip * pvy));
    inverse = f(slip * both);
    pull = f(gripAt(grip, f(x + f(step * cx)), f(y + step)) * both);
    const dvx = -f(pull * pux);
    const dvy = -f(pull * puy);
    const dux = f(f(k * dvx) + f(drag * f(pvx - pux)));
    const duy = f(f(k * dvy) + f(drag * f(pvy - puy)));

    const sixth = f(step * SIXTH);
    x = moved(x, sixth, ax, bx, cx, f(pvx * inverse));
    vx = moved(vx, sixth, avx, bvx, cvx, dvx);
    vy = moved(vy, sixth, avy, bvy, cvy, dvy);
    ux = moved(ux, sixth, aux, bux, cux, dux);
    uy = moved(uy, sixth, auy, buy, cuy, duy);
    y = f(y + step);
    if (x > breakX) breakX = x;
    slip2 = f(f(ux * ux) + f(uy * uy));
  }
  const isRolling = slip2 <= ROLLS && vy > SLOW;
  let reached = f(until - y) <= THERE ? 1 : 0;
  if (isRolling) {
    // The rest of the slip goes as it always goes, whatever the friction: v + κ·(surface speed) is kept. Then a straight line.
    const rvx = f(vx - f(ux / k));
    const rvy = f(vy - f(uy / k));
    const heading2 = f(f(rvx * rvx) + f(rvy * rvy));
    const heading = f(Math.sqrt(heading2));
    const path = f(f(f(until - y) * heading) / rvy);
    const pace2 = f(heading2 - f(f(all.slowing) * path));
    if (pace2 > 0) {
      const slower = f(f(Math.sqrt(pace2)) / heading);
      x = f(x + f(f(rvx / heading) * path));
      if (x > breakX) breakX = x;
      vx = f(rvx * slower);
      vy = f(rvy * slower);
      ux = f(0);
      uy = f(0);
      reached = 1;
    }
  }
  shots[shot] = x;
  shots[MOST_SHOTS + shot] = vx;
  shots[2 * MOST_SHOTS + shot] = vy;
  shots[3 * MOST_SHOTS + shot] = ux;
  shots[4 * MOST_SHOTS + shot] = uy;
  shots[5 * MOST_SHOTS + shot] = breakX;
  shots[6 * MOST_SHOTS + shot] = reached;
}

function moved(from: number, sixth: number, a: number, b: number, c: number, d: number): number {
  return f(from + f(sixth * f(f(a + d) + f(2 * f(b + c)))));
}

/** √(u² + ε²). */
function slipOf(ux: number, uy: number, epsilon2: number): number {
  return f(Math.sqrt(f(f(f(ux * ux) + f(uy * uy)) + epsilon2)));
}

/** Grip at a place by straight lines between the cells of the film map; beyond it the nearest. */
function gripAt(grip: Float32Array, x: number, y: number): number {
  let across = f(f(x - LEFT_EDGE) * PER_X);
  if (across < 0) across = f(0);
  else if (across > LAST_COLUMN) across = LAST_COLUMN;
  let along = f(y * PER_Y);
  if (along > LAST_ROW) along = LAST_ROW;
  const column = across | 0;
  const row = along | 0;
  const right = f(across - column);
  const at = row * COLUMNS + column;
  const near = f(grip[at] + f(f(grip[at + 1] - grip[at]) * right));
  const far = f(grip[at + COLUMNS] + f(f(grip[at + COLUMNS + 1] - grip[at + COLUMNS]) * right));
  return f(near + f(f(far - near) * f(along - row)));
}
