import { constantFriction } from "#engine/contact/friction";
import { release } from "#engine/delivery/release";
import { turnFreely } from "#engine/motion/flare";
import { type FullMechanics, fullStart, fullStep, spinOf } from "#engine/motion/full";
import { INCH } from "#engine/units";
import { conjugate, type Quaternion, rotate, type Vector } from "#engine/vector";
import type { Fact } from "../fact.ts";

const EULER = "Euler's equations of the free top in Jacobi's elliptic functions (Landau & Lifshitz, Mechanics §37)";
const BALL_RG: Vector = [2.48, 2.51, 2.53];
const ballMoments = BALL_RG.map((rg) => (rg * INCH) ** 2) as unknown as Vector;

/** Body spin after t of the flare's own equations. */
function spinAfter(moments: Vector, spin: Vector, t: number, steps: number): Vector {
  let momentum: Vector = [moments[0] * spin[0], moments[1] * spin[1], moments[2] * spin[2]];
  for (let i = 0; i < steps; i++) momentum = turnFreely(momentum, moments, t / steps);
  return [momentum[0] / moments[0], momentum[1] / moments[1], momentum[2] / moments[2]];
}

/** The same through the full model: a ball on a frictionless lane, its spin turned back into the body. */
function spinByFullModel(spin: Vector, t: number): Vector {
  const moments = ballMoments.map((m) => m * 6.8) as unknown as Vector;
  const mechanics: FullMechanics = {
    body: { mass: 6.8, radius: 0.109, moments, axisInBody: [1, 0, 0] },
    rollingResistance: 0,
    slipRegularisation: 0.02,
    gravity: 9.80665,
  };
  const start = {
    ...release({ speedMph: 18, revRateRpm: 0, axisRotationDeg: 0, axisTiltDeg: 0 }, { laydownBoard: 20, launchAngleDeg: 0 }),
    wx: spin[0],
    wy: spin[1],
    wz: spin[2],
  };
  const state = fullStart(mechanics, start, 0, [1, 0, 0, 0]);
  const ice = constantFriction(0);
  while (t - state[0] > 1e-12) fullStep(mechanics, ice, state, Math.min(0.0005, t - state[0]));
  const orientation: Quaternion = [state[8], state[9], state[10], state[11]];
  return rotate(conjugate(orientation), spinOf(mechanics, state));
}

/** Growth rate of a small wobble about the intermediate axis, 1/s, from two moments of the exponential. */
function growthRate(): number {
  const wobble = (t: number) => {
    const [w1, , w3] = spinAfter(ballMoments, [1e-7, 40, -1e-7 * Math.sqrt(growthShare())], t, 20_000);
    return Math.hypot(w1, w3);
  };
  return Math.log(wobble(6) / wobble(4)) / 2;
}

/** Ratio of the unstable direction's components, so that no decaying part disturbs the fit. */
function growthShare(): number {
  const [i1, i2, i3] = ballMoments;
  return (i1 * (i2 - i1)) / (i3 * (i3 - i2));
}

const jacobi: readonly (readonly [number, Vector])[] = [
  [1, [0.5778024718120799, 0.8161766374798108, 0.8820158155105363]],
  [5, [-0.1643504297652695, -0.9864020155271233, 0.8219916998291464]],
];

export const TOP: readonly Fact[] = [
  ...jacobi.flatMap(([t, known]) =>
    known.map(
      (value, i): Fact => ({
        topic: "free top",
        says: `I = (1, 2, 3), ω₀ = (1, 0, 1): ω${i + 1} at t = ${t}`,
        source: EULER,
        provenance: "computed",
        unit: "rad/s",
        known: value,
        within: 1e-9,
        predict: () => spinAfter([1, 2, 3], [1, 0, 1], t, 4000)[i],
      }),
    ),
  ),
  ...([18.46315419727, 32.30185176771, -3.955671961474] as const).map(
    (value, i): Fact => ({
      topic: "free top",
      says: `ball of RG 2.480/2.510/2.530 in, ω₀ = (20, 30, 10), full model: ω${i + 1} after 1 s`,
      source: EULER,
      provenance: "computed",
      unit: "rad/s",
      known: value,
      within: 2e-7,
      predict: () => spinByFullModel([20, 30, 10], 1)[i],
    }),
  ),
  {
    topic: "free top",
    says: "the same ball about its intermediate axis at 40 rad/s: growth of a wobble",
    source: EULER,
    provenance: "computed",
    unit: "1/s",
    known: 0.783121154,
    within: 1e-6,
    predict: growthRate,
  },
];
