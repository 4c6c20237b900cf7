import type { SpeedClass } from "#engine/delivery/style";
import { degrees, fixed, mph } from "../figures.ts";

/** What each number of a delivery is called, and how its figures are written. */
export const DELIVERY_WORDS = {
  speedMph: { name: "Launch speed", figure: mph },
  revRateRpm: { name: "Rev rate", figure: (rpm: number) => `${fixed(rpm, 0)} rpm` },
  axisRotationDeg: { name: "Axis rotation", figure: degrees },
  axisTiltDeg: { name: "Axis tilt", figure: degrees },
} as const;

export const SPEED_CLASS_WORDS: Readonly<Record<SpeedClass, string>> = {
  speedDominant: "speed-dominant",
  matched: "matched",
  revDominant: "rev-dominant",
};

/** What the class means for the surface: the trade's rule, which the plan holds against its computation. */
export const SPEED_CLASS_MEANS: Readonly<Record<SpeedClass, string>> = {
  speedDominant: "The ball is past the oil before it has begun to turn: duller surfaces, 500 to 1000, sometimes 2000 (common practice).",
  matched: "The middle of each cover's range is where to begin (common practice).",
  revDominant: "The ball turns early of itself: smoother surfaces, 3000 and up, polish where it still turns too soon (common practice).",
};

export const DELIVERY = {
  heading: (name: string, shots: number) => `${name}, from ${shots === 1 ? "one shot" : `${shots} shots`}`,
  measured: (value: string, low: string, high: string, shots: number) =>
    `${value}  (${low} to ${high}${shots > 1 ? `, mean of ${shots}` : ""})`,
  taken: (value: string) => `${value}  not measured, taken as usual`,
  spread: (value: string) => `varies by ${value} from shot to shot`,
  spreadHidden: "varies by less than the reading can tell",
  pap: "Positive axis point",
  over: (value: number) => `${fixed(value, 2)} in over`,
  upOrDown: (value: number) => `${fixed(Math.abs(value), 2)} in ${value < 0 ? "down" : "up"}`,
  spin: (value: number, low: number, high: number) =>
    `Spin against speed, Rω/v: ${fixed(value, 2)} (${fixed(low, 2)} to ${fixed(high, 2)})`,
  isClass: (name: string) => `${name}.`,
  couldBe: (names: readonly string[]) => `The reading also allows ${names.join(" or ")}.`,
  jobBowler: "For a job file",
  ends: "Figures in brackets: a frame, a mark or a display more or less; of several shots, the mean's 95 % interval.",
  laneUnknown: "The lane is not in the file: the speed's ends hold light, medium and heavy oil.",
} as const;
