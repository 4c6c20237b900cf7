import { constantFriction, twoZoneFriction } from "#engine/contact/friction";
import { FOOT, INCH, MPH, RPM } from "#engine/units";
import { type Rolled, rollByFullModel, type Trial, velocityByAveragedModel } from "../apparatus.ts";
import type { Fact, Provenance } from "../fact.ts";

const UNIFORM = 0.4;

/** Facts about one trial: several figures of the same run, computed once. */
function facts(
  topic: string,
  source: string,
  provenance: Provenance,
  trial: Trial,
  figures: Partial<Record<keyof Rolled, readonly [number, number]>>,
  unit = "SI",
  scale = 1,
): Fact[] {
  let run: Rolled | null = null;
  const once = () => {
    run ??= rollByFullModel(trial);
    return run;
  };
  return (Object.entries(figures) as [keyof Rolled, readonly [number, number]][]).map(([figure, [known, within]]) => ({
    topic: "ball motion, closed forms",
    says: `${topic}: ${figure}`,
    source,
    provenance,
    unit,
    known,
    within,
    predict: () => once()[figure] / (figure === "along" || figure === "side" || figure === "speed" ? scale : 1),
  }));
}

const TEXTBOOK = "sliding bowling ball, Halliday–Resnick type exercise";
const BEER = "sphere thrown with backspin, Beer–Johnston type exercise";
const LAW = "uniform law: constant deceleration until v + κs has used up the slip";

const hook = (inertiaRatio: number, mu: number): Trial => ({
  radius: 0.10795,
  inertiaRatio,
  speed: 8,
  spin: 300 * RPM,
  axisRotationDeg: 45,
  friction: constantFriction(mu),
});
const ball250 = (speedMph: number, rpm: number, axisRotationDeg: number, axisTiltDeg = 0): Trial => ({
  radius: 4.275 * INCH,
  inertiaRatio: (2.5 / 4.275) ** 2,
  speed: speedMph * MPH,
  spin: rpm * RPM,
  axisRotationDeg,
  axisTiltDeg,
  friction: constantFriction(0.2),
});

const turns: readonly (readonly [number, number, number, number, number])[] = [
  [17, 275, 45, 5.171, 3.015],
  [17, 275, 60, 6.495, 3.353],
  [19, 220, 45, 3.804, 3.8],
  [18, 325, 45, 5.708, 3.023],
  [19, 520, 45, 8.199, 2.288],
];

