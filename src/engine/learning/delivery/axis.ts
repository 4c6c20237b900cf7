import type { Hand } from "../../delivery/bowler.ts";
import { refuse } from "../../fault.ts";
import { DEGREE, RPM } from "../../units.ts";
import { cross, dot, length, unit, type Vector } from "../../vector.ts";
import { type Measured, measuredFrom, type ReadOff } from "./measured.ts";

/** Where a mark on the ball is seen in a picture taken from behind, in shares of the ball's radius from the middle of its disc: right and up positive. */
export interface MarkSeen {
  readonly right: number;
  readonly up: number;
}

/** The same mark in a later picture. */
export interface MarkAt extends MarkSeen {
  /** Since the first picture. */
  readonly seconds: number;
}

/** How the pictures were taken. */
export interface Camera {
  /** How far it looks down from the horizontal, deg, 0 to 60. */
  readonly downDeg: number;
  /** Direction of the ball, outward positive, deg: axis rotation is counted from it, the camera looks straight down the lane. */
  readonly launchAngleDeg: number;
  readonly hand: Hand;
  /** How far a mark's place may be misread either way, share of the radius. */
  readonly markWithin: number;
}

/** Direction of the axis of rotation (along ω) in the lane's frame of a right-hander, and its angles. */
export interface AxisSeen {
  readonly axisRotationDeg: Measured;
  readonly axisTiltDeg: Measured;
  /** From the marks alone, where three pictures or more were taken. */
  readonly revRateRpm: Measured | null;
}

/** Marks nearer to each other than this cannot tell an axis, share of the radius. */
const LEAST_MOVE = 0.08;
/** A mark whose places enclose less than this does not tell a plane, square radii. */
const LEAST_AREA = 0.01;
/** Outermost place that is still read as on the ball. */
const RIM = 0.9999;

/**
 * The axis from one mark in two pictures or more.
 *
 * A mark turns on a circle about the axis. Three pictures fix its plane, and so the axis and the angle turned. Two leave one angle open: with the rev rate
 * known the angle turned between them is known and the circle with it, but for two solutions; the one whose axis lies nearer to a usual delivery's is taken.
 *
 * @param revs rev rate in rpm with its error; needed with two pictures, not used with more
 * @throws EngineFault where marks lie off the ball, hardly move, or two pictures come without a rev rate that fits them
 */
export function axisFromMarks(marks: readonly MarkAt[], camera: Camera, revs: Measured | null): AxisSeen {
  if (marks.length < 2) refuse("marks", marks.length, "the same mark in two pictures or more");
  checkOnBall(marks);
  const two = marks.length === 2;
  if (two && revs === null) refuse("marks", "two pictures", "three pictures, or two with a rev rate");
  const readings: ReadOff[] = marks.flatMap(({ right, up }) => [right, up].map((value) => ({ value, within: camera.markWithin })));
  if (two && revs !== null) readings.push({ value: revs.value, within: (revs.high - revs.low) / 2 });
  const seconds = marks.map((mark) => mark.seconds);
  const axisOf = (values: readonly number[]): Turning => {
    const points = seconds.map((_, i) => onBall({ right: values[2 * i], up: values[2 * i + 1] }, camera));
    return two ? turningOfTwo(points[0], points[1], values[4] * RPM * (seconds[1] - seconds[0])) : turningOfMany(points);
  };
  const span = seconds[seconds.length - 1] - seconds[0];
  if (span <= 0) refuse("marks", span, "pictures one after the other");
  return {
    axisRotationDeg: measuredFrom(readings, (values) => anglesOf(axisOf(values).axis, camera).rotationDeg),
    axisTiltDeg: measuredFrom(readings, (values) => anglesOf(axisOf(values).axis, camera).tiltDeg),
    revRateRpm: two ? null : measuredFrom(readings, (values) => axisOf(values).angle / span / RPM),
  };
}

/** @throws EngineFault for a mark that is not on the ball */
export function checkOnBall(marks: readonly MarkSeen[]): void {
  for (const { right, up } of marks) {
    const out = Math.hypot(right, up);
    if (!(out < 1)) refuse("marks", out, "less than 1 radius from the middle of the ball");
  }
}

