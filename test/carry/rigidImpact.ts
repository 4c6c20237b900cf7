/** Velocities across (x, to the right) and along (y, away from the bowler) after an impact, m/s. */
export interface Impact {
  readonly ball: { readonly x: number; readonly y: number };
  readonly pin: { readonly x: number; readonly y: number };
}

interface Bodies {
  /** Sine of the angle between travel and line of centres. */
  readonly sine: number;
  readonly speed: number;
  readonly restitution: number;
  readonly friction: number;
  readonly ball: { readonly massKg: number; readonly radius: number; readonly inertia: number };
  /** `below`: how far the contact lies below the pin's centre of gravity. */
  readonly pin: {
    readonly massKg: number;
    readonly radius: number;
    readonly below: number;
    readonly axial: number;
    readonly transverse: number;
  };
}

type Vector = readonly [number, number, number];
const add = (a: Vector, b: Vector, by = 1): Vector => [a[0] + by * b[0], a[1] + by * b[1], a[2] + by * b[2]];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];

const STEPS = 20000;

/**
 * Rigid impact of a sliding ball with a free pin: the impulse is applied in small parts, friction always against the sliding of the moment, until the
 * normal velocity is −e times what it was. Independent of any engine; x right, y along the lane, z up.
 */
export function rigidImpact({ sine, speed, restitution, friction, ball, pin }: Bodies): Impact {
  // The ball is to the right by `sine`; the normal points from ball to pin.
  const normal: Vector = [-sine, Math.sqrt(1 - sine * sine), 0];
  const armBall: Vector = [normal[0] * ball.radius, normal[1] * ball.radius, 0];
  const armPin: Vector = [-normal[0] * pin.radius, -normal[1] * pin.radius, -pin.below];
  let [vBall, vPin, wBall, wPin]: [Vector, Vector, Vector, Vector] = [
    [0, speed, 0],
    [0, 0, 0],
    [0, 0, 0],
    [0, 0, 0],
  ];
  const relative = (): Vector => add(add(vBall, cross(wBall, armBall)), add(vPin, cross(wPin, armPin)), -1);
  const closing = dot(relative(), normal);
  // Far more than the impact can need, in small parts.
  const part = (2 * ball.massKg * speed) / STEPS;
  for (let step = 0; step < STEPS && dot(relative(), normal) > -restitution * closing; step++) {
    const sliding = add(relative(), normal, -dot(relative(), normal));
    const along = Math.sqrt(dot(sliding, sliding));
    const rub = along > 1e-6 ? (friction * part) / along : 0;
    const push = add([normal[0] * part, normal[1] * part, 0], sliding, rub);
    vBall = add(vBall, push, -1 / ball.massKg);
    wBall = add(wBall, cross(armBall, push), -1 / ball.inertia);
    vPin = add(vPin, push, 1 / pin.massKg);
    const twist = cross(armPin, push);
    wPin = [wPin[0] + twist[0] / pin.transverse, wPin[1] + twist[1] / pin.transverse, wPin[2] + twist[2] / pin.axial];
  }
  return { ball: { x: vBall[0], y: vBall[1] }, pin: { x: vPin[0], y: vPin[1] } };
}
