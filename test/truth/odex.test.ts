import { describe, expect, it } from "vitest";
import { assume } from "#engine/assumptions";
import { bodyOf } from "#engine/ball/body";
import { TYPICAL_BALL } from "#engine/ball/typical";
import { release } from "#engine/delivery/release";
import { filmOfPattern } from "#engine/lane/film";
import { BOARD, PINS_PLANE } from "#engine/lane/geometry";
import { type FullMechanics, fullRunTo, fullStart } from "#engine/motion/full";
import { frictionOnLane } from "#engine/motion/ground";
import { STYLES } from "#engine/planning/situations";
import { aboutAxis, type Quaternion } from "#engine/vector";
import { byOdex } from "./byOdex.ts";

const cases = [
  ["matched, hybrid 2000, medium-41", STYLES.matched, "hybrid", 0.45, "medium-41", 0.05, 0.005, { laydownBoard: 19, launchAngleDeg: 1.5 }],
  [
    "rev-dominant, solid 500, heavy-44, asymmetric",
    STYLES.revDominant,
    "solid",
    1.1,
    "heavy-44",
    0.054,
    0.02,
    { laydownBoard: 28, launchAngleDeg: 2.4 },
  ],
  [
    "speed-dominant, polished pearl, light-38",
    STYLES.speedDominant,
    "pearl",
    0.12,
    "light-38",
    0.04,
    0,
    { laydownBoard: 12, launchAngleDeg: 0.4 },
  ],
] as const;

describe("full model against odex on the oiled lane", () => {
  it.each(cases)("%s", (_name, bowler, cover, ra, pattern, differentialIn, intermediateDifferentialIn, line) => {
    const ball = { ...TYPICAL_BALL, cover, finish: { number: 2000, polished: false }, differentialIn, intermediateDifferentialIn };
    const mechanics: FullMechanics = { body: bodyOf(ball), rollingResistance: 0.003, slipRegularisation: 0.02, gravity: 9.80665 };
    const friction = frictionOnLane(filmOfPattern({ kind: "named", id: pattern }), ball, ra, assume());
    const orientation: Quaternion = aboutAxis([0.3, -0.5, 0.8], 1.1);
    const state = fullStart(mechanics, release(bowler, line), 0, orientation);
    const start = Array.from(state.slice(1, 12));
    expect(fullRunTo(mechanics, friction, state, PINS_PLANE, 10)).toBe(true);
    const known = byOdex(mechanics, friction, start, state[0]);
    expect(Math.abs(state[1] - known[0]) / BOARD, "boards").toBeLessThan(0.002);
    expect(Math.abs(state[2] - known[1]), "metres down the lane").toBeLessThan(1e-4);
    expect(Math.abs(Math.atan2(-state[3], state[4]) - Math.atan2(-known[2], known[3])) / (Math.PI / 180), "degrees").toBeLessThan(0.003);
  });
});