/** Unit vector of a seen mark in the lane's frame (right, down the lane, up); a left-hander's picture is mirrored here. A place moved off the ball by its error is put on the rim. */
export function onBall({ right, up }: MarkSeen, { downDeg, hand }: Camera): Vector {
  const out = Math.hypot(right, up);
  const shrink = out > RIM ? RIM / out : 1;
  const across = (hand === "left" ? -right : right) * shrink;
  const high = up * shrink;
  const near = Math.sqrt(1 - across * across - high * high);
  const [sin, cos] = [Math.sin(downDeg * DEGREE), Math.cos(downDeg * DEGREE)];
  // Up in the picture leans down the lane, towards the camera leans up, by the camera's own angle.
  return [across, high * sin - near * cos, high * cos + near * sin];
}

interface Turning {
  readonly axis: Vector;
  /** Turned between the first picture and the last, rad. */
  readonly angle: number;
}

/** The plane of the circle is that of the polygon the mark runs through, by its area vector (Newell). */
function turningOfMany(points: readonly Vector[]): Turning {
  let area: Vector = [0, 0, 0];
  points.forEach((point, i) => {
    const turn = cross(point, points[(i + 1) % points.length]);
    area = [area[0] + turn[0] / 2, area[1] + turn[1] / 2, area[2] + turn[2] / 2];
  });
  if (length(area) < LEAST_AREA) refuse("marks", "nearly on one line", "a mark that is followed over a quarter of a turn or so");
  const axis = unit(area);
  let angle = 0;
  for (let i = 1; i < points.length; i++) angle += angleAbout(axis, points[i - 1], points[i]);
  return { axis, angle };
}

/** Angle from one point to the next about an axis, 0 to 2π: the ball turns one way only. */
function angleAbout(axis: Vector, from: Vector, to: Vector): number {
  const [a, b] = [offAxis(axis, from), offAxis(axis, to)];
  const turned = Math.atan2(dot(axis, cross(a, b)), dot(a, b));
  return turned < 0 ? turned + 2 * Math.PI : turned;
}

function offAxis(axis: Vector, point: Vector): Vector {
  const along = dot(axis, point);
  return [point[0] - along * axis[0], point[1] - along * axis[1], point[2] - along * axis[2]];
}

/** A usual right-hander's axis (rotation 45°, tilt 15°), to choose between two solutions. */
const USUAL_AXIS: Vector = axisOfAngles(45, 15);

/** With the angle turned known: chord c of a circle of radius ρ is 2ρ sin(θ/2), and the axis stands at cos⁻¹√(1 − ρ²) from the mark, in the plane between. */
function turningOfTwo(from: Vector, to: Vector, angle: number): Turning {
  const chord = length(minus(to, from));
  if (chord < LEAST_MOVE) refuse("marks", chord, `a mark that moves by ${LEAST_MOVE} of the radius or more`);
  const turned = angle % (2 * Math.PI);
  const radius = chord / 2 / Math.abs(Math.sin(turned / 2));
  if (!(radius <= 1.02)) refuse("marks", chord, "a mark that moves no further than the rev rate turns it");
  const along = Math.sqrt(Math.max(0, 1 - Math.min(1, radius) ** 2));
  const middle: Vector = [from[0] + to[0], from[1] + to[1], from[2] + to[2]];
  const towards = unit(middle);
  // Less than half a turn is anticlockwise about the side to which from × to points, more is about the other.
  const side = unit(turned <= Math.PI ? cross(from, to) : cross(to, from));
  const lean = Math.min(1, along / Math.max(1e-9, length(middle) / 2));
  const solutions = [lean, -lean].map((share): Vector => {
    const rest = Math.sqrt(1 - share * share);
    return unit([share * towards[0] + rest * side[0], share * towards[1] + rest * side[1], share * towards[2] + rest * side[2]]);
  });
  const axis = dot(solutions[0], USUAL_AXIS) >= dot(solutions[1], USUAL_AXIS) ? solutions[0] : solutions[1];
  return { axis, angle };
}

/** The axis of a delivery straight down the lane, see `delivery/release`. */
export function axisOfAngles(rotationDeg: number, tiltDeg: number): Vector {
  const [r, t] = [rotationDeg * DEGREE, tiltDeg * DEGREE];
  return [-Math.cos(r) * Math.cos(t), -Math.sin(r) * Math.cos(t), Math.sin(t)];
}

function anglesOf(axis: Vector, { launchAngleDeg }: Camera): { rotationDeg: number; tiltDeg: number } {
  const seen = Math.atan2(-axis[1], -axis[0]) / DEGREE;
  return { rotationDeg: wrapped(seen + launchAngleDeg), tiltDeg: Math.asin(Math.max(-1, Math.min(1, axis[2]))) / DEGREE };
}

function wrapped(deg: number): number {
  return ((((deg + 180) % 360) + 360) % 360) - 180;
}

function minus(a: Vector, b: Vector): Vector {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}
