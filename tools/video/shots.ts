import { ASSUMPTIONS, type Assumed, type AssumptionId, assume } from "#engine/assumptions";
import { COVER_IDS } from "#engine/ball/ball";
import { TYPICAL_BALL } from "#engine/ball/typical";
import { TYPICAL_SPREAD } from "#engine/delivery/words";
import { PATTERN_IDS } from "#engine/lane/patterns";
import type { Shot, ShotSetup } from "#engine/motion/shot";
import { simulateShot } from "#engine/motion/simulate";
import { deriveSeed, normalDeviate, uniformSource } from "#engine/random";
import { parseFinish } from "#engine/surface/finish";
import { INCH } from "#engine/units";

/** An invented shot, by the project's full motion model: the truth that a reading is held against. */
export interface Truth {
  readonly setup: ShotSetup;
  readonly shot: Shot;
  /** Radius of this ball, m. */
  readonly radius: number;
}

/** Between two samples the ball is taken to go straight on, which is out by less than a hundredth of a board. */
const EVERY_FT = 0.25;
const FINISHES = ["500", "1000", "2000", "3000", "4000 + polish"];

export interface Chance {
  readonly even: (from: number, to: number) => number;
  readonly normal: (mean: number, sd: number) => number;
  readonly oneOf: <T>(list: readonly T[]) => T;
}

export function chanceOf(seed: number): Chance {
  const uniform = uniformSource(seed);
  return {
    even: (from, to) => from + (to - from) * uniform(),
    normal: (mean, sd) => mean + sd * normalDeviate(uniform()),
    oneOf: (list) => list[Math.floor(uniform() * list.length)],
  };
}

/** A shot that stays on the lane and comes to the pins: bowlers of every class, five covers, five finishes, four patterns, both hands. */
export function inventedShot(seed: number): Truth {
  for (let attempt = 0; attempt < 60; attempt++) {
    const setup = inventedSetup(deriveSeed(seed, attempt));
    const shot = simulateShot(setup, otherHouse(deriveSeed(seed, 100 + attempt)));
    const { boardAtPins } = shot.course;
    if (shot.reachedPins && boardAtPins !== null && boardAtPins > 8 && boardAtPins < 28) {
      return { setup, shot, radius: (setup.ball.diameterIn / 2) * INCH };
    }
  }
  throw new RangeError(`no shot of seed ${seed} stays on the lane`);
}

/** Oil, lane and house differ as far as the registry says. */
function otherHouse(seed: number): Assumed {
  const chance = chanceOf(seed);
  const within = (id: AssumptionId) => chance.even(ASSUMPTIONS[id].low, ASSUMPTIONS[id].high);
  return assume({
    "friction.oil": within("friction.oil"),
    "house.dry": within("house.dry"),
    "film.scale": within("film.scale"),
    "roll.resistance": within("roll.resistance"),
  });
}

function inventedSetup(seed: number): ShotSetup {
  const chance = chanceOf(seed);
  const revRateRpm = chance.even(180, 480);
  const laydownBoard = chance.even(13, 30);
  return {
    seed,
    bowler: {
      name: "Invented",
      hand: chance.oneOf(["right", "right", "left"] as const),
      speedMph: chance.even(15.5, 20),
      revRateRpm,
      axisRotationDeg: chance.even(20, 65),
      axisTiltDeg: chance.even(5, 22),
      spread: TYPICAL_SPREAD,
    },
    ball: {
      ...TYPICAL_BALL,
      cover: chance.oneOf(COVER_IDS),
      diameterIn: chance.even(8.5, 8.595),
      rgIn: chance.even(2.47, 2.6),
      differentialIn: chance.even(0.02, 0.055),
      finish: parseFinish(chance.oneOf(FINISHES)),
    },
    line: { laydownBoard, launchAngleDeg: chance.even(-0.5, 0.5) + 0.14 * (laydownBoard - 12) + (revRateRpm - 300) / 200 },
    surface: { kind: "lane", lane: { pattern: { kind: "named", id: chance.oneOf(PATTERN_IDS) }, playedShots: 0 } },
    model: {
      motion: "full",
      slipRegularisationMps: 0.02,
      rollingResistance: 0.003,
      startFt: 0,
      gravity: 9.80665,
      coreOrientation: null,
    },
    atFt: Array.from({ length: 60 / EVERY_FT + 1 }, (_, i) => i * EVERY_FT),
  };
}

/** Where the ball's middle is, m, at a time after the foul line. Before it and past the last sample it goes straight on. */
export function truePlace({ samples }: Shot, time: number): { readonly x: number; readonly y: number } {
  let next = samples.findIndex(({ tS }) => tS > time);
  if (next === 0) next = 1;
  if (next < 0) next = samples.length - 1;
  const [a, b] = [samples[next - 1], samples[next]];
  const share = (time - a.tS) / (b.tS - a.tS);
  return { x: a.xM + share * (b.xM - a.xM), y: (a.yFt + share * (b.yFt - a.yFt)) * 0.3048 };
}
