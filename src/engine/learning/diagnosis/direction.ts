import { weightedMean } from "../../worlds/weightedMean.ts";
import type { Shift } from "./changes.ts";
import type { Complaint, SymptomId } from "./complaint.ts";

/** What the ball should do: more (earlier, higher) or less (later, lighter). */
export type Sense = "more" | "less";

/** What each symptom asks for; one that is not here asks for neither. */
const ASKS: Readonly<Partial<Record<SymptomId, Sense>>> = {
  hooksEarlyHitsWeak: "less",
  comesInHigh: "less",
  spareBallHooks: "less",
  doesNothing: "more",
  skidsPast: "more",
  hooksLess: "more",
};

/** A shift of the mean shot by less than this is none, boards. */
const SEEN_BOARDS = 0.1;

/** What a complaint asks for; null where its symptoms ask for neither, or for both. */
export function askedFor({ symptoms }: Pick<Complaint, "symptoms">): Sense | null {
  const senses = new Set(symptoms.flatMap((id) => ASKS[id] ?? []));
  const [only] = senses;
  return senses.size === 1 ? only : null;
}

/** What some shifts make the ball do, in the mean over the worlds; null where it is too little to be seen. */
export function doneBy(shifts: readonly Shift[]): Sense | null {
  const boards = weightedMean(
    shifts.map((shift) => shift.boards),
    shifts.map(({ weight }) => weight),
  );
  if (Math.abs(boards) < SEEN_BOARDS) return null;
  return boards > 0 ? "more" : "less";
}

/** What mends a shift: the other way. */
export function mends(shifts: readonly Shift[] | undefined): Sense | null {
  const done = shifts === undefined ? null : doneBy(shifts);
  if (done === null) return null;
  return done === "more" ? "less" : "more";
}
