import type { BallJob, CoverId } from "#engine/ball/ball";
import type { Hand } from "#engine/delivery/bowler";
import type { PatternId } from "#engine/lane/patterns";
import { launchAngle } from "../figures.ts";

/** English text of the page's frame: what every room shows. */
export const FRAME = {
  product: "Gritwright",
  motto: "what a ball's surface will do on the lane",
  paper: "Paper",
  bench: "Bench, dark",
  variant: "Look",
  skip: "Skip to the answer",
  notFound: (path: string) => `There is no room at ${path}.`,
  toToday: "Go to today",
  failed: "Something of ours broke. What you typed is kept; load the page again to go on.",
  loadAgain: "Load the page again",
  fileMissing: "a file of the page could not be loaded",
} as const;

export const COVER_WORDS: Readonly<Record<CoverId, string>> = {
  polyester: "polyester",
  urethane: "urethane",
  solid: "reactive solid",
  hybrid: "reactive hybrid",
  pearl: "reactive pearl",
};

/** Beside what the cover is, where nobody knows it. */
export const COVER_UNKNOWN = "cover not known";

export const BALL_JOB_WORDS: Readonly<Record<BallJob, string>> = {
  strike: "strike ball",
  control: "control ball",
  spare: "spare ball",
  house: "house ball",
};

export const HAND_WORDS: Readonly<Record<Hand, string>> = { right: "right", left: "left" };
export const SPEED_WORD_TEXT = { slow: "slow", medium: "medium", fast: "fast" } as const;
export const HOOK_WORD_TEXT = { little: "a little", medium: "a good deal", much: "very much" } as const;

/** Over which arrow; nothing where nobody said. */
export const ARROW_WORDS = { "": "not known", "1st": "1st", "2nd": "2nd", "3rd": "3rd", "4th": "4th", "farther in": "farther in" } as const;

/** Named patterns as the form offers them; a test holds these keys to the engine's registry. */
export const PATTERN_WORDS: Readonly<Record<PatternId, string>> = {
  "house-40": "house, 40 ft",
  "light-38": "light, 38 ft",
  "medium-41": "medium, 41 ft",
  "heavy-44": "heavy and flat, 44 ft",
};

/** The form of the finish plan. */
export const PLAN_FORM = {
  title: "What is known",
  demonstration: "An invented example. Change anything.",
  bowler: "Bowler",
  ball: "Ball",
  lane: "Lane",
  line: "Today's line",
  limits: "Limits and candidates",
  delivery: "Delivery is known as",
  numbers: "numbers",
  words: "words",
  name: "Name",
  hand: "Bowls with the",
  speed: "Launch speed",
  revs: "Rev rate",
  rotation: "Axis rotation",
  tilt: "Axis tilt",
  speedWord: "How fast",
  plays: "Plays over which arrow",
  hookWord: "How much it hooks",
  cover: "Cover",
  job: "Job of the ball",
  finish: "Finish today",
  finishHelp: "2000, or 1000 + polish",
  ra: "Ra reading, if taken",
  mass: "Mass",
  rg: "RG",
  differential: "Differential",
  intermediate: "Intermediate differential",
  pinToPap: "Pin to PAP",
  core: "Mass and core",
  pattern: "Pattern",
  patternFromFile: "as in the opened file",
  played: "Shots already played",
  laydown: "Laydown board",
  launch: "Launch angle, outward",
  laydownLeast: "Laydown board, least",
  laydownMost: "Laydown board, most",
  launchLeast: "Launch angle, least",
  launchMost: "Launch angle, most",
  breakpointLeast: "Breakpoint board, least",
  breakpointMost: "Breakpoint board, most",
  candidates: "Finishes to compare",
  candidatesHelp: "Separated by commas; empty: the cover's usual range",
  reason: "Reason for a finish outside the usual range",
  lineHelp: "Empty: the best line of today's finish",
  taken: (value: string) => `${value} taken`,
  allowed: (value: string, allowed: string) =>
    value === "" ? `Needed here: ${allowed}.` : `“${value}” does not fit. Allowed: ${allowed}.`,
  drag: (label: string) => `${label}: drag`,
  withUnit: (value: number, unit: string) => `${value}${unit === "" ? "" : ` ${unit}`}`,
  oilScale: "Oil on the lane",
  percentOfPattern: (share: number) => `${Math.round(100 * share)} % of the pattern`,
  undo: "Undo",
  undoHint: "Takes back the last change",
  startAgain: "Back to the example",
  open: "Open a job file",
  save: "Save the job file",
  unreadable: "That file cannot be read as a job file; what stood in the form is kept.",
  tooLarge: "That file is larger than 2 MB; a job file is a few kilobytes. What stood in the form is kept.",
  noMapping: "It holds no mapping of fields.",
  elsewhere: "Not in the form:",
} as const;

