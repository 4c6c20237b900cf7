import { describe, expect, it } from "vitest";
import type { Ball } from "#engine/ball/ball";
import { TYPICAL_BALL } from "#engine/ball/typical";
import type { Bowler, Hand } from "#engine/delivery/bowler";
import { release } from "#engine/delivery/release";
import { TYPICAL_SPREAD } from "#engine/delivery/words";
import { EngineFault } from "#engine/fault";
import { axisFromMarks, type MarkAt } from "#engine/learning/delivery/axis";
import { type BowlerSeen, measureBowler, type ShotSeen } from "#engine/learning/delivery/measureBowler";
import { overUpOf, papFromMarks, placeOnBall } from "#engine/learning/delivery/pap";
import { overShots } from "#engine/learning/delivery/shots";
import { launchSpeed } from "#engine/learning/delivery/speed";
import { simulateShot } from "#engine/motion/simulate";
import { normalDeviate, uniformSource } from "#engine/random";
import { DEGREE } from "#engine/units";
import { aboutAxis, cross, length, type Quaternion, rotate, turnBetween, unit, type Vector } from "#engine/vector";

const bowler = (over: Partial<Bowler> = {}): Bowler => ({
  name: "Invented",
  hand: "right",
  speedMph: 17.5,
  revRateRpm: 320,
  axisRotationDeg: 45,
  axisTiltDeg: 14,
  spread: TYPICAL_SPREAD,
  ...over,
});
const ball: Ball = { ...TYPICAL_BALL, cover: "hybrid", finish: { number: 2000, polished: false } };
const camera = (over: { downDeg?: number; launchAngleDeg?: number; hand?: Hand; markWithin?: number } = {}) => ({
  downDeg: 0,
  launchAngleDeg: 0,
  hand: "right" as Hand,
  markWithin: 0.01,
  ...over,
});

/** ω of a delivery by the program's own release, as the rigid body turns; the pictures are then taken with nothing of the code that reads them. */
function omegaOf(delivery: Bowler, launchAngleDeg = 0): Vector {
  const { wx, wy, wz } = release(delivery, { laydownBoard: 20, launchAngleDeg });
  return [wx, wy, wz];
}

/** A photograph: a point of the ball (lane's frame, radius 1) as it lies in the picture of a camera behind, looking down by an angle. */
function photographed([x, y, z]: Vector, downDeg: number, hand: Hand): { right: number; up: number; isSeen: boolean } {
  const [sin, cos] = [Math.sin(downDeg * DEGREE), Math.cos(downDeg * DEGREE)];
  return { right: hand === "left" ? -x : x, up: z * cos + y * sin, isSeen: z * sin - y * cos > 0.3 };
}

/** Five pictures of 240 a second, three pictures apart: about a quarter of a turn. */
const QUARTER_TURN = [0, 3, 6, 9, 12].map((frame) => frame / 240);

/** A mark 40° from the axis that the camera sees all the time. */
function followed(omega: Vector, seconds: readonly number[], downDeg = 0, hand: Hand = "right"): MarkAt[] {
  const axis = unit(omega);
  const aside = rotate(aboutAxis(unit(cross(axis, [0, 0, 1])), 40 * DEGREE), axis);
  for (let phase = 0; phase < 360; phase += 5) {
    const start = rotate(aboutAxis(axis, phase * DEGREE), aside);
    const marks = seconds.map((at) => ({
      seconds: at,
      ...photographed(rotate(aboutAxis(omega, length(omega) * at), start), downDeg, hand),
    }));
    if (marks.every(({ isSeen }) => isSeen)) return marks;
  }
  throw new Error("this delivery shows no such mark");
}

