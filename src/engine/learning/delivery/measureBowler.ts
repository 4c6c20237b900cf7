import type { Ball } from "../../ball/ball.ts";
import type { Bowler } from "../../delivery/bowler.ts";
import { type SpeedClass, speedClass, spinRatio } from "../../delivery/style.ts";
import { EngineFault } from "../../fault.ts";
import type { PatternSource } from "../../lane/lane.ts";
import { axisFromMarks, type MarkAt } from "./axis.ts";
import { type Measured, measuredFrom, type ReadOff } from "./measured.ts";
import { type KnownMark, papFromMarks } from "./pap.ts";
import { type OverShots, overShots } from "./shots.ts";
import { launchSpeed, type SpeedSeen } from "./speed.ts";

/** What was seen of one shot; null where that was not looked at. */
export interface ShotSeen {
  readonly speed: SpeedSeen | null;
  /** Turns counted in a time. */
  readonly turns: { readonly turns: number; readonly seconds: number; readonly withinSeconds: number } | null;
  /** One mark in two pictures or more. */
  readonly marks: readonly MarkAt[] | null;
  /** Two marks of known place in one picture. */
  readonly known: readonly [KnownMark, KnownMark] | null;
}

/** Everything a delivery is measured from. `bowler` stands for what no shot tells. */
export interface BowlerSeen {
  readonly bowler: Bowler;
  readonly ball: Ball;
  readonly pattern: PatternSource | null;
  readonly camera: { readonly downDeg: number; readonly launchAngleDeg: number; readonly markWithin: number };
  readonly shots: readonly ShotSeen[];
}

/** A number of the delivery, and how it was come by. */
export interface DeliveryNumber extends OverShots {
  readonly from: "measured" | "taken";
}

export interface BowlerMeasured {
  readonly speedMph: DeliveryNumber;
  readonly revRateRpm: DeliveryNumber;
  readonly axisRotationDeg: DeliveryNumber;
  readonly axisTiltDeg: DeliveryNumber;
  readonly pap: { readonly overIn: OverShots; readonly upIn: OverShots } | null;
  /** Rω/v₀ and its ends, and the class at its value. */
  readonly spinRatio: Measured;
  readonly speedClass: SpeedClass;
  /** The classes that the ends of the ratio reach into. */
  readonly classesPossible: readonly SpeedClass[];
}

/**
 * A bowler's delivery from filmed shots: rev rate, then the axis, then the launch speed, which needs the others to know how the ball slows.
 *
 * @throws EngineFault naming the shot, where a reading is not possible
 */
export function measureBowler(seen: BowlerSeen): BowlerMeasured {
  const { bowler, ball } = seen;
  const shots = seen.shots.map((shot, i) => namingShot(i, () => measureShot(shot, seen)));
  const all = <Key extends keyof ShotMeasured>(key: Key) => shots.flatMap((shot) => shot[key] ?? []);
  const speedMph = numberOf(all("speedMph"), bowler.speedMph);
  const revRateRpm = numberOf(all("revRateRpm"), bowler.revRateRpm);
  const overIn = overShots(all("overIn"));
  const upIn = overShots(all("upIn"));
  const ratio = measuredFrom(
    [speedMph, revRateRpm].map(({ mean }) => ({ value: mean.value, within: (mean.high - mean.low) / 2 })),
    ([speed, revs]) => spinRatio(Math.max(1, speed), Math.max(0, revs), ball.diameterIn),
  );
  return {
    speedMph,
    revRateRpm,
    axisRotationDeg: numberOf(all("axisRotationDeg"), bowler.axisRotationDeg),
    axisTiltDeg: numberOf(all("axisTiltDeg"), bowler.axisTiltDeg),
    pap: overIn && upIn && { overIn, upIn },
    spinRatio: ratio,
    speedClass: speedClass(ratio.value),
    classesPossible: classesBetween(ratio),
  };
}

/** What is wrong with a reading is said of its shot. */
function namingShot<T>(shot: number, measure: () => T): T {
  try {
    return measure();
  } catch (fault) {
    if (!(fault instanceof EngineFault)) throw fault;
    throw new EngineFault(fault.problems.map((problem) => ({ ...problem, path: `shots.${shot}.${problem.path}` })));
  }
}

interface ShotMeasured {
  readonly speedMph: Measured | null;
  readonly revRateRpm: Measured | null;
  readonly axisRotationDeg: Measured | null;
  readonly axisTiltDeg: Measured | null;
  readonly overIn: Measured | null;
  readonly upIn: Measured | null;
}

function measureShot({ speed, turns, marks, known }: ShotSeen, { bowler, ball, pattern, camera }: BowlerSeen): ShotMeasured {
  const view = { ...camera, hand: bowler.hand };
  const counted =
    turns && measuredFrom([{ value: turns.seconds, within: turns.withinSeconds }], ([seconds]) => (60 * turns.turns) / seconds);
  const axis = marks && axisFromMarks(marks, view, counted);
  const revRateRpm = counted ?? axis?.revRateRpm ?? null;
  const delivery: Bowler = {
    ...bowler,
    revRateRpm: revRateRpm?.value ?? bowler.revRateRpm,
    axisRotationDeg: axis?.axisRotationDeg.value ?? bowler.axisRotationDeg,
    axisTiltDeg: axis?.axisTiltDeg.value ?? bowler.axisTiltDeg,
  };
  // Rotation is counted from the ball's direction; the marks lie in the lane's frame, so the launch angle comes off again.
  const pap =
    known &&
    papFromMarks(
      known,
      {
        rotationDeg: readOff(axis?.axisRotationDeg ?? null, bowler.axisRotationDeg, -camera.launchAngleDeg),
        tiltDeg: readOff(axis?.axisTiltDeg ?? null, bowler.axisTiltDeg, 0),
      },
      view,
      ball.diameterIn / 2,
    );
  return {
    speedMph: speed && launchSpeed(speed, { bowler: delivery, ball, pattern }),
    revRateRpm,
    axisRotationDeg: axis?.axisRotationDeg ?? null,
    axisTiltDeg: axis?.axisTiltDeg ?? null,
    overIn: pap?.overIn ?? null,
    upIn: pap?.upIn ?? null,
  };
}

function readOff(measured: Measured | null, taken: number, shift: number): ReadOff {
  if (measured === null) return { value: taken + shift, within: 0 };
  return { value: measured.value + shift, within: (measured.high - measured.low) / 2 };
}

function numberOf(seen: readonly Measured[], taken: number): DeliveryNumber {
  const over = overShots(seen);
  return over === null
    ? { mean: { value: taken, low: taken, high: taken }, spread: null, shots: 0, from: "taken" }
    : { ...over, from: "measured" };
}

const CLASSES: readonly SpeedClass[] = ["speedDominant", "matched", "revDominant"];

function classesBetween({ low, high }: Measured): readonly SpeedClass[] {
  return CLASSES.slice(CLASSES.indexOf(speedClass(low)), CLASSES.indexOf(speedClass(high)) + 1);
}
