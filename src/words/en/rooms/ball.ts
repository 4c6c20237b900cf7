import { fixed } from "../../figures.ts";

/** English text of a ball's log. */
export const BALL_LOG = {
  owner: "Owner",
  nobody: "nobody's",
  hands: "It changes hands",
  handsTo: "To whom",
  handsHelp: "A name or a telephone number. Somebody new is taken in with a visit first.",
  noBowler: "No bowler of that name or number.",
  nowOf: (name: string) => `It is ${name}'s now`,
  nowNobodys: "It is nobody's now",
  until: (day: string) => `until ${day}`,
  finish: "Finish",
  unknown: "not known",
  sinceWork: "Games since the surface was worked",
  addGames: "Games bowled since the last entry",
  keepGames: "Add the games",
  gamesAllowed: "a whole number from 1 to 10000",
  scuffed: "The owner worked on it",
  machine: "A coin machine cleaned it",
  log: "What happened to it",
  emptyLog: "Nothing is written down of this ball yet.",
  fade: "How the finish fades",
  fadeUnknown: "What is on the ball is not known, so its fade is not drawn.",
  refresh: "next refresh",
  extraction: "oil extraction",
  resurfacing: "resurfacing",
  due: (what: string, value: number | null, low: number | null, high: number | null) => {
    if (value === null) return `${what}: not within what can be foreseen`;
    if (value === 0) return `${what}: due now`;
    return `${what}: in about ${fixed(value, 0)} games${low === null || high === null ? "" : ` (${fixed(low, 0)} to ${fixed(high, 0)})`}`;
  },
  lastHere: (what: string, day: string, games: number) => `${what}: last done here on ${day}, ${gamesText(games)} ago`,
  neverHere: (what: string, games: number) => `${what}: not in these records, so counted over all ${gamesText(games)} written down`,
  ends: "What will end it",
  endsNow: (what: string) => `Found on it: ${what}. No spinner, no heat, until somebody has looked and said what it is.`,
  endNames: { diameter: "the diameter would fall below the limit", serial: "the serial number would be sanded away" },
  endsAfter: (what: string, times: number) =>
    times < 1 ? `With the next such work ${what}.` : `Worked to today's finish again and again, ${what} after about ${times} times.`,
  endsWhy:
    "From what the abrasives take off, assumed, not measured; look at the number and measure the ball. Heat, knocks and years end a ball too.",
  limits: "Limits",
  book: "Rule book",
  limitsFrom: "Weight, RG and differential as they are written down here unless they were measured.",
  writeDown: "Write down",
  about: "About this ball",
  states: { "in use": "in use", resting: "resting", stopped: "stopped", retired: "retired", "left the shop": "left the shop" },
  fields: {
    name: "Name",
    serial: "Serial number",
    cover: "Cover",
    job: "Job",
    state: "What it is doing",
    boxFinish: "Finish when sold",
    "core.massLb": "Weight, lb",
    "core.diameterIn": "Diameter, in",
    "core.rgIn": "RG, in",
    "core.differentialIn": "Differential, in",
    "core.intermediateDifferentialIn": "Intermediate differential, in",
    "layout.pinToPapIn": "Pin to PAP, in",
    "layout.drillingAngleDeg": "Drilling angle, °",
    "layout.valAngleDeg": "VAL angle, °",
    heatLimitF: "Maker's limit on heat, °F",
    purchasedOn: "Bought on",
    drilledOn: "Drilled on",
    "warranty.until": "Warranty until",
    "warranty.note": "Warranty",
    notes: "Notes",
  },
  helps: { boxFinish: "2000, or 1000 + polish", heatLimitF: "as its maker says; never above 140" },
  foundOn: "Found on it",
  nothingFound: "Nothing was found on it.",
  noLonger: "No longer there",
  noLongerOf: (what: string) => `No longer there: ${what}`,
  takenOff: (what: string) => `Taken off the list: ${what}.`,
  undo: "Undo",
  addFind: "Something was found",
  findNote: "Where, and how it looks",
  keepFind: "Write the find down",
  finds: {
    crack: "crack",
    "hollow sound": "sounds hollow",
    plug: "plug",
    "flat spot": "flat spot",
    "track wear": "worn track",
    other: "something else",
  },
  ways: { spinner: "spinner", "hand, wet": "by hand, wet", "hand, dry": "by hand, dry", machine: "machine" },
  stageWays: {
    "spinner, wet": "on the spinner, wet",
    "spinner, dry": "on the spinner, dry",
    "hand, wet": "by hand, wet",
    "hand, dry": "by hand, dry",
  },
  stage: (what: string, way: string | null, initials: string, note: string) =>
    `${what}${way === null ? "" : `, ${way}`}: signed ${initials}${note === "" ? "" : ` (${note})`}`,
  takenBack: (initials: string, why: string) => `signature taken back, ${initials}${why === "" ? "" : ` (${why})`}`,
  surface: (who: string, finish: string | null, way: string | null, note: string) =>
    `${WHO[who] ?? who}${finish === null ? "" : `: ${finish}`}${way === null ? "" : `, ${way}`}${note === "" ? "" : ` (${note})`}`,
  photo: (what: string, note: string) => `photo: ${what}${note === "" ? "" : ` (${note})`}`,
  games: gamesText,
  gamesTold: { "a few": "a few games since the last work, as told", "a season": "a season of games since the last work, as told" },
  found: (what: string, note: string) => `found: ${what}${note === "" ? "" : ` (${note})`}`,
  reading: (when: string, place: string, value: string) => `${when}, ${place}: ${value}`,
  ticket: (finish: string | null, state: string) => `ticket${finish === null ? "" : ` to ${finish}`}, ${state}`,
} as const;

function gamesText(count: number): string {
  return count === 1 ? "1 game" : `${count} games`;
}

const WHO: Readonly<Record<string, string>> = {
  shop: "worked in the shop",
  owner: "worked on by the owner",
  "coin machine": "cleaned by a coin machine",
  maker: "as the maker sold it",
  "somebody else": "worked on elsewhere",
};
