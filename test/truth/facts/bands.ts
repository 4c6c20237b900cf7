import { assume } from "#engine/assumptions";
import type { CoverId } from "#engine/ball/ball";
import { TYPICAL_BALL } from "#engine/ball/typical";
import { contactOf, frictionCoefficient } from "#engine/contact/friction";
import type { Bowler, Line } from "#engine/delivery/bowler";
import { spinRatio } from "#engine/delivery/style";
import { filmOfPattern } from "#engine/lane/film";
import { type AveragedRun, emptyRun } from "#engine/motion/averaged";
import { averagedBall, frictionOnLane } from "#engine/motion/ground";
import { STYLES, type StyleId } from "#engine/planning/situations";
import { entryDegOf, throwBall } from "#engine/planning/thrown";
import { effectiveRaUm, parseFinish } from "#engine/surface/finish";
import { MPH } from "#engine/units";
import type { Fact } from "../fact.ts";

const TRACKED = "tracked shots: 2.0–2.6 s to the pins; loss 1.9–3.2 mph at 300–520 rpm, to 3.8 at low revs";

function shot(bowler: Bowler, cover: CoverId, finish: string, pattern: string, line: Line): AveragedRun {
  const ball = { ...TYPICAL_BALL, cover, finish: parseFinish(finish) };
  const run = emptyRun();
  const friction = frictionOnLane(filmOfPattern({ kind: "named", id: pattern }), ball, effectiveRaUm(ball.finish), assume());
  throwBall({ bowler, ball: averagedBall(ball, 0.003), friction }, line.laydownBoard, line.launchAngleDeg, run);
  return run;
}

const LINE: Line = { laydownBoard: 20, launchAngleDeg: 1.5 };
const onMedium = (style: StyleId) => shot(STYLES[style], "hybrid", "2000", "medium-41", LINE);
const lost = (style: StyleId) => {
  const run = onMedium(style);
  return STYLES[style].speedMph - Math.hypot(run.vx, run.vy) / MPH;
};

const TRACKED_STYLES: readonly StyleId[] = ["matched", "revDominant", "elite"];

const styles: readonly (readonly [number, number, number])[] = [
  [220, 19, 0.294],
  [325, 18, 0.459],
  [416, 17.9, 0.591],
  [520, 19, 0.696],
];

export const BANDS: readonly Fact[] = [
  ...(["matched", "revDominant", "elite", "speedDominant"] as const).map(
    (style): Fact => ({
      topic: "measured bands",
      says: `${style} on medium-41: time to the pins`,
      source: TRACKED,
      provenance: "published",
      unit: "s",
      known: [2, 2.6],
      within: 0,
      predict: () => onMedium(style).t,
    }),
  ),
  ...TRACKED_STYLES.map(
    (style): Fact => ({
      topic: "measured bands",
      says: `${style} on medium-41: speed lost`,
      source: TRACKED,
      provenance: "published",
      unit: "mph",
      known: [1.9, 3.2],
      within: 0,
      predict: () => lost(style),
    }),
  ),
  {
    topic: "measured bands",
    says: "speedDominant on medium-41: speed lost at low revs",
    source: TRACKED,
    provenance: "published",
    unit: "mph",
    known: [1.9, 3.8],
    within: 0,
    predict: () => lost("speedDominant"),
  },
  ...(["solid", "hybrid", "pearl"] as const).map(
    (cover): Fact => ({
      topic: "measured bands",
      says: `17.9 mph, 416 rpm, 45°, from board 28 at 1.8° outward, ${cover}: entry angle`,
      source: "Ji et al., AIP Advances 15 (2025), by a news report: 4.5–6.5°",
      provenance: "published",
      unit: "deg",
      known: [4.5, 6.5],
      within: 0,
      predict: () =>
        entryDegOf(
          shot({ ...STYLES.matched, speedMph: 17.9, revRateRpm: 416, axisTiltDeg: 0 }, cover, "2000", "medium-41", {
            laydownBoard: 28,
            launchAngleDeg: 1.8,
          }),
        ),
    }),
  ),
  ...(["solid", "hybrid", "pearl"] as const).flatMap((cover): Fact[] => {
    const law = contactOf(cover, effectiveRaUm(parseFinish("2000")), assume());
    const source =
      "friction implied by a robot's measured deceleration: 0.005–0.02 in oil, 0.12–0.25 on dry; textbook pair 0.04 and 0.20 (Frohlich, Am. J. Phys. 72 (2004) 1170)";
    return [
      {
        topic: "friction",
        says: `${cover} at 2000 in 5 µm of oil`,
        source,
        provenance: "computed",
        unit: "1",
        known: [0.005, 0.02],
        within: 0,
        predict: () => frictionCoefficient(law, 5),
      },
      {
        topic: "friction",
        says: `${cover} at 2000 on dry lane`,
        source,
        provenance: "computed",
        unit: "1",
        known: [0.12, 0.25],
        within: 0,
        predict: () => frictionCoefficient(law, 0),
      },
      {
        topic: "friction",
        says: `${cover} on dry lane stays below the approval limit`,
        source: "USBC Equipment Specifications Manual: ≤ 0.32",
        provenance: "published",
        unit: "1",
        known: [0, 0.32],
        within: 0,
        predict: () => frictionCoefficient(law, 0),
      },
    ];
  }),
  ...styles.map(
    ([rpm, mph, ratio]): Fact => ({
      topic: "bowlers",
      says: `${rpm} rpm at ${mph} mph: S = Rω/v`,
      source: "published deliveries, ball of 4.275 in",
      provenance: "computed",
      unit: "1",
      known: ratio,
      within: 1e-3,
      predict: () => spinRatio(mph, rpm, 8.55),
    }),
  ),
];
