/**
 * The vector kernel, in AssemblyScript: what src/engine/motion/plainKernel.ts does with one shot after another, with four side by side. The same operations on
 * the same single-precision numbers in the same order, so that both give the same bits. `npm run build:kernel` makes src/tasks/kernel/kernelBytes.ts of it.
 *
 * Lanes that have arrived go on being computed and are no longer taken over; what they look up is held inside the map.
 */
const COLUMNS = 81;
const ROWS = 245;
const MOST_SHOTS = 1024;

/** Where the two arrays of the interface lie in memory, bytes. */
const GRIP = 1024;
const SHOTS = 81920;
const NUMBER = MOST_SHOTS * 4;
const ROW = COLUMNS * 4;

export function gripAt(): i32 {
  return GRIP;
}

export function shotsAt(): i32 {
  return SHOTS;
}

// @ts-ignore: decorator
@inline function all(value: f32): v128 { return f32x4.splat(value); }
// @ts-ignore: decorator
@inline function add(a: v128, b: v128): v128 { return f32x4.add(a, b); }
// @ts-ignore: decorator
@inline function sub(a: v128, b: v128): v128 { return f32x4.sub(a, b); }
// @ts-ignore: decorator
@inline function mul(a: v128, b: v128): v128 { return f32x4.mul(a, b); }
// @ts-ignore: decorator
@inline function div(a: v128, b: v128): v128 { return f32x4.div(a, b); }
// @ts-ignore: decorator
@inline function neg(a: v128): v128 { return f32x4.neg(a); }
// @ts-ignore: decorator
@inline function sumOfSquares(a: v128, b: v128): v128 { return add(mul(a, a), mul(b, b)); }

/** A step of Runge and Kutta from its four slopes. */
// @ts-ignore: decorator
@inline function moved(from: v128, sixth: v128, a: v128, b: v128, c: v128, d: v128): v128 {
  return add(from, mul(sixth, add(add(a, d), mul(all(2), add(b, c)))));
}

/** Rows of the map, as a (fractional) number. */
// @ts-ignore: decorator
@inline function rowsAlong(y: v128, perY: v128): v128 {
  return f32x4.min(mul(y, perY), all(<f32>(ROWS - 1.0001)));
}

/** Grip by straight lines between the cells: two neighbours in a row are one load, so four shots are eight. */
// @ts-ignore: decorator
@inline function gripOn(x: v128, along: v128, leftEdge: v128, perX: v128): v128 {
  const across = f32x4.min(f32x4.max(mul(sub(x, leftEdge), perX), all(0)), all(<f32>(COLUMNS - 1.0001)));
  const column = i32x4.trunc_sat_f32x4_s(across);
  const row = i32x4.trunc_sat_f32x4_s(along);
  const right = sub(across, f32x4.convert_i32x4_s(column));
  const ahead = sub(along, f32x4.convert_i32x4_s(row));
  const at = i32x4.add(i32x4.shl(column, 2), i32x4.mul(row, i32x4.splat(ROW)));
  const a = i32x4.extract_lane(at, 0);
  const b = i32x4.extract_lane(at, 1);
  const c = i32x4.extract_lane(at, 2);
  const d = i32x4.extract_lane(at, 3);
  const nearAB = v128.load64_lane(b, v128.load64_zero(a, GRIP), 1, GRIP);
  const nearCD = v128.load64_lane(d, v128.load64_zero(c, GRIP), 1, GRIP);
  const farAB = v128.load64_lane(b, v128.load64_zero(a, GRIP + ROW), 1, GRIP + ROW);
  const farCD = v128.load64_lane(d, v128.load64_zero(c, GRIP + ROW), 1, GRIP + ROW);
  const nearLeft = v128.shuffle<f32>(nearAB, nearCD, 0, 2, 4, 6);
  const nearRight = v128.shuffle<f32>(nearAB, nearCD, 1, 3, 5, 7);
  const farLeft = v128.shuffle<f32>(farAB, farCD, 0, 2, 4, 6);
  const farRight = v128.shuffle<f32>(farAB, farCD, 1, 3, 5, 7);
  const near = add(nearLeft, mul(sub(nearRight, nearLeft), right));
  const far = add(farLeft, mul(sub(farRight, farLeft), right));
  return add(near, mul(sub(far, near), ahead));
}

