import type { Evenness, ThinSpot } from "#engine/surface/padWork/evenness";
import type { FlatSpot } from "#engine/surface/padWork/flatSpot";
import type { SideCount, SideId } from "#engine/surface/padWork/sides";
import { fixed } from "../figures.ts";

/** Sides as they lie when the grip looks at you and the thumb is below. */
export const SIDE_NAMES: Readonly<Record<SideId, string>> = {
  grip: "grip",
  opposite: "opposite the grip",
  left: "left of the grip",
  right: "right of the grip",
  fingers: "above the fingers",
  thumb: "below the thumb",
};

/** Beside a mark on the picture. */
export const SIDE_LABELS: Readonly<Record<SideId, string>> = {
  grip: "grip",
  opposite: "opposite",
  left: "left",
  right: "right",
  fingers: "fingers",
  thumb: "thumb",
};

const percent = (share: number) => `${fixed(100 * share, 0)} %`;

/** Words of the pad work: report and picture. */
export const PAD_WORK = {
  title: "Pad work over the ball",
  evenness: ({ cv, least, most, underHalf }: Evenness) =>
    `Varies by ${percent(cv)} of the mean; the thinnest spot got ${fixed(least, 2)} of it, the fullest ${fixed(most, 2)}; ${percent(underHalf)} of the ball got less than half.`,
  crossing: ({ crossing }: Evenness) => `Scratches cross by ${fixed(crossing, 2)} (0 all one way, 1 no way preferred).`,
  thin: "Thin spots",
  noThin: "No spot got less than three quarters of the mean.",
  spot: ({ side, awayDeg, overMean }: ThinSpot) =>
    `${fixed(overMean, 2)} of the mean, ${fixed(awayDeg, 0)}° from the middle: ${SIDE_NAMES[side]}`,
  columns: {
    side: "side",
    seconds: "seconds",
    share: "of all work",
    without: "if skipped",
    varies: "varies by",
    least: "thinnest",
    crossing: "cross",
  },
  compared: "The same stages in the same time on",
  onSides: (sides: SideCount, { cv, least, crossing }: Evenness) =>
    `${sides} sides: varies by ${percent(cv)}, thinnest ${fixed(least, 2)} of the mean, scratches cross ${fixed(crossing, 2)}`,
  depth: ({ deepestUm, leastUm }: FlatSpot) => `Taken off: ${fixed(leastUm, 1)} to ${fixed(deepestUm, 1)} µm.`,
  outOfRound: ({ outOfRoundUm, outOfRoundIn, ofAllowed }: FlatSpot) =>
    `Out of round by ${fixed(outOfRoundUm, 1)} µm (${fixed(outOfRoundIn, 5)} in), ${percent(ofAllowed)} of the 0.010 in allowed (USBC, from memory), for a ball that was round before.`,
  flatRisk: "Caution: this work alone takes the ball more than half of the way out of round. Keep the pad moving, or spread the work.",
  flatOver: "Caution: this work alone takes the ball out of round by more than is allowed. Do not do it; measure the ball.",
  usual: (fields: string) => `Taken as usual, because the file does not say: ${fields}.`,
  estimate: (low: number, high: number) =>
    `Depths are estimates: between ${fixed(low, 1)} and ${fixed(high, 1)} times these. Evenness does not hang on them. Measure after the work.`,
  hemisphereGrip: "grip side",
  hemisphereOpposite: "opposite side",
  textureKey: "grains: denser where the pad worked more",
  contourKey: "lines: work over the mean, dashed below it",
  worked: (label: string, seconds: number) => `${label} ${fixed(seconds, 0)} s`,
  notWorked: (label: string) => `${label}, not worked`,
  axisKey: "cross in a ring: middle of a side, with its seconds",
  summary: ({ cv, crossing }: Evenness) => `varies by ${percent(cv)} · scratches cross ${fixed(crossing, 2)}`,
  noWork: "No work was done.",
  description: ({ cv, least, most, crossing }: Evenness) =>
    `Work over the ball seen from the grip and from the opposite side. It varies by ${percent(cv)} of the mean, from ${fixed(least, 2)} to ${fixed(most, 2)}; scratches cross by ${fixed(crossing, 2)}.`,
} as const;
