import { refuse } from "../../fault.ts";
import { cross, dot, length, unit, type Vector } from "../../vector.ts";
import { axisOfAngles, type Camera, checkOnBall, onBall } from "./axis.ts";
import { type Measured, measuredFrom, type ReadOff } from "./measured.ts";

/**
 * A place on the ball, counted from the middle of the grip over the surface, in: over towards the positive axis point's usual side (a right-hander's right),
 * along the line square to the grip's centre line, then up, square to that line. The way every positive axis point is written (common practice).
 */
export interface OverUp {
  readonly overIn: number;
  readonly upIn: number;
}

/** A mark of known place, seen in one picture. */
export interface KnownMark extends OverUp {
  readonly right: number;
  readonly up: number;
}

/** Two marks nearer to each other than this cannot tell how the ball lies, share of the radius. */
const LEAST_APART = 0.3;

/**
 * The positive axis point: where the axis, known in the lane's frame, comes out of the ball, from two marks of known place seen in one picture.
 * How the ball lies follows from the two directions by the triad construction (Black 1964): the first mark exactly, the second for the turn about it.
 *
 * @param axis rotation and tilt in the lane's frame, deg, each with its error
 * @throws EngineFault where the marks lie off the ball or too near to each other
 */
export function papFromMarks(
  marks: readonly [KnownMark, KnownMark],
  axis: { readonly rotationDeg: ReadOff; readonly tiltDeg: ReadOff },
  camera: Camera,
  radiusIn: number,
): { overIn: Measured; upIn: Measured } {
  checkOnBall(marks);
  const [first, second] = marks;
  if (length(cross(placeOnBall(first, radiusIn), placeOnBall(second, radiusIn))) < LEAST_APART)
    refuse("known", "two marks close together", "two marks at least an inch and a half apart");
  const places: ReadOff[] = marks.flatMap(({ right, up }) => [right, up].map((value) => ({ value, within: camera.markWithin })));
  const known = triad(placeOnBall(first, radiusIn), placeOnBall(second, radiusIn));
  const papOf = ([right1, up1, right2, up2, rotationDeg, tiltDeg]: readonly number[]): OverUp => {
    const seen = triad(onBall({ right: right1, up: up1 }, camera), onBall({ right: right2, up: up2 }, camera));
    const [a, b, c] = seen.map((direction) => dot(direction, axisOfAngles(rotationDeg, tiltDeg)));
    const along = (i: 0 | 1 | 2) => a * known[0][i] + b * known[1][i] + c * known[2][i];
    return overUpOf([along(0), along(1), along(2)], radiusIn);
  };
  const readings = [...places, axis.rotationDeg, axis.tiltDeg];
  return { overIn: measuredFrom(readings, (values) => papOf(values).overIn), upIn: measuredFrom(readings, (values) => papOf(values).upIn) };
}

/** Direction of a place from the ball's middle in the ball's own frame: over, up, out at the grip's middle (right-handed, as the lane's is). */
export function placeOnBall({ overIn, upIn }: OverUp, radiusIn: number): Vector {
  const [over, up] = [overIn / radiusIn, upIn / radiusIn];
  return [Math.cos(up) * Math.sin(over), Math.sin(up), Math.cos(up) * Math.cos(over)];
}

export function overUpOf([over, up, out]: Vector, radiusIn: number): OverUp {
  return { overIn: Math.atan2(over, out) * radiusIn, upIn: Math.asin(Math.max(-1, Math.min(1, up))) * radiusIn };
}

function triad(first: Vector, second: Vector): readonly [Vector, Vector, Vector] {
  const square = unit(cross(first, second));
  return [first, square, cross(first, square)];
}