export const MOTION: readonly Fact[] = [
  ...facts(
    "8.5 m/s, no spin, µ .21, g 9.8",
    TEXTBOOK,
    "published",
    { radius: 0.11, inertiaRatio: UNIFORM, speed: 8.5, spin: 0, friction: constantFriction(0.21), gravity: 9.8 },
    { t: [1.1801, 1e-4], along: [8.5976, 2e-4], speed: [6.0714, 1e-4] },
  ),
  ...facts(
    "8.10 m/s, no spin, µ .19",
    TEXTBOOK,
    "computed",
    { radius: 0.11, inertiaRatio: UNIFORM, speed: 8.1, spin: 0, friction: constantFriction(0.19), gravity: 9.8 },
    { t: [1.2429, 1e-4], along: [8.6293, 2e-4], speed: [5.78571, 1e-5] },
  ),
  ...facts(
    "5 m/s, no spin, µ .08",
    TEXTBOOK,
    "computed",
    { radius: 0.11, inertiaRatio: UNIFORM, speed: 5, spin: 0, friction: constantFriction(0.08), gravity: 9.8 },
    { t: [1.82216, 2e-4], along: [7.80925, 8e-4], speed: [3.57143, 1e-5] },
  ),
  ...facts(
    "15 ft/s, backspin 9 rad/s, µ .10",
    BEER,
    "published",
    {
      radius: 4 * INCH,
      inertiaRatio: UNIFORM,
      speed: 15 * FOOT,
      spin: 9,
      axisRotationDeg: 180,
      friction: constantFriction(0.1),
      gravity: 32.2 * FOOT,
    },
    { t: [1.5972, 2e-4], speed: [9.8571, 1e-4], along: [19.85, 2e-3] },
    "s, ft/s, ft",
    FOOT,
  ),
  ...facts(
    "15 ft/s, backspin 18 rad/s, µ .10",
    BEER,
    "computed",
    {
      radius: 4 * INCH,
      inertiaRatio: UNIFORM,
      speed: 15 * FOOT,
      spin: 18,
      axisRotationDeg: 180,
      friction: constantFriction(0.1),
      gravity: 32.2 * FOOT,
    },
    { t: [1.8634, 2e-4], speed: [9, 1e-4], along: [22.36, 2e-3] },
    "s, ft/s, ft",
    FOOT,
  ),
  ...facts(
    "ball of 27 in, RG 3.28 in, 20 ft/s, µ .20",
    "non-uniform bowling ball, textbook exercise with published answer",
    "published",
    {
      radius: (27 / (2 * Math.PI)) * INCH,
      inertiaRatio: (3.28 / (27 / (2 * Math.PI))) ** 2,
      speed: 20 * FOOT,
      spin: 0,
      friction: constantFriction(0.2),
      gravity: 32.2 * FOOT,
    },
    { along: [18.6566, 2e-3] },
    "ft",
    FOOT,
  ),
  ...facts("hook, 300 rpm, 45°, µ .2, κ .4", LAW, "computed", hook(0.4, 0.2), {
    t: [0.887684, 5e-5],
    side: [0.304101, 5e-5],
    along: [6.391078, 3e-4],
    vx: [-0.685156, 1e-5],
    vy: [6.399442, 1e-5],
    turnDeg: [6.111091, 1e-4],
  }),
  ...facts("hook, κ .346021", LAW, "computed", hook(0.346021, 0.2), {
    t: [0.798688, 5e-5],
    side: [0.246181, 5e-5],
    along: [5.814409, 3e-4],
    turnDeg: [5.368577, 1e-4],
  }),
  ...facts("hook, µ .04: same velocity, five times the way", LAW, "computed", hook(0.4, 0.04), {
    t: [5 * 0.887684, 1e-3],
    side: [5 * 0.304101, 5e-4],
    along: [5 * 6.391078, 5e-3],
    turnDeg: [6.111091, 1e-4],
  }),
  ...facts(
    "two zones, µ .04 to 12.192 m then .2",
    LAW,
    "computed",
    { ...hook(0.4, 0.04), friction: twoZoneFriction(0.04, 0.2, 12.192, 1e-4), longestStep: 2e-5 },
    { along: [16.144678, 1e-3], side: [0.458304, 2e-4] },
  ),
  ...facts("17.9 mph, 416 rpm, 45°, RG 2.50", LAW, "computed", ball250(17.9, 416, 45), {
    speed: [6.8683, 1e-4],
    turnDeg: [7.129, 1e-3],
    t: [0.745, 1e-4],
    along: [5.5194, 3e-4],
    side: [0.3175, 1e-4],
  }),
  ...facts("the same with 15° of tilt", LAW, "computed", ball250(17.9, 416, 45, 15), { turnDeg: [6.918, 1e-3] }),
  ...turns.flatMap(([mph, rpm, rotation, turn, loss]): Fact[] => {
    const trial = ball250(mph, rpm, rotation);
    const says = `${mph} mph, ${rpm} rpm, ${rotation}°`;
    return [
      {
        topic: "turn and loss at full roll, both models",
        says: `${says}: turn, full model`,
        source: LAW,
        provenance: "computed",
        unit: "deg",
        known: turn,
        within: 1e-3,
        predict: () => rollByFullModel(trial).turnDeg,
      },
      {
        topic: "turn and loss at full roll, both models",
        says: `${says}: loss, averaged model`,
        source: LAW,
        provenance: "computed",
        unit: "mph",
        known: loss,
        within: 1e-3,
        predict: () => mph - velocityByAveragedModel(trial, 40 * FOOT).speed / MPH,
      },
    ];
  }),
];