/** The answer of the finish plan. */
export const PLAN_ANSWER = {
  title: "Finish plan",
  refused: "There is no new answer yet: something in the form does not fit. The answer below is to what stood there before.",
  refusedFirst: "There is no answer yet: something in the form does not fit.",
  stopped: "Stopped. What was found so far stands below.",
  failed: (reason: string) => `The computation broke off: ${reason}`,
  stages: {
    sketch: "First look, fresh lane only",
    session: "Over a session of play",
    draws: "How sure: trying other worlds",
    done: "Finished",
  },
  stop: "Stop",
  goOn: "Compute again",
  progress: "Progress of the plan",
  takeThis: (finish: string) => `Take ${finish}.`,
  noPick: "No finish is picked.",
  plateau: (finishes: readonly string[]) => (finishes.length < 2 ? "The others are behind it." : `${listed(finishes)}: too close to call.`),
  cliff: {
    smoother: "It falls off towards smooth: if in doubt, duller.",
    duller: "It falls off towards dull: if in doubt, smoother.",
  },
  sure: { sure: "sure", likely: "likely", unsure: "unsure" },
  sureSentence: {
    sure: "We are sure of it.",
    likely: "It is likely right.",
    unsure: "We are not sure; watch a shot.",
  },
  sureShare: (percent: number, worlds: number) =>
    `At least ${percent} of 100 worlds that fit what is known agree; ${worlds} were computed.`,
  notYetSure: "how sure is still being worked out",
  metric: {
    strikeChance: "Strike chance",
    expectedPins: "Pins, first ball",
    leastChange: "Strike chance, line held",
    leastHook: "Strike chance",
  },
  metricNote: {
    strikeChance: "The chance is that of a strike with this bowler's spread.",
    expectedPins: "Strikes are too rare here to tell finishes apart, so pins down with the first ball are counted.",
    leastChange: "The chance is that of a strike with one line held while the lane changes.",
    leastHook: "A spare ball is to hook least; strikes are not counted.",
  },
  tied: "too close to call",
  pins: "At the pins, on the lane as found",
  pinsNote:
    "Computed from simulated pins that are fitted to published carry. The level is uncertain by the range beside each chance; no two houses' pins are alike.",
  chart: "The lane",
  chartFor: (name: string, pattern: string) => (name === "" ? pattern : `${name} · ${pattern}`),
  ownLine: "own line",
  todayName: (finish: string) => `${finish} · today`,
  pickName: (finish: string) => `${finish} · pick`,
  otherName: (finish: string) => `${finish} · own line`,
  saveCsv: "Table as CSV",
  print: "Print",
  loss: "What another finish would cost",
  lossNote: "The band is the uncertainty of the difference to the pick: nine in ten of the worlds fall inside it.",
  table: "Finishes side by side, each on its own line",
  columns: {
    finish: "Finish",
    onChart: "On the chart",
    compare: "Compare",
    line: "Line",
    hookAndRoll: "Hook start",
    entry: "Entry",
    slip: "Slip at the pins",
    speed: "Speed at the pins",
    chance: "Chance",
    room: "Off by a little",
    keeps: "Stays as it is",
    todaysLine: "On today's line",
    move: "Move",
  },
  today: "today",
  pick: "pick",
  alsoOf: (column: string, finish: string) => `${column}: ${finish}`,
  line: (board: number, deg: number) => `board ${board.toFixed(1)}, ${deg.toFixed(1)}°`,
  lineBoard: (board: number) => `board ${board.toFixed(1)}`,
  lineAngle: (deg: number) => launchAngle(deg, 1),
  noLine: "no sensible line",
  unknown: "–",
  feet: (ft: number) => `${ft.toFixed(1)} ft`,
  degrees: (deg: number) => `${deg.toFixed(1)}°`,
  slip: (mps: number) => `${mps.toFixed(2)} m/s`,
  mph: (mph: number) => `${mph.toFixed(1)} mph`,
  percent: (share: number) => `${Math.round(share * 100)} %`,
  rollsAt: (ft: number) => `roll ${ft.toFixed(1)} ft`,
  neverRolls: "no roll before the pins",
  rangeNotKnownYet: "range to follow",
  percentRange: (low: number, high: number) => `${Math.round(low * 100)} to ${Math.round(high * 100)} %`,
  games: (games: number) => (games >= 200 ? "200+ games" : `${games.toFixed(0)} games`),
  gamesRange: (low: number, high: number) => `${low.toFixed(0)} to ${high >= 200 ? "200+" : high.toFixed(0)}`,
  staysAsItIs: "hardly fades",
  lossOfBoard: (share: number) => `−${(100 * share).toFixed(1)} a board`,
  lossOfDelivery: (halfDegree: number, mph: number) => `−${(100 * halfDegree).toFixed(0)} a ½°, −${(100 * mph).toFixed(0)} a mph`,
  pinsDown: (pins: number) => `${pins.toFixed(1)} pins`,
  pinsRange: (low: number, high: number) => `${low.toFixed(1)} to ${high.toFixed(1)}`,
  boardsChange: (change: number) =>
    Math.abs(change) < 0.05 ? "same board" : `${Math.abs(change).toFixed(1)} boards ${change > 0 ? "higher" : "lighter"}`,
  held: (share: number) => `${Math.round(share * 100)} % if held`,
  feetMove: (boards: number) => `feet ${moved(boards)}`,
  targetMove: (boards: number) => `target ${moved(boards)}`,
  compare: "Side by side on the lane",
  compareNote: "Thin grey: today's finish on today's line. Tick up to three finishes in the table.",
  compareFull: "Three are shown; untick one first.",
  reasons: "Why",
  rules: "Rules of thumb of the trade",
  agrees: "agrees",
  disagrees: "disagrees",
  assumptions: "What it assumes",
  assumptionColumns: { what: "Assumption", value: "Taken", range: "Could be", mark: "Where it comes from" },
  defaults: "Defaults taken",
  defaultsNote: "Nobody entered these; the usual values were taken.",
  cautions: "Care",
  messages: "Note",
  views: "View for",
  technician: "technician",
  customer: "customer",
  trial: "trial",
  inputs: "Put in",
} as const;

