import { assume } from "#engine/assumptions";
import { bodyOf } from "#engine/ball/body";
import { TYPICAL_BALL } from "#engine/ball/typical";
import { release } from "#engine/delivery/release";
import { filmOfPattern } from "#engine/lane/film";
import { BOARD, PINS_PLANE } from "#engine/lane/geometry";
import { type FullMechanics, fullRunTo, fullStart, fullStep } from "#engine/motion/full";
import { frictionOnLane } from "#engine/motion/ground";
import { STYLES } from "#engine/planning/situations";
import { aboutAxis } from "#engine/vector";
import { byOdex } from "../test/truth/byOdex.ts";
import { processorSecondsOf } from "./processor.ts";

/** Error against the closest look at the same shot, boards, and processor seconds for one shot. */
export interface WorkPrecision {
  readonly boards: number;
  readonly seconds: number;
}

const STEPS_S = [0.004, 0.002, 0.001, 0.0005];
const TOLERANCES = [1e-3, 1e-4, 1e-5, 1e-6, 1e-7, 1e-8, 1e-9, 1e-10];
const CLOSEST = { tolerance: 1e-12, longest: 0.0005 };
/** The solver chooses its own steps. */
const ANY_STEP = 1;
/** The least of some rounds, after one that nobody counts: until it has run often, a program is not yet compiled. */
const ROUNDS = 4;
const SHOTS = 100;

/** The full model on an oiled lane, against a general solver of high order (extrapolation, npm `odex`): the same equations, from the same start to the same time. */
export function workPrecision(): { readonly ours: readonly WorkPrecision[]; readonly general: readonly WorkPrecision[] } {
  const ball = { ...TYPICAL_BALL, cover: "hybrid", finish: { number: 2000, polished: false }, intermediateDifferentialIn: 0.005 } as const;
  const mechanics: FullMechanics = { body: bodyOf(ball), rollingResistance: 0.003, slipRegularisation: 0.02, gravity: 9.80665 };
  const friction = frictionOnLane(filmOfPattern({ kind: "named", id: "medium-41" }), ball, 0.45, assume());
  const begun = fullStart(
    mechanics,
    release(STYLES.matched, { laydownBoard: 19, launchAngleDeg: 1.5 }),
    0,
    aboutAxis([0.3, -0.5, 0.8], 1.1),
  );
  const start = Array.from(begun.slice(1, 12));
  const arrived = begun.slice();
  fullRunTo(mechanics, friction, arrived, PINS_PLANE, 10);
  const [until] = arrived;
  const truth = byOdex(mechanics, friction, start, until, CLOSEST);
  const point = (run: () => readonly [x: number, y: number]): WorkPrecision => {
    const end = run();
    const round = () =>
      processorSecondsOf(() => {
        for (let shot = 0; shot < SHOTS; shot++) run();
      });
    round();
    const seconds = Math.min(...Array.from({ length: ROUNDS }, round));
    return { boards: Math.hypot(end[0] - truth[0], end[1] - truth[1]) / BOARD, seconds: seconds / SHOTS };
  };
  return {
    ours: STEPS_S.map((step) =>
      point(() => {
        const state = begun.slice();
        while (state[0] < until - 1e-12) fullStep(mechanics, friction, state, Math.min(step, until - state[0]));
        return [state[1], state[2]];
      }),
    ),
    general: TOLERANCES.map((tolerance) =>
      point(() => {
        const [x, y] = byOdex(mechanics, friction, start, until, { tolerance, longest: ANY_STEP });
        return [x, y];
      }),
    ),
  };
}

/** How many times as many seconds the general solver takes for the same error as one of ours, between its own points in the logarithms; null where it does not get there. */
export function timesFewer({ boards, seconds }: WorkPrecision, general: readonly WorkPrecision[]): number | null {
  const after = general.findIndex((one) => one.boards <= boards);
  if (after < 1) return null;
  const [coarse, fine] = [general[after - 1], general[after]];
  const share = Math.log(coarse.boards / boards) / Math.log(coarse.boards / fine.boards);
  return (coarse.seconds * (fine.seconds / coarse.seconds) ** share) / seconds;
}
