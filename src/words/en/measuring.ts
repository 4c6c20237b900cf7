import { fixed } from "../figures.ts";

/** Words of readings, profiles and gauge studies. */
export const PROFILE = {
  title: "Profile",
  description: (name: string, ra: string, cutoff: string) =>
    `${name}: roughness profile with its mean line; Ra ${ra} µm, cut-off ${cutoff} mm.`,
  cutoffBy: { stated: "as stated", table: "by the standard's table", length: "the longest that the profile allows" },
  evaluated: (cutoff: number, by: string, lengths: number, evaluation: number) =>
    `cut-off ${fixed(cutoff, 2)} mm (${by}), ${lengths} sampling ${lengths === 1 ? "length" : "lengths"}, ${fixed(evaluation, 2)} mm evaluated`,
  short: (cutoff: number, evaluation: number) => `cut-off ${fixed(cutoff, 2)} mm, ${fixed(evaluation, 2)} mm evaluated`,
  points: (count: number, missing: number) => `${count} points${missing > 0 ? `, ${missing} not measured` : ""}`,
  /** What the byte sum of a file was taken modulo. */
  checksum: (modulo: number) =>
    modulo === 65536 ? "checksum fits, modulo 65536 as in ISO 5436-2" : `checksum fits, modulo ${modulo} where ISO 5436-2 has 65536`,
  areal: "an area, no profile: figures about its mean height, unfiltered",
  height: "height, µm",
  distance: "distance, mm",
  meanLine: "mean line",
  evaluation: "evaluated",
  effective: (um: number) => `as the plan takes it: ${fixed(um, 2)} µm effective`,
} as const;

export const GAUGE = {
  range: "Range method",
  anova: "Analysis of variance",
  rows: { ev: "repeatability", av: "between people", grr: "both together", pv: "between parts" },
  columns: { sd: "spread", share: "% of all" },
  distinct: (count: number) => `Can tell apart ${count} ${count === 1 ? "kind" : "kinds"} of part.`,
  interaction: (f: number | null, pooled: boolean) =>
    f === null
      ? "No interaction can be had."
      : `Interaction of people and parts: F ${fixed(f, 3)}${pooled ? ", no more than chance: counted with repeatability" : ""}.`,
  verdict: (percent: number) =>
    percent < 10
      ? "Good enough for every use."
      : percent <= 30
        ? "Usable, with care: tell people apart or average several readings."
        : "Not good enough: the tester or its use hides the differences between parts.",
  chart: (mean: number, lower: number, upper: number) =>
    `Reference piece: mean ${fixed(mean, 2)}, limits ${fixed(lower, 2)} to ${fixed(upper, 2)}.`,
  outside: (places: readonly number[]) =>
    places.length === 0
      ? "Every reading within the limits."
      : `Outside: reading ${places.map((place) => place + 1).join(", ")}. Look for the cause before the next ball.`,
  tooLargeForRange: "The range method's tables do not reach this study.",
} as const;

export const READINGS = {
  verdict: {
    even: "The sides agree.",
    uneven: "The sides do not agree.",
    cannotTell: "Too few readings to tell whether the sides agree: take more on each.",
  },
  mean: (um: number, target: number) => `All sides: ${fixed(um, 2)} µm effective; wanted ${fixed(target, 2)}.`,
  spread: (between: number, most: number, within: number) =>
    `Sides differ by a factor of about ${fixed(Math.exp(between), 2)} (at most ${fixed(Math.exp(most), 2)}); readings on one side by ${fixed(Math.exp(within), 2)}.`,
  stands: { met: "as wanted", tooDull: "too dull", tooSmooth: "too smooth" },
  backTo: (side: string, seconds: number) => `Go back to ${side} first, about ${fixed(seconds, 0)} s with the last pad.`,
  columns: { side: "side", ra: "Ra µm eff.", range: "range", stands: "stands", more: "more, s" },
  chartTitle: "Readings by side",
  chartDescription: (sides: string) => `Effective roughness by side with 95 % ranges, the wanted one as a line: ${sides}.`,
  wanted: "wanted",
} as const;
