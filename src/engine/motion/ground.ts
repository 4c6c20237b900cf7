import { type Assumed, assume } from "../assumptions.ts";
import type { Ball, CoverId } from "../ball/ball.ts";
import { bodyOf, effectiveMoment, inertiaRatio } from "../ball/body.ts";
import {
  constantFriction,
  contactOf,
  type FrictionField,
  filmFriction,
  filmMet,
  type HouseNight,
  laneFriction,
  tabulated,
  twoZoneFriction,
} from "../contact/friction.ts";
import type { FilmMap } from "../lane/filmMap.ts";
import type { GivenFriction } from "../lane/lane.ts";
import { FOOT, STANDARD_GRAVITY } from "../units.ts";
import type { AveragedBall } from "./averaged.ts";

/** Slip regularisation of everything but closed-form checks, m/s. */
export const USUAL_SLIP_REGULARISATION = 0.02;

/** The film that was met last on a map: every finish of a plan meets the same one on the lane as found, and tracks meet what the map of lines did. */
const met = new WeakMap<FilmMap, { readonly cover: CoverId; readonly assumed: Assumed; readonly um: Float64Array }>();

function filmMetOn(film: FilmMap, cover: CoverId, assumed: Assumed): Float64Array {
  const last = met.get(film);
  if (last?.cover === cover && last.assumed === assumed) return last.um;
  const um = filmMet(film, cover, assumed);
  met.set(film, { cover, assumed, um });
  return um;
}

/** Friction of a ball of given effective roughness on an oiled lane (in the right-hander's frame). */
export function frictionOnLane(film: FilmMap, ball: Pick<Ball, "cover">, ballRaUm: number, a: Assumed = assume()): FrictionField {
  return filmFriction(filmMetOn(film, ball.cover, a), contactOf(ball.cover, ballRaUm, a));
}

/** The same for one house after another, a few shots in each: what does not differ between them is worked out once, and the rest where it is asked for. */
export function houseFriction(
  film: FilmMap,
  ball: Pick<Ball, "cover">,
  ballRaUm: number,
  a: Assumed,
): (house: HouseNight) => FrictionField {
  return laneFriction(film, ball.cover, ballRaUm, a);
}

/** The same friction times gravity, as a {@link ShotKernel} takes it. */
export function gripOnLane(film: FilmMap, ball: Pick<Ball, "cover">, ballRaUm: number, a: Assumed, into: Float32Array): void {
  tabulated(filmMetOn(film, ball.cover, a), contactOf(ball.cover, ballRaUm, a), STANDARD_GRAVITY, into);
}

export function givenFriction(friction: GivenFriction): FrictionField {
  return friction.kind === "constant"
    ? constantFriction(friction.mu)
    : twoZoneFriction(friction.oil, friction.dry, friction.changeAtFt * FOOT, friction.widthFt * FOOT);
}

/** The ball as the averaged model takes it. */
export function averagedBall(
  ball: Ball,
  rollingResistance: number,
  slipRegularisation = USUAL_SLIP_REGULARISATION,
  gravity = STANDARD_GRAVITY,
): AveragedBall {
  const body = bodyOf(ball);
  return { radius: body.radius, inertiaRatio: inertiaRatio(body, effectiveMoment(body)), rollingResistance, slipRegularisation, gravity };
}
