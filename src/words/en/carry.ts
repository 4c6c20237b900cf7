import type { Change, Explanation, LeaveMeaning } from "#engine/pins/explain";
import type { PinsLeft } from "#engine/planning/plan";
import { boards, degrees, fixed } from "../figures.ts";

/** What the pictures and reports of the pins say. */
export const CARRY = {
  chartTitle: "Strikes by where and how steeply the ball comes in",
  chartNote: "lines: strikes in 100 · dots: where this bowler's shots come in",
  chartDescription: (best: string, hits: number) =>
    `Strike chance over board and entry angle at the pins, as contours. ${best} ${hits === 0 ? "" : `${hits} shots of the bowler are drawn as dots.`}`,
  bestHit: (inHundred: number, board: number, entryDeg: number) =>
    `Best: ${fixed(inHundred, 0)} in 100 on board ${fixed(board, 1)} at ${degrees(entryDeg)}.`,
  boardAxis: (side: "right" | "left") => `board at the pins, counted from the ${side}`,
  entryAxis: "entry angle, deg",
  high: "high",
  light: "light",
  leavesTitle: "What is left standing",
  leavesDescription: (rows: readonly string[]) => `The likeliest leaves, pins seen from above. ${rows.join(" ")}`,
  leaveRow: (leave: string, inHundred: number) => `${leave}: ${fixed(inHundred, 1)} in 100.`,
  share: (inHundred: number) => (inHundred < 0.95 ? fixed(inHundred, 1) : fixed(inHundred, 0)),
  strike: "strike",
  other: "others",
  hit: (board: number, entryDeg: number) => `board ${fixed(board, 1)} at ${degrees(entryDeg)}`,
  chance: (value: number, low: number, high: number) =>
    `strikes ${fixed(100 * value, 0)} times in 100 (${fixed(100 * low, 0)} to ${fixed(100 * high, 0)})`,
  pinsDown: (pins: number) => `${fixed(pins, 1)} pins on the first ball`,
  scattered: (spreadBoards: number, entryDeg: number) => `scattering by ${boards(spreadBoards)} and ${degrees(entryDeg)}`,
  beyond: "Speed or weight lies outside what was simulated (11 to 20 mph, 12 to 16 lb): the nearest is taken.",
  explained: (seen: number) => `What explains the ${fixed(seen, 0)} balls seen`,
  leaves: "left, in 100",
  simulated: (runs: number) =>
    `From ${runs.toLocaleString("en-GB")} simulated racks, fitted to what is published of carry. Levels are uncertain by the range given; no two houses' pins are alike.`,
} as const;

/** One sentence on what the pins do with a finish: strikes, pins, and the likeliest leaves. */
export function pinsText(finish: string, { strike, pinsDown, leaves }: PinsLeft): string {
  const likely = leaves.slice(0, 5).map(({ leave, share }) => `${leave} (${CARRY.share(100 * share)})`);
  const left = likely.length === 0 ? "" : `; left most often, in 100: ${likely.join(", ")}`;
  return `${finish}: ${fixed(100 * strike, 0)} strikes in 100, ${CARRY.pinsDown(pinsDown)}${left}.`;
}

/** How many of the likeliest leaves are told in words. */
export const LEAVES_IN_WORDS = 4;

const SIDE_WORDS: Readonly<Record<Explanation["lies"], string>> = {
  light: "The ball comes in light",
  high: "The ball comes in high",
  there: "The ball comes in where it should",
};

const CHANGE_WORDS: Readonly<Record<Change["change"], string>> = {
  boardHigher: "a board higher",
  boardLighter: "a board lighter",
  steeper: "a degree steeper",
  flatter: "a degree flatter",
};

/** How a technician moves the hit: by line and by surface (common practice). */
const CHANGE_ADVICE: Readonly<Record<Change["change"], string>> = {
  boardHigher: "move feet and target a little towards the outside, or let the ball hook earlier",
  boardLighter: "move feet and target a little towards the middle, or let the ball hook later",
  steeper: "a later, sharper turn: a smoother surface if the ball has stopped slipping, or more angle across the lane",
  flatter: "an earlier, smoother turn: a duller surface, or less angle across the lane",
};

export function liesText({ lies, sure }: Explanation): string {
  return `${SIDE_WORDS[lies]} (${fixed(100 * sure, 0)} in 100).`;
}

export function explainedText({ board, entryDeg, strike }: Explanation): string {
  return `Its mean hit: board ${fixed(board.value, 1)} (${fixed(board.low, 1)} to ${fixed(board.high, 1)}) at ${degrees(entryDeg.value)} (${fixed(entryDeg.low, 1)} to ${fixed(entryDeg.high, 1)}); so thrown it ${CARRY.chance(strike.value, strike.low, strike.high)}.`;
}

const WORTH_A_CHANGE = 0.02;

/** What to change, with the gain; nothing where no change gains two strikes in a hundred. */
export function changesText(changes: readonly Change[]): readonly string[] {
  const worth = changes.filter(({ gain }) => gain >= WORTH_A_CHANGE);
  if (worth.length === 0) return ["No change of where it comes in gains two strikes in a hundred: what is left is the pins' own chance."];
  return worth.map(
    ({ change, gain }) => `${capital(CHANGE_WORDS[change])} gains ${fixed(100 * gain, 0)} in 100: ${CHANGE_ADVICE[change]}.`,
  );
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Words of the trade for leaves, as a right-hander sees them (common practice, no source). */
const LEAVE_WORDS: Readonly<Record<string, string>> = {
  "10": "corner pin",
  "7": "corner pin on the far side",
  "2-4-5-8": "bucket",
  "3-5-6-9": "bucket",
  "7-10": "both corner pins",
  "4-6-7-10": "big four",
  "4-6-7-9-10": "Greek church",
  "3-10": "baby split",
  "2-7": "baby split",
  "5-7": "split behind the head pin",
  "8-10": "split in the back row",
};

const NOTABLE_BOARDS = 0.5;
const NOTABLE_DEGREES = 0.6;

/** A leave and what it tells: "10, corner pin: arrives light and flat". */
export function leaveMeaningText(leave: string, meaning: LeaveMeaning | null): string {
  const named = LEAVE_WORDS[leave] === undefined ? leave : `${leave}, ${LEAVE_WORDS[leave]}`;
  if (meaning === null) return named;
  const { boardsHigh, degreesSteep } = meaning;
  const words = [
    ...(boardsHigh > NOTABLE_BOARDS ? ["high"] : boardsHigh < -NOTABLE_BOARDS ? ["light"] : []),
    ...(degreesSteep > NOTABLE_DEGREES ? ["steep"] : degreesSteep < -NOTABLE_DEGREES ? ["flat"] : []),
  ];
  return words.length === 0 ? `${named}: left by good hits too` : `${named}: arrives ${words.join(" and ")}`;
}
