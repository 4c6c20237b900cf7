import { DEGREE, INCH, POUND } from "../units.ts";
import type { Ball } from "./ball.ts";

/** A ball as a rigid body. Principal moments in kg·m² about body axes 1 (pin, low RG), 2 and 3 (high RG). */
export interface Body {
  readonly mass: number;
  readonly radius: number;
  readonly moments: readonly [number, number, number];
  /** The bowler's axis in the body at release: unit vector on the principal axes. */
  readonly axisInBody: readonly [number, number, number];
}

export function bodyOf(ball: Ball): Body {
  const mass = ball.massLb * POUND;
  const radius = (ball.diameterIn / 2) * INCH;
  const [first, second, third] = radiiOfGyrationIn(ball).map((rg) => mass * (rg * INCH) ** 2);
  return { mass, radius, moments: [first, second, third], axisInBody: axisInBody(ball, radius) };
}

/** RG₁ = RG, RG₃ = RG + differential, RG₂ = RG₃ − intermediate differential (the trade's definitions), inches. */
export function radiiOfGyrationIn(ball: Ball): readonly [number, number, number] {
  if (ball.principalRgIn) return ball.principalRgIn;
  const high = ball.rgIn + ball.differentialIn;
  return [ball.rgIn, high - ball.intermediateDifferentialIn, high];
}

/** The axis lies at the arc `pinToPapIn` from the pin, turned by the drilling angle from the high-RG axis. */
function axisInBody(ball: Ball, radius: number): readonly [number, number, number] {
  const fromPin = (ball.pinToPapIn * INCH) / radius;
  const turned = ball.drillingAngleDeg * DEGREE;
  return [Math.cos(fromPin), Math.sin(fromPin) * Math.sin(turned), Math.sin(fromPin) * Math.cos(turned)];
}

/** κ = I/(m R²) of a moment of inertia. */
export function inertiaRatio(body: Body, moment: number): number {
  return moment / (body.mass * body.radius ** 2);
}

/**
 * The one moment of inertia that stands for the whole ball when the core's phase is averaged out: I = |L|²/2T for rotation about the
 * bowler's axis. Both |L| and T are constants of the free top, so it does not change while the core tumbles (docs/model/averaged-motion.md).
 */
export function effectiveMoment(body: Body): number {
  const [i1, i2, i3] = body.moments;
  const [n1, n2, n3] = body.axisInBody;
  const momentum = (i1 * n1) ** 2 + (i2 * n2) ** 2 + (i3 * n3) ** 2;
  const energy = i1 * n1 * n1 + i2 * n2 * n2 + i3 * n3 * n3;
  return momentum / energy;
}
