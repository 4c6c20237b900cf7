import type { Bowler } from "#engine/delivery/bowler";
import { fixed, launchAngle, micrometres, millilitres } from "../figures.ts";

/** Headings and short words of the plan's report. */
export const HEADINGS = {
  today: "today",
  pick: "pick",
  candidates: "Each finish on its own line",
  onTodaysLine: "Each finish on the line that is played today",
  todaysLine: "today's line",
  pins: "At the pins, on the lane as found",
  pickLine: "The pick",
  messages: "What to know",
  reasons: "Why",
  agree: "Rules of thumb that agree",
  disagree: "Rules of thumb that disagree",
  assumptions: "Assumed, not measured",
  defaults: "Not in the job file, so taken as usual",
  cautions: "At the bench",
  customer: "For the customer",
} as const;

/** Column headings of the table of candidates: what, and in what unit. */
export const COLUMNS = {
  finish: ["finish", ""],
  laydown: ["lay", "board"],
  launch: ["launch", "deg"],
  hook: ["hook", "ft"],
  roll: ["roll", "ft"],
  entry: ["entry", "deg"],
  slip: ["slip", "m/s"],
  speed: ["speed", "mph"],
  chance: ["strikes", "in 100"],
  pins: ["pins", "of 10"],
  lossLaunch: ["lost", "½ deg"],
  lossSpeed: ["lost", "mph"],
  lossBoard: ["lost", "board"],
  change: ["hits", "board"],
  held: ["strikes", "in 100"],
  feet: ["feet", "board"],
  target: ["target", "board"],
} as const;

export const TABLE_NOTES = [
  "> the pick · * today's finish",
  "lay, launch: the line · hook, roll: ft from the foul line · entry, slip, speed: at the pins",
  "strikes: among 100 first balls over the session, and the range that holds nine worlds of ten",
  "lost: strikes in 100 when the middle of the shots is off by half a degree, 1 mph or a board",
  "–: there is none",
] as const;

export const TODAYS_LINE_NOTES = [
  "hits: boards higher (+) or lighter (−) than today's finish · strikes: with that line held through the session",
  "feet, target: the move to the finish's own line, boards inward (+) or outward (−), target at the arrows",
] as const;

/** Beside a line that somebody named: it is the same in every world, where a finish's own line is found anew. */
export const NAMED_LINE_NOTE =
  "the line that was named is held in every world that the lanes may be, right for it or not; an own line is found anew in each";

const SURE_TEXTS = {
  sure: "Sure",
  likely: "Likely, not sure",
  unsure: "Not sure: watch a shot",
} as const;

export function sureText(sure: keyof typeof SURE_TEXTS, share: number, worlds: number): string {
  return `${SURE_TEXTS[sure]} (at least ${fixed(100 * share, 0)} of 100 worlds that fit what is known agree; ${worlds} were computed).`;
}

export function plateauText(plateau: readonly string[], pick: string): string {
  if (plateau.length === 1) return `${pick}; the others are behind it.`;
  return `${plateau[0]} to ${plateau[plateau.length - 1]} are too close to call; ${pick}.`;
}

/** How long each finish stays within half a step of what was put on; 200 stands for 200 or more. */
export function keepsText(
  finishes: readonly { readonly finish: string; readonly value: number; readonly low: number; readonly high: number }[],
): string {
  const games = (count: number) => (count >= 200 ? "200+" : fixed(count, 0));
  return `Half a step of the ladder off after about – ${finishes.map(({ finish, value, low, high }) => `${finish}: ${games(value)} games (${games(low)}–${games(high)})`).join("; ")}.`;
}

const CLIFF_TEXTS = {
  smoother: "It falls off faster on the smoother side: if in doubt, duller.",
  duller: "It falls off faster on the duller side: if in doubt, smoother.",
} as const;

export function cliffText(cliff: keyof typeof CLIFF_TEXTS | null): string {
  return cliff === null ? "Neither side falls off faster than the other." : CLIFF_TEXTS[cliff];
}

export function lossText(points: number): string {
  return points < 0.05 ? "best" : `−${fixed(points, 1)}`;
}

export const LOSS_NOTE = "below each: strikes fewer among 100 first balls; [ ] what is too close to call, > < the pick";

export function todaysLineText(finish: string | null, line: string): string {
  return finish === null ? "Today: finish not known." : `Today: ${finish}, ${line}.`;
}

export const NO_LINE = "no sensible line";

export function lineText(laydownBoard: number, launchAngleDeg: number): string {
  return `laid down on board ${fixed(laydownBoard, 1)}, launched ${launchAngle(launchAngleDeg)}`;
}

/** Which hand bowls; a backup ball is planned as the other one's hook. */
export function handText({ hand, isBackup }: Bowler): string {
  return isBackup ? `backup ball, boards from the ${hand} edge` : `${hand} hand`;
}

const NO_OIL_ML = 0.05;

/** The oil as the engine finds it, and what an oil sheet says where it says something else. */
export function oilText(
  oil: { lengthFt: number; volumeMl: number; meanUm: number; ratio: number | null },
  statedRatio: number | null,
): string {
  if (oil.volumeMl < NO_OIL_ML) return "Oil: none to speak of";
  const ratio = oil.ratio === null ? "outside dry" : `middle to outside ${fixed(oil.ratio, 1)} : 1`;
  const stated = statedRatio === null ? "" : ` (the sheet states ${fixed(statedRatio, 1)} : 1)`;
  return `Oil: ${millilitres(oil.volumeMl)} to ${fixed(oil.lengthFt, 0)} ft, mean film ${micrometres(oil.meanUm)}, ${ratio}${stated}`;
}
