import type { SideId } from "#engine/surface/padWork/sides";
import { fixed } from "../../figures.ts";
import { SIDE_NAMES } from "../padWork.ts";

/** English text of measuring: sheen against a reference ball, or a tester; per side, before and after. */
export const MEASURE = {
  title: "Measure",
  titleOf: (ball: string) => `Measure: ${ball}`,
  when: { before: "before", after: "after", between: "between visits" },
  how: {
    tester: "tester",
    "reference ball": "reference ball",
    durometer: "durometer",
    scale: "scale",
    calliper: "calliper",
  },
  ways: { "reference ball": "by sheen", tester: "with a tester" },
  whenLabel: "When",
  howLabel: "How",
  chooseBall: "Which ball",
  chooseBallWhy: "Readings are kept with a ball. Find it, or come here from its ticket.",
  toTicket: "To the ticket",
  otherBall: "Another ball",

  reference: "Reference ball",
  unrecordedReference: "one that is not in the records",
  comparisons: { duller: "duller", "the same": "the same", smoother: "smoother" },
  sheenHelp: "Same light, same angle, dry and clean; run a fingertip over both. Enter goes on to the next side.",
  testerHelp: "One reading or several on a side, with spaces between. Enter goes on to the next side.",
  unit: (unit: string) => `Ra, ${unit}`,
  notANumber: (written: string, most: string) =>
    `“${written}” does not fit. Allowed: numbers above 0, at most ${most}, with spaces between.`,
  wanted: "Compared with the finish",
  wantedUnknown: "no finish: only with each other",

  verdict: "Do the sides agree?",
  figures: "The sides in figures",
  noVerdict: "As soon as two sides are entered it stands here whether they agree.",
  ownMean: (um: number) => `All sides: ${fixed(um, 2)} µm effective, compared only with each other.`,
  sheenAlike: (sides: number, as: string) => `${sides} sides look and feel alike: ${as} as the reference.`,
  sheenAlikeOff: (sides: number, as: string) => `${sides} sides look and feel alike: all ${as} than the reference.`,
  sheenApart: "The sides do not agree.",
  sheenGroup: (as: string, sides: string) => `${as}: ${sides}`,
  sheenBackTo: (sides: string) => `Go back to: ${sides}.`,
  notLooked: (sides: string) => `Not looked at yet: ${sides}.`,
  eye: "An eye and a fingertip, no measurement: half a step of the ladder is about what they tell.",

  keep: (count: number) => (count === 1 ? "Keep 1 reading" : `Keep ${count} readings`),
  undo: "Undo",
  kept: (count: number) => (count === 1 ? "1 reading is kept with the ball." : `${count} readings are kept with the ball.`),
  empty: "Empty the fields",
  reading: (ball: string, side: string) => `${ball}: reading, ${side}`,

  earlier: "Readings of this ball",
  noEarlier: "Nothing has been measured on this ball yet.",
  columns: { at: "when", work: "work", place: "where", reading: "reading", how: "how" },
} as const;

/** Where a reading was taken: a side of the ball by its name, anything else as it was written down. */
export function placeText(place: string): string {
  return place in SIDE_NAMES ? SIDE_NAMES[place as SideId] : place;
}
