import { TYPICAL_BALL } from "#engine/ball/typical";
import { TYPICAL_SPREAD } from "#engine/delivery/words";
import { studentT95 } from "#engine/learning/delivery/shots";
import { launchSpeed, type SpeedSeen } from "#engine/learning/delivery/speed";
import type { Fact } from "../fact.ts";

const ground = (revRateRpm: number) =>
  ({
    bowler: { name: "", hand: "right", speedMph: 17.5, revRateRpm, axisRotationDeg: 45, axisTiltDeg: 14, spread: TYPICAL_SPREAD },
    ball: { ...TYPICAL_BALL, cover: "hybrid", finish: { number: 2000, polished: false } },
    pattern: { kind: "named", id: "medium-41" },
  }) as const;

const aboveMean = (seconds: number, meanMph: number): number => {
  const seen: SpeedSeen = { kind: "timed", fromFt: 0, toFt: 60, seconds, withinSeconds: 0 };
  return launchSpeed(seen, ground(400)).value - meanMph;
};

const belowLaunch = (displayMph: number, revRateRpm: number): number =>
  launchSpeed({ kind: "display", speedMph: displayMph, atFt: 60, withinMph: 0 }, ground(revRateRpm)).value - displayMph;

const fact = (
  says: string,
  source: string,
  provenance: Fact["provenance"],
  known: Fact["known"],
  predict: () => number,
  within = 0,
): Fact => ({
  topic: "Measuring a delivery",
  says,
  source,
  provenance,
  unit: provenance === "computed" ? "1" : "mph",
  known,
  within,
  predict,
});

const TRACKED = "tracked shots lose 1.9–3.2 mph at 300–520 rpm, to 3.8 at low revs";

/** A mean speed over the lane is 60 ft over the time; the ball was faster at the foul line by part of what tracked shots lose. */
export const DELIVERY_FACTS: readonly Fact[] = [
  fact("2.0 s to the head pin (20.45 mph on the mean): launch above the mean", TRACKED, "published", [0.5, 3.2], () =>
    aboveMean(2, 20.4545),
  ),
  fact("2.4 s to the head pin (17.05 mph on the mean): launch above the mean", TRACKED, "published", [0.5, 3.2], () =>
    aboveMean(2.4, 17.0455),
  ),
  fact("a display of 14.4 mph at 420 rpm: launch above it", TRACKED, "published", [1.9, 3.2], () => belowLaunch(14.4, 420)),
  fact("a display of 15.4 mph at 297 rpm: launch above it", TRACKED, "published", [1.9, 3.8], () => belowLaunch(15.4, 297)),
  fact(
    "Student's t, 95 %, 60 degrees of freedom",
    "NIST/SEMATECH e-Handbook 1.3.6.7.2: 2.000",
    "computed",
    2.0,
    () => studentT95(60),
    0.001,
  ),
  fact(
    "Student's t, 95 %, 120 degrees of freedom",
    "NIST/SEMATECH e-Handbook 1.3.6.7.2: 1.980",
    "computed",
    1.98,
    () => studentT95(120),
    0.001,
  ),
];