describe("axis from a mark in several pictures", () => {
  const deliveries: readonly [string, Partial<Bowler>, number, number, Hand][] = [
    ["matched", {}, 0, 0, "right"],
    ["much side roll, camera from above", { axisRotationDeg: 75, axisTiltDeg: 5, revRateRpm: 450 }, 15, 0, "right"],
    ["little rotation, high tilt", { axisRotationDeg: 15, axisTiltDeg: 30, revRateRpm: 220 }, 10, 0, "right"],
    ["left-hander, launched outward", { hand: "left" }, 8, 2.5, "left"],
  ];
  for (const [says, delivery, downDeg, launchAngleDeg, hand] of deliveries) {
    it(`${says}: five pictures give back rotation, tilt and rev rate (rigid rotation; computed)`, () => {
      const truth = bowler(delivery);
      const marks = followed(omegaOf(truth, launchAngleDeg), QUARTER_TURN, downDeg, hand);
      const seen = axisFromMarks(marks, camera({ downDeg, launchAngleDeg, hand }), null);
      expect(seen.axisRotationDeg.value).toBeCloseTo(truth.axisRotationDeg, 6);
      expect(seen.axisTiltDeg.value).toBeCloseTo(truth.axisTiltDeg, 6);
      expect(seen.revRateRpm?.value).toBeCloseTo(truth.revRateRpm, 6);
    });

    it(`${says}: two pictures do with the rev rate known`, () => {
      const truth = bowler(delivery);
      const marks = followed(omegaOf(truth, launchAngleDeg), [0, 1 / 30], downDeg, hand);
      const revs = { value: truth.revRateRpm, low: truth.revRateRpm, high: truth.revRateRpm };
      const seen = axisFromMarks(marks, camera({ downDeg, launchAngleDeg, hand }), revs);
      expect(seen.axisRotationDeg.value).toBeCloseTo(truth.axisRotationDeg, 5);
      expect(seen.axisTiltDeg.value).toBeCloseTo(truth.axisTiltDeg, 5);
      expect(seen.revRateRpm).toBeNull();
    });
  }

  it("the ends hold the truth about as often as they say when marks are misread (seed 7)", () => {
    const truth = bowler();
    const uniform = uniformSource(7);
    const exact = followed(omegaOf(truth), QUARTER_TURN);
    let held = 0;
    for (let run = 0; run < 400; run++) {
      const marks = exact.map((mark) => ({
        ...mark,
        right: mark.right + 0.04 * (uniform() - 0.5),
        up: mark.up + 0.04 * (uniform() - 0.5),
      }));
      const seen = axisFromMarks(marks, camera({ markWithin: 0.02 }), null);
      if (seen.axisRotationDeg.low <= truth.axisRotationDeg && truth.axisRotationDeg <= seen.axisRotationDeg.high) held++;
    }
    // Readings uniform within their ends, added in quadrature: ends are √3 standard deviations, which a near-normal figure keeps 92 % of the time.
    expect(held / 400).toBeGreaterThan(0.86);
    expect(held / 400).toBeLessThan(0.99);
  });

  it.each([
    [
      "off the ball",
      [
        { seconds: 0, right: 0.9, up: 0.9 },
        { seconds: 0.01, right: 0, up: 0 },
        { seconds: 0.02, right: 0.1, up: 0.1 },
      ],
    ],
    ["standing still", [0, 1, 2].map((i) => ({ seconds: i / 60, right: 0.1, up: 0.1 }))],
    ["one picture", [{ seconds: 0, right: 0.1, up: 0.1 }]],
    ["two pictures without a rev rate", [0, 1].map((i) => ({ seconds: i / 60, right: 0.3 * i, up: 0.1 }))],
    ["at the same moment", [0, 1, 2].map((i) => ({ seconds: 0, right: 0.3 * i, up: 0.1 * i * i }))],
  ])("%s is refused by name", (_, marks) => {
    expect(() => axisFromMarks(marks, camera(), null)).toThrow(EngineFault);
  });
});

