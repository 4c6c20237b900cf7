import { SYMPTOM_WORDS } from "../diagnosis.ts";

/** English text of the counter: a visit of one or several balls, under a minute. */
export const INTAKE = {
  title: "Take in",
  serialShort: "Serial number",
  find: "Serial number, name or telephone",
  findHelp: "The end of a number is enough.",
  noneFound: "Nobody and nothing of that name or number. Write a name below and go on.",
  bowlersFound: "Bowlers",
  ballsFound: "Balls",
  someoneElse: "Somebody else",
  bowler: "Bowler",
  newBowler: "New bowler",
  name: "Name",
  phone: "Telephone, if you like",
  balls: "Balls",
  addBall: "Another ball",
  newBall: "New ball",
  ballName: "What the ball is called",
  serial: "Serial number, if it can be read",
  cover: "Cover",
  coverUnknown: "not known",
  leaveOut: "Leave out",
  sameAsLast: (finish: string, when: string) => `Same as last time: ${finish}, ${when}`,
  noLastTime: "No work of ours on it yet.",
  wanted: "Finish wanted",
  wantedLater: "decide later",
  whatHurts: "What hurts",
  whatChanged: "Did all balls change, or only this one?",
  changed: { "all balls": "all of them", "only this one": "only this one", "not known": "not known" },
  found: "Found on the ball",
  findings: {
    crack: "crack",
    "hollow sound": "sounds hollow",
    plug: "plug",
    "flat spot": "flat spot",
    "track wear": "worn track",
  },
  stop: "Stop: no spinner, no heat. Photograph it, and ask about the warranty first.",
  words: "In the bowler's own words",
  promise: "Promised for",
  takeIn: (balls: number) => (balls === 1 ? "Take in 1 ball" : `Take in ${balls} balls`),
  takeInAndPrint: "Take in and print",
  needsBall: "Choose a ball, or write what it is called.",
  needsName: "A name is needed.",
  failed: "Not taken in yet; nothing is lost. Press again: what was already kept is not kept twice.",
  startAgain: "Empty the form",
  unclaimed: "nobody's ball",
} as const;

/** What a bowler complains of, as plain sentences; the keys are kept with the ticket. Two are none of the diagnosis: they say what is wanted. */
export const SYMPTOMS = {
  ...SYMPTOM_WORDS,
  scratched: "It is scratched or nicked.",
  justRefresh: "Nothing: it is due.",
} as const;
export type SymptomId = keyof typeof SYMPTOMS;

/** Finishes that are asked for at the counter, dull to smooth. */
export const COUNTER_FINISHES = [
  "360",
  "500",
  "500 + polish",
  "800",
  "1000",
  "1000 + polish",
  "1500",
  "1500 + polish",
  "2000",
  "2000 + polish",
  "3000",
  "3000 + polish",
  "4000",
  "4000 + polish",
  "5000",
] as const;