/** What the customer is told: feet and words, never a chance. */
export const CUSTOMER = {
  title: (name: string) => (name === "" ? "Your ball" : name),
  take: (finish: string) => `We suggest ${finish}.`,
  same: "Your ball keeps the finish it has; it is made fresh and even.",
  noPick: "No finish alone will settle it. Let us talk about the ball or the line.",
  hook: (ft: number) =>
    Math.abs(ft) < 0.5 ? "It starts to hook where it does now." : `It starts to hook ${aboutFeet(ft)} ${ft > 0 ? "later" : "earlier"}.`,
  turn: (deg: number) =>
    Math.abs(deg) < 0.15
      ? "It comes into the pins as steeply as now."
      : `It comes into the pins ${Math.abs(deg) < 0.5 ? "a little " : ""}${deg > 0 ? "sharper" : "smoother"}.`,
  move: (boards: number, hand: Hand) =>
    Math.abs(boards) < 0.75
      ? "Stand where you stand now."
      : `Stand about ${inWords(Math.round(Math.abs(boards)))} board${Math.round(Math.abs(boards)) === 1 ? "" : "s"} further ${boards > 0 === (hand === "right") ? "left" : "right"}.`,
  firstShot: (boards: number) =>
    Math.abs(boards) < 0.75
      ? "If you change nothing else, it hits where it hits now."
      : `If you change nothing else, it hits ${boards > 0 ? "higher" : "lighter"} than now.`,
  worn: "A surface changes with every game; bring it back when it starts to look different.",
} as const;

/** Boards of a move, to the half board that a bowler can stand on. */
function moved(boards: number): string {
  const halves = Math.round(2 * boards) / 2;
  return halves === 0 ? "0" : `${Math.abs(halves)} ${halves > 0 ? "in" : "out"}`;
}

const NUMBER_WORDS = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];
const inWords = (n: number): string => NUMBER_WORDS[n] ?? String(n);

function aboutFeet(ft: number): string {
  const whole = Math.round(Math.abs(ft));
  return whole <= 1 ? "about a foot" : `about ${inWords(whole)} feet`;
}

function listed(items: readonly string[]): string {
  return items.length < 2 ? items.join("") : `${items.slice(0, -1).join(", ")} and ${items.at(-1)}`;
}

/** What differs from today's line, a short phrase each, for the strips side by side. */
export const DIFFERENCE = {
  hook: (ft: number, at: number) =>
    Math.abs(ft) < 0.05
      ? `hook starts as today (${at.toFixed(1)} ft)`
      : `hook starts ${Math.abs(ft).toFixed(1)} ft ${ft > 0 ? "later" : "earlier"} (${at.toFixed(1)} ft)`,
  roll: (ft: number, at: number) =>
    Math.abs(ft) < 0.05
      ? `rolls as today (${at.toFixed(1)} ft)`
      : `rolls ${Math.abs(ft).toFixed(1)} ft ${ft > 0 ? "later" : "earlier"} (${at.toFixed(1)} ft)`,
  noRoll: "still slipping at the pins",
  entry: (deg: number, at: number) =>
    Math.abs(deg) < 0.05
      ? `entry as today (${at.toFixed(1)}°)`
      : `entry ${Math.abs(deg).toFixed(1)}° ${deg > 0 ? "steeper" : "flatter"} (${at.toFixed(1)}°)`,
  laydown: (boards: number, at: number) =>
    Math.abs(boards) < 0.05
      ? `laid down as today (board ${at.toFixed(1)})`
      : `laid down ${Math.abs(boards).toFixed(1)} boards further ${boards > 0 ? "in" : "out"} (board ${at.toFixed(1)})`,
  todaysLine: (boards: number) =>
    Math.abs(boards) < 0.05
      ? "on today's line: same board"
      : `on today's line: ${Math.abs(boards).toFixed(1)} boards ${boards > 0 ? "higher" : "lighter"}`,
} as const;