describe("positive axis point", () => {
  it.each([
    ["right", 4.9, 0.6],
    ["right", 5.2, -0.4],
    ["left", 4.6, 0.25],
  ] as const)("%s-hander, %s over %s up: two marks in one picture give it back (rigid rotation; computed)", (hand, overIn, upIn) => {
    const radiusIn = 4.297;
    const truth = bowler({ hand });
    const omega = unit(omegaOf(truth));
    // The ball lies so that its axis point is on the axis, turned about it until two marks face the camera.
    const papOnBall = placeOnBall({ overIn, upIn }, radiusIn);
    const marksOnBall = [
      { overIn: 1, upIn: 1.5 },
      { overIn: 4, upIn: -1 },
    ];
    const lie = turnBetween(papOnBall, omega);
    const seen = Array.from({ length: 72 }, (_, i) => aboutAxis(omega, i * 5 * DEGREE))
      .map((turn) =>
        marksOnBall.map((mark) => ({
          ...mark,
          ...photographed(rotate(turn, rotate(lie as Quaternion, placeOnBall(mark, radiusIn))), 8, hand),
        })),
      )
      .find((marks) => marks.every(({ isSeen }) => isSeen));
    if (seen === undefined) throw new Error("In no picture of a turn are both marks seen.");
    const axis = { rotationDeg: { value: truth.axisRotationDeg, within: 0 }, tiltDeg: { value: truth.axisTiltDeg, within: 0 } };
    const pap = papFromMarks([seen[0], seen[1]], axis, camera({ downDeg: 8, hand }), radiusIn);
    expect(pap.overIn.value).toBeCloseTo(overIn, 6);
    expect(pap.upIn.value).toBeCloseTo(upIn, 6);
    expect(pap.overIn.high - pap.overIn.low).toBeGreaterThan(0.02);
  });

  it("places go to directions and back; a quarter of the way round is π/2 of the radius", () => {
    const at = placeOnBall({ overIn: (Math.PI / 2) * 4.3, upIn: 0 }, 4.3);
    expect(at[0]).toBeCloseTo(1, 12);
    const back = overUpOf(placeOnBall({ overIn: -3, upIn: 2 }, 4.3), 4.3);
    expect(back.overIn).toBeCloseTo(-3, 12);
    expect(back.upIn).toBeCloseTo(2, 12);
  });
});

describe("launch speed", () => {
  const on = (pattern: string) => ({ bowler: bowler(), ball, pattern: { kind: "named", id: pattern } as const });

  it("the full model's time from 0 to 60 ft gives back its launch speed to 0.15 mph (two models of one law)", () => {
    for (const speedMph of [15, 17.5, 20]) {
      const shot = simulateShot({
        seed: 1,
        bowler: bowler({ speedMph }),
        ball,
        line: { laydownBoard: 24, launchAngleDeg: 2 },
        surface: { kind: "lane", lane: { pattern: { kind: "named", id: "medium-41" }, playedShots: 0 } },
        model: {
          motion: "full",
          slipRegularisationMps: 0.02,
          rollingResistance: 0.003,
          startFt: 0,
          gravity: 9.80665,
          coreOrientation: null,
        },
        atFt: [60],
      });
      const seen = { kind: "timed", fromFt: 0, toFt: 60, seconds: shot.samples[0].tS, withinSeconds: 1 / 60 } as const;
      const speed = launchSpeed(seen, { ...on("medium-41"), bowler: bowler({ speedMph }) });
      expect(Math.abs(speed.value - speedMph)).toBeLessThan(0.15);
      // A frame of 1/60 s in about 2.4 s is 0.7 %, and the average's error is the launch speed's.
      expect((speed.high - speed.low) / 2 / speedMph).toBeGreaterThan(0.005);
      expect((speed.high - speed.low) / 2 / speedMph).toBeLessThan(0.012);
    }
  });

  it("the display at the pins shows less than the launch by 1.9 to 3.2 mph (tracked shots at 300–520 rpm; published)", () => {
    const speed = launchSpeed({ kind: "display", speedMph: 14.6, atFt: 60, withinMph: 0.1 }, on("medium-41"));
    expect(speed.value - 14.6).toBeGreaterThan(1.9);
    expect(speed.value - 14.6).toBeLessThan(3.2);
  });

  it("a lane that is not known widens the ends", () => {
    const seen = { kind: "display", speedMph: 14.6, atFt: 60, withinMph: 0.1 } as const;
    const known = launchSpeed(seen, on("medium-41"));
    const unknown = launchSpeed(seen, { ...on("medium-41"), pattern: null });
    expect(unknown.value).toBe(known.value);
    expect(unknown.high - unknown.low).toBeGreaterThan(known.high - known.low);
  });

  it("what no launch speed gives is refused with the field", () => {
    for (const seconds of [0.5, 40])
      expect(() => launchSpeed({ kind: "timed", fromFt: 0, toFt: 60, seconds, withinSeconds: 0 }, on("medium-41"))).toThrow(
        /timed.*3 to 40 mph/,
      );
  });
});

