import type { Shot } from "#engine/motion/shot";
import type { BandFigure, BandRange, ShotBand } from "#engine/planning/shotBand";
import { boards, degrees, feet, fixed, launchAngle, metresPerSecond, mph } from "../figures.ts";

/** Column headings of the samples of a shot: what, and in what unit. */
export const SAMPLE_COLUMNS = {
  at: ["at", "ft"],
  time: ["time", "s"],
  board: ["board", ""],
  entry: ["angle", "deg"],
  speed: ["speed", "mph"],
  spin: ["turning", "rpm"],
  off: ["", ""],
} as const;

export const OFF_LANE = "off the lane";
export const SHOT_DEFAULTS = "Not in the job file, so taken as usual";

/** What happened, a line each. */
export function shotLines({ phases, gutter, flare, energy, reachedPins, course }: Shot): string[] {
  const { hookStartFt, rollStartFt, breakpoint, slipAtPinsMps, speedAtPinsMph, timeToPinsS } = phases;
  return [
    hookStartFt === null ? "It never starts to hook." : `Hook starts at ${feet(hookStartFt)}.`,
    rollStartFt === null ? "It does not come to roll before the pins." : `It rolls from ${feet(rollStartFt)} on.`,
    `Breakpoint: board ${fixed(breakpoint.board, 1)} at ${feet(breakpoint.yFt)}.`,
    gutter === null ? null : `It leaves the lane on the ${gutter.side} at ${feet(gutter.yFt)}; what follows is mechanics only.`,
    reachedPins && course.boardAtPins !== null && course.entryAngleDeg !== null
      ? `At the pins: board ${fixed(course.boardAtPins, 2)}, entry ${degrees(course.entryAngleDeg)}.`
      : "It hits no pin.",
    speedAtPinsMph === null || timeToPinsS === null || slipAtPinsMps === null
      ? null
      : `There it goes ${mph(speedAtPinsMph)}, ${fixed(timeToPinsS, 2)} s after the start, slipping at ${metresPerSecond(slipAtPinsMps)}.`,
    `Flare to 45 ft ${fixed(flare.to45FtIn, 1)} in, to the pins ${fixed(flare.toPinsIn, 1)} in.`,
    `Energy: ${fixed(energy.startJ, 1)} J at the start, ${fixed(energy.slidingLossJ, 1)} J lost by sliding, ${fixed(energy.rollingLossJ, 1)} J by rolling.`,
  ].filter((line) => line !== null);
}

export function shotHeading(ball: string, bowler: string, laydownBoard: number, launchAngleDeg: number): string {
  return `${ball}, ${bowler}: laid down on board ${fixed(laydownBoard, 1)}, launched ${launchAngle(launchAngleDeg)}`;
}

export const modelText = (motion: "full" | "averaged", hookBoards: number | null): string =>
  `${motion === "full" ? "Full model" : "Model averaged over the core's turning"}${hookBoards === null ? "" : `; ${boards(hookBoards)} of hook from the breakpoint`}.`;

const BAND_WORDS: Readonly<Record<BandFigure, (from: string, to: string) => string>> = {
  boardAtPins: (from, to) => `board ${from} to ${to} at the pins`,
  entryAngleDeg: (from, to) => `entry ${from} to ${to} deg`,
  hookStartFt: (from, to) => `hook from ${from} to ${to} ft`,
  breakpointBoard: (from, to) => `breakpoint on board ${from} to ${to}`,
  breakpointFt: (from, to) => `at ${from} to ${to} ft`,
  speedAtPinsMph: (from, to) => `${from} to ${to} mph there`,
};

/** What is not known of cover, oil and hand, as a range of each figure. */
export function bandText({ worlds, ...ranges }: ShotBand): string {
  const told = (Object.entries(ranges) as [BandFigure, BandRange][]).flatMap(([id, range]) =>
    range === null ? [] : [BAND_WORDS[id](fixed(range.low, 1), fixed(range.high, 1))],
  );
  return told.length === 0
    ? `The ${worlds} worlds do not agree on whether it gets to the pins.`
    : `Nobody has measured friction and oil to better than this: nine of ten of the ${worlds} worlds have ${told.join(", ")}.`;
}
