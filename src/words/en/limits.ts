import type { Entry, Moment, SurfaceAct, SurfaceAnswer } from "#engine/rules/events";
import type { LimitAnswer, NotChecked } from "#engine/rules/limits";
import type { Quantity } from "#engine/rules/measuredBall";
import type { BookId } from "#engine/rules/ruleBooks";
import { fixed } from "../figures.ts";

export const BOOK_NAMES: Readonly<Record<BookId, string>> = {
  usbc: "USBC Equipment Specifications",
  "world-bowling": "World Bowling (equipment limits taken to follow USBC's; from memory)",
};

/** What a quantity is called, its unit, and the decimals it is written with. */
export const QUANTITY_WORDS: Readonly<Record<Quantity, readonly [name: string, unit: string, decimals: number]>> = {
  massLb: ["mass", "lb", 2],
  diameterIn: ["diameter", "in", 3],
  circumferenceIn: ["circumference", "in", 3],
  roundnessIn: ["out of round", "in", 3],
  rgIn: ["radius of gyration", "in", 3],
  differentialIn: ["total differential", "in", 3],
  intermediateOverTotalIn: ["intermediate less total differential", "in", 3],
  friction: ["friction on the lane", "", 3],
  hardnessD: ["hardness", "D", 1],
  meanRaMicroinch: ["roughness, mean of the readings", "µin", 1],
  highestRaMicroinch: ["roughness, highest reading", "µin", 1],
  oilAbsorptionMinutes: ["oil absorption", "min", 2],
  topBottomOz: ["balance top/bottom", "oz", 2],
  sideOz: ["balance side", "oz", 2],
  fingerThumbOz: ["balance finger/thumb", "oz", 2],
  balanceHoles: ["balance holes", "", 0],
  gripHoles: ["grip holes", "", 0],
  unusedGripHoles: ["grip holes not used", "", 0],
  unevenSurface: ["part of the surface prepared otherwise", "", 0],
};

/** Topics whose name the quantity alone does not give. */
const TOPIC_WORDS: Readonly<Record<string, string>> = {
  hardnessMade: "hardness, balls made from August 2022",
  hardnessSlow: "hardness, slow to take up oil",
};

export function limitName({ topic, quantity }: LimitAnswer): string {
  return TOPIC_WORDS[topic] ?? QUANTITY_WORDS[quantity][0];
}

export function figureOf(value: number, quantity: Quantity): string {
  const [, unit, decimals] = QUANTITY_WORDS[quantity];
  return `${fixed(value, decimals)}${unit === "" ? "" : ` ${unit}`}`;
}

export function allowedText({ least, most, quantity }: LimitAnswer): string {
  const [, unit, decimals] = QUANTITY_WORDS[quantity];
  const behind = unit === "" ? "" : ` ${unit}`;
  if (least !== null && most !== null) return `${fixed(least, decimals)} to ${fixed(most, decimals)}${behind}`;
  if (least !== null) return `at least ${fixed(least, decimals)}${behind}`;
  return most === null ? "" : `at most ${fixed(most, decimals)}${behind}`;
}

const FIELD_WORDS: Readonly<Record<string, string>> = {
  massLb: "the mass",
  balanceHoles: "whether there is a balance hole",
  approvedOn: "the day of approval",
  madeOn: "the day of making",
  oilAbsorptionMinutes: "the oil absorption",
  highPerformanceCore: "whether the core counts as high performance",
};

export function whyNotChecked({ reason, needs }: LimitAnswer): string {
  const words: Readonly<Record<NotChecked, string>> = {
    notMeasured: "not measured",
    needs: `wants ${needs.map((field) => FIELD_WORDS[field] ?? field).join(" and ")}`,
    noRecord: "no rule of that day is known here",
    temperature: "read the hardness at 21–25 °C, and say at how much",
  };
  return reason === null ? "" : words[reason];
}

export const LIMITS = {
  within: "Within the limits measured",
  outside: "Outside",
  warning: "Look again (a warning, not a limit)",
  notChecked: "Not checked",
  everything: "nothing is left unchecked of what is known here",
  nothing: "Nothing was measured that a limit speaks of",
  heading: (book: string, on: string) => `${book}, on ${on}`,
  columns: { what: "what", value: "measured", allowed: "allowed", margin: "margin", source: "source" },
  verdicts: { within: "", outside: "OUTSIDE", warning: "warning", notChecked: "" },
  source: (source: string, mark: string) => `${source} (${mark})`,
  roughness: "The roughness limits bind the maker, not the owner: above them the tool warns, and the event may have its own.",
  surface: "What may be done to the surface",
  entry: "The event's lists",
  check: "Always check the current rule book and the event's own rules; a qualified person decides.",
} as const;

export const ACT_WORDS: Readonly<Record<SurfaceAct, string>> = {
  abrasive: "abrasive",
  liquid: "liquid cleaner",
  isopropyl: "isopropyl alcohol",
  dryTowel: "dry towel",
};

export const MOMENT_WORDS: Readonly<Record<Moment, string>> = {
  before: "before",
  practice: "practice",
  scoring: "scoring",
  betweenGames: "between games",
  betweenSquads: "between squads",
};

export const ANSWER_WORDS: Readonly<Record<SurfaceAnswer, string>> = {
  yes: "yes",
  no: "no",
  listed: "listed ones only",
  consent: "with consent",
  ask: "ask",
};

export const ENTRY_SENTENCES: Readonly<Record<Entry, string>> = {
  onList: "The ball is on the event's list.",
  notOnList: "The ball is not on the event's list.",
  withdrawn: "The ball is on the event's list of withdrawn balls.",
  noList: "No list of allowed balls was entered; not checked.",
  noName: "The ball has no name in the file, so the lists were not looked at.",
  tooManyBalls: "More balls are entered than the event allows.",
  ballsWithin: "The number of balls is within the event's.",
  ballsNotCounted: "The number of balls entered is not known; not checked.",
};