describe("several shots", () => {
  it("mean and 95 % interval of Michelson's hundred speeds are the certified ones (NIST StRD Michelso, first ten; t table NIST/SEMATECH)", () => {
    const speeds = [299.85, 299.74, 299.9, 300.07, 299.93, 299.85, 299.95, 299.98, 299.98, 299.88];
    const over = overShots(speeds.map((value) => ({ value, low: value, high: value })));
    // mean 299.913, s 0.0907…; half width 2.262 s/√10
    const mean = speeds.reduce((a, b) => a + b) / 10;
    const sd = Math.sqrt(speeds.reduce((a, b) => a + (b - mean) ** 2, 0) / 9);
    expect(over?.mean.value).toBeCloseTo(mean, 10);
    expect(over?.mean.high).toBeCloseTo(mean + (2.262 * sd) / Math.sqrt(10), 8);
    expect(over?.spread).toBeCloseTo(sd, 10);
  });

  it("the bowler's spread is what is seen less what the reading explains (seed 3)", () => {
    const uniform = uniformSource(3);
    const normal = () => normalDeviate(uniform());
    const own = 12;
    const frame = 10;
    const seen = Array.from({ length: 4000 }, () => {
      const value = 320 + own * normal() + frame * (uniform() - uniform());
      return { value, low: value - frame, high: value + frame };
    });
    expect(overShots(seen)?.spread).toBeGreaterThan(11.4);
    expect(overShots(seen)?.spread).toBeLessThan(12.6);
  });

  it("a bowler is measured from revs, marks and times together, and the class with its doubt", () => {
    const truth = bowler({ revRateRpm: 400, speedMph: 17 });
    const omega = omegaOf(truth);
    const shot: ShotSeen = {
      speed: { kind: "display", speedMph: 14.7, atFt: 60, withinMph: 0.1 },
      turns: { turns: 1, seconds: 9 / 60, withinSeconds: 1 / 60 },
      marks: followed(omega, QUARTER_TURN),
      known: null,
    };
    const seen: BowlerSeen = { bowler: bowler(), ball, pattern: null, camera: camera(), shots: [shot, shot, shot] };
    const measured = measureBowler(seen);
    expect(measured.revRateRpm.mean.value).toBeCloseTo(400, 6);
    expect(measured.axisRotationDeg.mean.value).toBeCloseTo(45, 6);
    expect(measured.speedMph.from).toBe("measured");
    expect(measured.classesPossible).toContain(measured.speedClass);
    expect(measured.revRateRpm.spread).toBe(0);
    const nothing = measureBowler({ ...seen, shots: [{ speed: null, turns: null, marks: null, known: null }] });
    expect(nothing.speedMph).toEqual({ mean: { value: 17.5, low: 17.5, high: 17.5 }, spread: null, shots: 0, from: "taken" });
    expect(() => measureBowler({ ...seen, shots: [shot, { ...shot, marks: [{ seconds: 0, right: 2, up: 0 }] }] })).toThrow(
      /shots\.1\.marks/,
    );
  });
});