/** Runs the first `count` shots, in place; a count that is no multiple of four runs what lies behind the last as well. */
export function run(
  count: i32, slipGain: f32, epsilonSquared: f32, resistance: f32, slowing: f32, end: f32, longestStep: f32,
  firstX: f32, columnsAMetre: f32, rowsAMetre: f32,
  leastOfSlip: f32, shortest: f32, slowestSpeed: f32, rollSlip2: f32,
): void {
  const k = all(slipGain);
  const epsilon2 = all(epsilonSquared);
  const until = all(end);
  const leftEdge = all(firstX);
  const perX = all(columnsAMetre);
  const perY = all(rowsAMetre);
  const slowest = all(slowestSpeed);
  const there = all(1e-4);
  for (let at = SHOTS, last = SHOTS + count * 4; at < last; at += 16) {
    let x = v128.load(at);
    let vx = v128.load(at, NUMBER);
    let vy = v128.load(at, 2 * NUMBER);
    let ux = v128.load(at, 3 * NUMBER);
    let uy = v128.load(at, 4 * NUMBER);
    let y = all(0);
    let breakX = x;
    let slip2 = sumOfSquares(ux, uy);
    let rolls = f32x4.le(slip2, all(rollSlip2));
    let goes = v128.andnot(f32x4.gt(vy, slowest), rolls);
    while (v128.any_true(goes)) {
      const rx = sub(vx, ux);
      const ry = sub(vy, uy);
      let slip = f32x4.sqrt(add(slip2, epsilon2));
      let both = div(all(1), mul(slip, vy));
      let inverse = mul(slip, both);
      const drag = mul(div(all(resistance), f32x4.sqrt(add(sumOfSquares(rx, ry), all(1e-6)))), inverse);

      let pull = mul(gripOn(x, rowsAlong(y, perY), leftEdge, perX), both);
      const ax = mul(vx, inverse);
      const avx = neg(mul(pull, ux));
      const avy = neg(mul(pull, uy));
      const aux = add(mul(k, avx), mul(drag, rx));
      const auy = add(mul(k, avy), mul(drag, ry));
      const usedUp = f32x4.max(div(all(leastOfSlip), mul(k, pull)), all(shortest));
      const step = f32x4.min(f32x4.min(all(longestStep), usedUp), sub(until, y));
      const half = mul(step, all(0.5));
      const middle = rowsAlong(add(y, half), perY);

      let pvx = add(vx, mul(half, avx));
      let pvy = add(vy, mul(half, avy));
      let pux = add(ux, mul(half, aux));
      let puy = add(uy, mul(half, auy));
      slip = f32x4.sqrt(add(sumOfSquares(pux, puy), epsilon2));
      both = div(all(1), mul(slip, pvy));
      inverse = mul(slip, both);
      pull = mul(gripOn(add(x, mul(half, ax)), middle, leftEdge, perX), both);
      const bx = mul(pvx, inverse);
      const bvx = neg(mul(pull, pux));
      const bvy = neg(mul(pull, puy));
      const bux = add(mul(k, bvx), mul(drag, sub(pvx, pux)));
      const buy = add(mul(k, bvy), mul(drag, sub(pvy, puy)));

      pvx = add(vx, mul(half, bvx));
      pvy = add(vy, mul(half, bvy));
      pux = add(ux, mul(half, bux));
      puy = add(uy, mul(half, buy));
      slip = f32x4.sqrt(add(sumOfSquares(pux, puy), epsilon2));
      both = div(all(1), mul(slip, pvy));
      inverse = mul(slip, both);
      pull = mul(gripOn(add(x, mul(half, bx)), middle, leftEdge, perX), both);
      const cx = mul(pvx, inverse);
      const cvx = neg(mul(pull, pux));
      const cvy = neg(mul(pull, puy));
      const cux = add(mul(k, cvx), mul(drag, sub(pvx, pux)));
      const cuy = add(mul(k, cvy), mul(drag, sub(pvy, puy)));

      pvx = add(vx, mul(step, cvx));
      pvy = add(vy, mul(step, cvy));
      pux = add(ux, mul(step, cux));
      puy = add(uy, mul(step, cuy));
      slip = f32x4.sqrt(add(sumOfSquares(pux, puy), epsilon2));
      both = div(all(1), mul(slip, pvy));
      inverse = mul(slip, both);
      const ends = add(y, step);
      pull = mul(gripOn(add(x, mul(step, cx)), rowsAlong(ends, perY), leftEdge, perX), both);
      const dvx = neg(mul(pull, pux));
      const dvy = neg(mul(pull, puy));
      const dux = add(mul(k, dvx), mul(drag, sub(pvx, pux)));
      const duy = add(mul(k, dvy), mul(drag, sub(pvy, puy)));

      const sixth = mul(step, all(<f32>(1.0 / 6.0)));
      x = v128.bitselect(moved(x, sixth, ax, bx, cx, mul(pvx, inverse)), x, goes);
      vx = v128.bitselect(moved(vx, sixth, avx, bvx, cvx, dvx), vx, goes);
      vy = v128.bitselect(moved(vy, sixth, avy, bvy, cvy, dvy), vy, goes);
      ux = v128.bitselect(moved(ux, sixth, aux, bux, cux, dux), ux, goes);
      uy = v128.bitselect(moved(uy, sixth, auy, buy, cuy, duy), uy, goes);
      y = v128.bitselect(ends, y, goes);
      breakX = f32x4.max(breakX, x);
      slip2 = sumOfSquares(ux, uy);
      rolls = f32x4.le(slip2, all(rollSlip2));
      goes = v128.and(v128.andnot(f32x4.gt(vy, slowest), rolls), f32x4.gt(sub(until, y), there));
    }
    // The rest of the slip goes as it always goes; then a straight line.
    const rvx = sub(vx, div(ux, k));
    const rvy = sub(vy, div(uy, k));
    const heading2 = sumOfSquares(rvx, rvy);
    const heading = f32x4.sqrt(heading2);
    const path = div(mul(sub(until, y), heading), rvy);
    const pace2 = sub(heading2, mul(all(slowing), path));
    const arrives = v128.and(v128.and(rolls, f32x4.gt(vy, slowest)), f32x4.gt(pace2, all(0)));
    const slower = div(f32x4.sqrt(pace2), heading);
    x = v128.bitselect(add(x, mul(div(rvx, heading), path)), x, arrives);
    const reached = v128.or(arrives, f32x4.le(sub(until, y), there));
    v128.store(at, x);
    v128.store(at, v128.bitselect(mul(rvx, slower), vx, arrives), NUMBER);
    v128.store(at, v128.bitselect(mul(rvy, slower), vy, arrives), 2 * NUMBER);
    v128.store(at, v128.bitselect(all(0), ux, arrives), 3 * NUMBER);
    v128.store(at, v128.bitselect(all(0), uy, arrives), 4 * NUMBER);
    v128.store(at, f32x4.max(breakX, x), 5 * NUMBER);
    v128.store(at, v128.and(reached, all(1)), 6 * NUMBER);
  }
}
