import RAPIER from "@dimforge/rapier3d-simd-compat";
import { PIN_SPOTS_IN } from "#engine/pins/spots";
import { normalDeviate } from "#engine/random";
import { INCH, MPH, POUND } from "#engine/units";
import type { Coefficients } from "./coefficients.ts";
import { addBall, addPin, type BallState, emptyDeck, PIN_MASS, type Scene } from "./scene.ts";

/** One ball as it comes to the pins, for a right-hander: offset to the right, moving left. */
export interface Hit {
  /** Ball's centre right of the lane's middle in the pins' plane (59.5 ft), in. */
  readonly offsetIn: number;
  readonly entryDeg: number;
  readonly speedMph: number;
  /** Slip left in the contact, m/s, half forward, half to the right, as of a ball that is still hooking; 0 in full roll. */
  readonly slip: number;
  /** Spin about the vertical, rad/s, positive anticlockwise from above. */
  readonly verticalSpin: number;
  readonly massLb: number;
}

/** What came of it. */
export interface Outcome {
  /** Pins left standing, bit n − 1 for pin n; 0 is a strike. */
  readonly leave: number;
  /** Pins that the ball itself touched, in the same bits. */
  readonly touched: number;
}

const RADIUS = 4.275 * INCH;
const RADIUS_OF_GYRATION = 2.5 * INCH;
/** The pins' plane is half a foot before the head pin's spot; the run begins a little before it. */
const PLANE_IN = 6;
const RUN_UP_IN = 1;
/** Steps, s, and until when: short while ball and pins meet (1 ms there costs 5 strikes in 100), longer while pins fall, longest while they rock. */
export const STEPS: readonly (readonly [step: number, until: number])[] = [
  [0.0005, 0.12],
  [0.001, 0.6],
  [0.002, 6],
];
const LOOK_EVERY = 50;
/** Nothing has come to rest before this time, s. */
const LEAST = 0.8;
/** A standing pin that turns and slides slower than this (rad/s, m/s) stays; a fallen pin or the ball slower than this (m/s) knocks none over. */
const STILL_SPIN = 0.05;
const STILL_SPEED = 0.02;
const HARMLESS_SPEED = 0.15;
/** A pin tilted beyond this is down: it cannot stand beyond 10°. */
const DOWN_COSINE = Math.cos((15 * Math.PI) / 180);

/** An outcome, and how many steps of the engine it took. */
export interface Played extends Outcome {
  readonly steps: number;
}

/** One hit on ten pins. The numbers of `uniform` decide how the pins stand and what they weigh. */
export function hitPins(hit: Hit, coefficients: Coefficients, uniform: () => number): Played {
  const scene = emptyDeck(coefficients);
  try {
    const pins = rack(scene, uniform);
    const ball = addBall(scene, arriving(hit));
    const played = play(scene, ball, pins);
    return { leave: bitsOf(pins.map(isStanding)), ...played };
  } finally {
    scene.world.free();
  }
}

/** Ten pins about their spots, turned at random, one weight for the set. */
export function rack(scene: Scene, uniform: () => number): readonly RAPIER.RigidBody[] {
  const massKg = PIN_MASS.low + (PIN_MASS.high - PIN_MASS.low) * uniform();
  const scatter = () => normalDeviate(uniform()) * scene.coefficients.spotScatterIn;
  return PIN_SPOTS_IN.map(([x, y]) =>
    addPin(scene, { x: (x + scatter()) * INCH, z: -(y + scatter()) * INCH, turn: 2 * Math.PI * uniform(), tilt: 0, massKg }),
  );
}

export function arriving(hit: Hit): BallState {
  const angle = (hit.entryDeg * Math.PI) / 180;
  const speed = hit.speedMph * MPH;
  const [left, ahead] = [Math.sin(angle), Math.cos(angle)];
  const back = RUN_UP_IN / ahead;
  // Surface speed of the ball at the contact: its travel less the slip.
  const surface = { x: -left * speed - hit.slip * Math.SQRT1_2, z: -ahead * speed + hit.slip * Math.SQRT1_2 };
  return {
    x: (hit.offsetIn + back * left) * INCH,
    z: (PLANE_IN + RUN_UP_IN) * INCH,
    velocity: { x: -left * speed, z: -ahead * speed },
    spin: { x: surface.z / RADIUS, y: hit.verticalSpin, z: -surface.x / RADIUS },
    massKg: hit.massLb * POUND,
    radius: RADIUS,
    radiusOfGyration: RADIUS_OF_GYRATION,
  };
}

/** Runs until nothing can change the leave any more; returns the pins that the ball met, and the steps it took. */
function play({ world }: Scene, ball: RAPIER.RigidBody, pins: readonly RAPIER.RigidBody[]): Pick<Played, "touched" | "steps"> {
  const events = new RAPIER.EventQueue(true);
  const pinOfBody = new Map(pins.map((pin, i) => [pin.handle, i]));
  let touched = 0;
  const note = (handle: number): void => {
    const pin = pinOfBody.get(world.getCollider(handle)?.parent()?.handle ?? -1);
    if (pin !== undefined) touched |= 1 << pin;
  };
  let steps = 0;
  try {
    let time = 0;
    for (const [step, until] of STEPS) {
      world.timestep = step;
      while (time < until) {
        world.step(events);
        time += step;
        events.drainCollisionEvents((a, b) => {
          note(a);
          note(b);
        });
        if (++steps % LOOK_EVERY !== 0) continue;
        for (const body of [ball, ...pins]) if (body.isEnabled() && isGone(body)) body.setEnabled(false);
        if (time > LEAST && isOver(ball, pins)) return { touched, steps };
      }
    }
    return { touched, steps };
  } finally {
    events.free();
  }
}

/** In the pit: it cannot come back. */
function isGone(body: RAPIER.RigidBody): boolean {
  const { y, z } = body.translation();
  return y < -4.5 * INCH && z < -36 * INCH;
}

/** Nothing that happens now can change which pins stand. */
function isOver(ball: RAPIER.RigidBody, pins: readonly RAPIER.RigidBody[]): boolean {
  return isHarmless(ball) && pins.every((pin) => (isStanding(pin) ? isStill(pin) : isHarmless(pin)));
}

function isHarmless(body: RAPIER.RigidBody): boolean {
  const { x, y, z } = body.linvel();
  return !body.isEnabled() || Math.hypot(x, y, z) < HARMLESS_SPEED;
}

function isStill(pin: RAPIER.RigidBody): boolean {
  const v = pin.linvel();
  const w = pin.angvel();
  return Math.hypot(v.x, v.z) < STILL_SPEED && Math.hypot(w.x, w.z) < STILL_SPIN;
}

export function isStanding(pin: RAPIER.RigidBody): boolean {
  const { x, z } = pin.rotation();
  return pin.isEnabled() && 1 - 2 * (x * x + z * z) > DOWN_COSINE && pin.translation().y > -INCH;
}

function bitsOf(flags: readonly boolean[]): number {
  return flags.reduce((bits, flag, i) => (flag ? bits | (1 << i) : bits), 0);
}
