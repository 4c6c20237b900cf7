import RAPIER from "@dimforge/rapier3d-simd-compat";
import { INCH, POUND } from "#engine/units";
import type { Coefficients } from "./coefficients.ts";
import { pinSolid, pinSpheres } from "./pinShape.ts";

/**
 * The pin deck as rigid bodies. The engine's axes: x to the right, y up, z towards the bowler; the head pin's spot is the origin.
 * Pair coefficients are set exactly by products: every collider multiplies, and the ball has a deck of its own.
 */
export const GRAVITY = 9.80665;
/** Head pin to the edge of the pit; half the lane; half the distance of the side walls (published). */
const PIT_IN = 34.1875;
const HALF_LANE_IN = 20.75;
const HALF_WALLS_IN = 30.125;
/** Not published, and of little effect: gutter and pit depth, distance of the curtain behind the pins. */
const GUTTER_DEPTH_IN = 3.5;
const PIT_DEPTH_IN = 10;
const CURTAIN_IN = 62;
const BALL_DECK_FRICTION = 0.2;
const BALL_DECK_RESTITUTION = 0.1;
const CURTAIN_RESTITUTION = 0.1;

/** Membership in the high half, who is met in the low half. */
const group = (member: number, meets: number): number => (member << 16) | meets;
const PIN = 1;
const BALL = 2;
const DECK = 4;
const BALL_DECK = 8;
const WALL = 16;

/** Settings at which halving the step, more spheres or more iterations change nothing beyond sampling noise. */
const LENGTH_UNIT = 0.1;
const PREDICTION = 0.0005;
const SOLVER_ITERATIONS = 4;

const SOLID = pinSolid();
const SPHERES = pinSpheres();

/** Loads the engine; call once before anything else. */
export async function loadEngine(): Promise<void> {
  await RAPIER.init();
}

export function engineVersion(): string {
  return RAPIER.version();
}

export interface Scene {
  readonly world: RAPIER.World;
  readonly coefficients: Coefficients;
  /** What a collider must be set to so that its product with a pin's is the pair's coefficient. */
  readonly withPin: (friction: number, restitution: number) => { readonly friction: number; readonly restitution: number };
}

/** An empty deck with its gutters, side walls, pit and curtain. The caller frees the world. */
export function emptyDeck(coefficients: Coefficients): Scene {
  const world = new RAPIER.World({ x: 0, y: -GRAVITY, z: 0 });
  world.integrationParameters.lengthUnit = LENGTH_UNIT;
  world.integrationParameters.normalizedPredictionDistance = PREDICTION / LENGTH_UNIT;
  world.integrationParameters.numSolverIterations = SOLVER_ITERATIONS;
  const ownFriction = Math.sqrt(coefficients.pinPinFriction);
  const ownRestitution = Math.sqrt(coefficients.pinPinRestitution);
  const withPin = (friction: number, restitution: number) => ({
    friction: friction / ownFriction,
    restitution: restitution / ownRestitution,
  });
  const scene = { world, coefficients, withPin };
  const box = (low: readonly number[], high: readonly number[], material: Material, groups: number) =>
    addBox(world, low, high, material, groups);
  const deck = withPin(coefficients.pinDeckFriction, coefficients.pinDeckRestitution);
  const wall = withPin(coefficients.wallFriction, coefficients.wallRestitution);
  const curtain = withPin(coefficients.wallFriction, CURTAIN_RESTITUTION);
  const ofPins = group(DECK, PIN);
  box([-HALF_LANE_IN, -4, -PIT_IN], [HALF_LANE_IN, 0, 40], deck, ofPins);
  for (const side of [-1, 1]) {
    const [inner, outer] = [side * HALF_LANE_IN, side * (HALF_WALLS_IN + 4)];
    box([Math.min(inner, outer), -PIT_DEPTH_IN, -PIT_IN], [Math.max(inner, outer), -GUTTER_DEPTH_IN, 40], deck, ofPins);
    const [near, far] = [side * HALF_WALLS_IN, side * (HALF_WALLS_IN + 4)];
    box([Math.min(near, far), -PIT_DEPTH_IN, -CURTAIN_IN], [Math.max(near, far), 40, 20], wall, group(WALL, PIN | BALL));
  }
  box([-40, -PIT_DEPTH_IN - 4, -CURTAIN_IN - 4], [40, -PIT_DEPTH_IN, -PIT_IN], curtain, group(WALL, PIN | BALL));
  box([-40, -PIT_DEPTH_IN, -CURTAIN_IN - 4], [40, 60, -CURTAIN_IN], curtain, group(WALL, PIN | BALL));
  const ball = ballMaterial(scene);
  const ballDeck = { friction: BALL_DECK_FRICTION / ball.friction, restitution: BALL_DECK_RESTITUTION / ball.restitution };
  box([-HALF_LANE_IN, -4, -PIT_IN], [HALF_LANE_IN, 0, 40], ballDeck, group(BALL_DECK, BALL));
  return scene;
}

