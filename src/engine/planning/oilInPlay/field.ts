import type { Assumed } from "../../assumptions.ts";
import type { Ball, CoverId } from "../../ball/ball.ts";
import { TYPICAL_BALL } from "../../ball/typical.ts";
import type { Bowler } from "../../delivery/bowler.ts";
import { TYPICAL_SPREAD } from "../../delivery/words.ts";
import { normalDeviate, uniformSource } from "../../random.ts";
import type { Finish } from "../../surface/finish.ts";
import type { Limits } from "../question.ts";
import type { Player } from "./player.ts";

/** What others bowl with, and how often: chosen, a league of today. */
const BALLS: readonly { readonly cover: CoverId; readonly finish: Finish; readonly share: number }[] = [
  { cover: "solid", finish: { number: 2000, polished: false }, share: 0.3 },
  { cover: "hybrid", finish: { number: 2000, polished: false }, share: 0.25 },
  { cover: "pearl", finish: { number: 3000, polished: false }, share: 0.2 },
  { cover: "pearl", finish: { number: 4000, polished: true }, share: 0.1 },
  { cover: "urethane", finish: { number: 500, polished: false }, share: 0.1 },
  { cover: "polyester", finish: { number: 3000, polished: true }, share: 0.05 },
];

/** How people differ from one another, standard deviations; scaled by `play.fieldVariety`. */
const VARIETY = { speedMph: 1.4, revRateRpm: 70, axisRotationDeg: 10, axisTiltDeg: 4 };
const MEAN_ROTATION_DEG = 45;
const MEAN_TILT_DEG = 14;

/** Others of whom nothing is known: drawn about the usual league bowler, the same for the same seed. Left-handers come last. */
export function drawnField(
  count: number,
  leftHanders: number,
  shotsAGame: number,
  limits: Limits,
  seed: number,
  a: Assumed,
): readonly Player[] {
  const uniform = uniformSource(seed);
  const about = (mean: number, sd: number, least: number, most: number) =>
    Math.min(most, Math.max(least, mean + a["play.fieldVariety"] * sd * normalDeviate(uniform())));
  return Array.from({ length: count }, (_, i): Player => {
    const bowler: Bowler = {
      name: "",
      hand: i >= count - leftHanders ? "left" : "right",
      speedMph: about(a["play.fieldSpeed"], VARIETY.speedMph, 13, 22),
      revRateRpm: about(a["play.fieldRevs"], VARIETY.revRateRpm, 120, 520),
      axisRotationDeg: about(MEAN_ROTATION_DEG, VARIETY.axisRotationDeg, 15, 80),
      axisTiltDeg: about(MEAN_TILT_DEG, VARIETY.axisTiltDeg, 3, 25),
      spread: TYPICAL_SPREAD,
    };
    return { bowler, ball: ballAt(uniform()), limits, line: null, shotsAGame };
  });
}

function ballAt(share: number): Ball {
  let left = share;
  const found = BALLS.find((ball) => {
    left -= ball.share;
    return left < 0;
  });
  const { cover, finish } = found ?? BALLS[0];
  return { ...TYPICAL_BALL, name: "", cover, finish };
}