interface Material {
  readonly friction: number;
  readonly restitution: number;
}

function ballMaterial({ coefficients, withPin }: Pick<Scene, "coefficients" | "withPin">): Material {
  return withPin(coefficients.ballPinFriction, coefficients.ballPinRestitution);
}

/** A fixed box between two corners given in inches. */
function addBox(world: RAPIER.World, low: readonly number[], high: readonly number[], material: Material, groups: number): void {
  const half = low.map((from, i) => ((high[i] - from) / 2) * INCH);
  const middle = low.map((from, i) => ((from + high[i]) / 2) * INCH);
  world.createCollider(
    dressed(RAPIER.ColliderDesc.cuboid(half[0], half[1], half[2]).setTranslation(middle[0], middle[1], middle[2]), material, groups),
  );
}

function dressed(collider: RAPIER.ColliderDesc, { friction, restitution }: Material, groups: number): RAPIER.ColliderDesc {
  return collider
    .setFriction(friction)
    .setRestitution(restitution)
    .setFrictionCombineRule(RAPIER.CoefficientCombineRule.Multiply)
    .setRestitutionCombineRule(RAPIER.CoefficientCombineRule.Multiply)
    .setCollisionGroups(groups);
}

/** A pin: where it stands, m; how it is turned about its own axis and tilted about z, rad. */
export interface PinPlace {
  readonly x: number;
  readonly z: number;
  readonly turn: number;
  readonly tilt: number;
  readonly massKg: number;
}

export function addPin({ world, coefficients }: Scene, place: PinPlace): RAPIER.RigidBody {
  const { massKg } = place;
  const body = world.createRigidBody(
    RAPIER.RigidBodyDesc.dynamic()
      .setTranslation(place.x, 0, place.z)
      .setRotation(turned(place.turn, place.tilt))
      .setAdditionalMassProperties(
        massKg,
        { x: 0, y: SOLID.centreIn * INCH, z: 0 },
        { x: massKg * SOLID.transverse, y: massKg * SOLID.axial, z: massKg * SOLID.transverse },
        { x: 0, y: 0, z: 0, w: 1 },
      ),
  );
  const material = { friction: Math.sqrt(coefficients.pinPinFriction), restitution: Math.sqrt(coefficients.pinPinRestitution) };
  for (const { x, y, z, radius } of SPHERES) {
    const collider = RAPIER.ColliderDesc.ball(radius).setTranslation(x, y, z).setDensity(0);
    world.createCollider(dressed(collider, material, group(PIN, PIN | BALL | DECK | WALL)), body);
  }
  return body;
}

/** Turned about the pin's own axis, then tilted about the engine's z. */
function turned(turn: number, tilt: number): RAPIER.Rotation {
  const [ct, st, cl, sl] = [Math.cos(turn / 2), Math.sin(turn / 2), Math.cos(tilt / 2), Math.sin(tilt / 2)];
  return { w: cl * ct, x: -sl * st, y: cl * st, z: sl * ct };
}

/** A ball as it arrives: all in SI; moment of inertia of a ball symmetric about its centre. */
export interface BallState {
  readonly x: number;
  readonly z: number;
  readonly velocity: { readonly x: number; readonly z: number };
  readonly spin: { readonly x: number; readonly y: number; readonly z: number };
  readonly massKg: number;
  readonly radius: number;
  readonly radiusOfGyration: number;
}

export function addBall(scene: Scene, state: BallState): RAPIER.RigidBody {
  const { massKg, radius, radiusOfGyration } = state;
  const inertia = massKg * radiusOfGyration * radiusOfGyration;
  const body = scene.world.createRigidBody(
    RAPIER.RigidBodyDesc.dynamic()
      .setTranslation(state.x, radius, state.z)
      .setLinvel(state.velocity.x, 0, state.velocity.z)
      .setAngvel(state.spin)
      .setAdditionalMassProperties(massKg, { x: 0, y: 0, z: 0 }, { x: inertia, y: inertia, z: inertia }, { x: 0, y: 0, z: 0, w: 1 }),
  );
  const collider = dressed(RAPIER.ColliderDesc.ball(radius).setDensity(0), ballMaterial(scene), group(BALL, PIN | BALL_DECK | WALL));
  scene.world.createCollider(collider.setActiveEvents(RAPIER.ActiveEvents.COLLISION_EVENTS), body);
  return body;
}

/** Mass of a pin, kg: published 3 lb 6 oz to 3 lb 10 oz. */
export const PIN_MASS = { low: 3.375 * POUND, high: 3.625 * POUND } as const;
