import { weightedMean } from "../../worlds/weightedMean.ts";
import { CAUSES, type CauseId } from "./causes.ts";
import type { Shift } from "./changes.ts";
import type { Complaint, SymptomId } from "./complaint.ts";
import { type Evidence, trade } from "./evidence.ts";

/** How a cause would be seen from the approach, by what it does to the ball and by rules of the trade. */

/** Two symptoms of one cause are not two witnesses: each later one counts by this power. */
const LATER_SYMPTOMS = 0.6;

/** What the symptoms that are spoken of say of a cause, and those that are not. */
export function symptomEvidence(cause: CauseId, { symptoms }: Complaint, shifts: readonly Shift[] | null): readonly Evidence[] {
  const told = symptoms
    .map((symptom) => ({ symptom, chance: chanceOfSymptom(symptom, cause, shifts) }))
    .toSorted((a, b) => b.chance.value - a.chance.value);
  const spoken = told.map(
    ({ symptom, chance: { value, from } }, i): Evidence => ({
      id: "symptom",
      factor: (value / USUAL_CHANCE) ** (i === 0 ? 1 : LATER_SYMPTOMS),
      from,
      params: { symptom, ...(shifts === null ? {} : meanShift(shifts)) },
    }),
  );
  return [...spoken, unspoken(cause, symptoms, shifts)];
}

/** Of what would have shown, so much would have been complained of. */
const WOULD_SAY = 0.4;

/** A cause that would have shown in other ways too is less likely where nobody speaks of them. */
function unspoken(cause: CauseId, symptoms: readonly SymptomId[], shifts: readonly Shift[] | null): Evidence {
  const silent = (Object.keys(SEEN_AS) as SymptomId[]).filter((symptom) => !symptoms.includes(symptom) && symptom !== "spareBallHooks");
  const factor = silent.reduce((product, symptom) => product * (1 - WOULD_SAY * chanceOfSymptom(symptom, cause, shifts).value), 1);
  return { id: "notComplainedOf", factor, from: shifts === null ? "trade" : "model", params: {} };
}

/** A good hit lies within so many boards of what was meant. */
const GOOD_BOARDS = 0.6;
/** How often any of the three is seen. */
const USUAL_HIT = 1 / 3;

/** Where it comes in, against where the cause would bring it; what does not move the ball leaves good hits good. */
export function hitEvidence(cause: CauseId, { hits }: Complaint, shifts: readonly Shift[] | null): readonly Evidence[] {
  if (hits === "unknown") return [];
  const isSeen = ({ boards }: Shift) =>
    hits === "good" ? Math.abs(boards) < GOOD_BOARDS : hits === "high" ? boards >= GOOD_BOARDS : boards <= -GOOD_BOARDS;
  if (shifts === null) return [trade("hit", (CAUSES[cause].kind === "pins") === (hits === "good") ? 2 : 0.6, { hits })];
  const share = over(shifts, (shift) => (isSeen(shift) ? 1 : 0));
  return [{ id: "hit", factor: (0.1 + 0.8 * share) / USUAL_HIT, from: "model", params: { hits, ...meanShift(shifts) } }];
}

/** How often any symptom is met with some cause or other: what a chance is compared with. */
const USUAL_CHANCE = 0.25;
const LEAST_CHANCE = 0.03;

function meanShift(shifts: readonly Shift[]): Readonly<Record<string, number>> {
  return {
    hookFt: over(shifts, ({ hookFt }) => hookFt),
    boards: over(shifts, ({ boards }) => boards),
    entryDeg: over(shifts, ({ entryDeg }) => entryDeg),
  };
}

/** The mean over the worlds. */
function over(shifts: readonly Shift[], of: (shift: Shift) => number): number {
  return weightedMean(
    shifts.map(of),
    shifts.map(({ weight }) => weight),
  );
}

const rise = (value: number, at: number, width: number): number => 1 / (1 + Math.exp(-(value - at) / width));

/** Whether a shift is what a bowler calls by that name; widths are what an eye from the approach can tell. Null where motion does not speak. */
const SEEN_AS: Readonly<Partial<Record<SymptomId, (shift: Shift) => number>>> = {
  hooksEarlyHitsWeak: ({ hookFt, boards }) => rise(-hookFt, 0.8, 0.5) * (boards > -0.5 ? 1 : 0.4),
  doesNothing: ({ boards, entryDeg }) => Math.max(rise(-boards, 1.2, 0.5), rise(-entryDeg, 0.6, 0.2)),
  skidsPast: ({ hookFt }) => rise(hookFt, 0.8, 0.5),
  leavesCorner: ({ cornerRatio, boards }) => Math.max(rise(cornerRatio, 1.35, 0.2), 0.6 * rise(-boards, 0.6, 0.3)),
  comesInHigh: ({ boards }) => rise(boards, 0.7, 0.4),
  hooksLess: ({ boards }) => rise(-boards, 0.7, 0.4),
  deflects: ({ boards, entryDeg }) => 0.6 * Math.max(rise(-boards, 1, 0.4), rise(-entryDeg, 0.5, 0.2)),
  spareBallHooks: ({ boards }) => rise(boards, 0.5, 0.3),
};

/** Chances of a symptom with causes that do not show in the mean shot, or beside what it shows: rules of the trade, common practice. */
const BY_RULE: Readonly<Partial<Record<CauseId, Partial<Record<SymptomId, number>>>>> = {
  "ball.faded": { looksShiny: 0.7 },
  "ball.oilSoaked": { feelsOily: 0.7, neverTheSame: 0.3, looksShiny: 0.2 },
  "ball.dirty": { feelsOily: 0.6, neverTheSame: 0.4 },
  "ball.uneven": { neverTheSame: 0.7, knocks: 0.2, leavesCorner: 0.2 },
  "ball.crack": { knocks: 0.8, neverTheSame: 0.4, deflects: 0.3, hooksLess: 0.2 },
  "ball.tooLight": { deflects: 0.8, leavesCorner: 0.5 },
  "ball.tooSmooth": { looksShiny: 0.3 },
  "ball.spareWorn": { spareBallHooks: 0.8, looksShiny: 0.05 },
  "lane.transition": { neverTheSame: 0.4 },
  "release.lessTurn": { neverTheSame: 0.25 },
  "release.tired": { neverTheSame: 0.45 },
  "release.grip": { neverTheSame: 0.6 },
  "pins.carry": { leavesCorner: 0.7 },
};

function chanceOfSymptom(symptom: SymptomId, cause: CauseId, shifts: readonly Shift[] | null): { value: number; from: Evidence["from"] } {
  const seen = SEEN_AS[symptom];
  const byRule = BY_RULE[cause]?.[symptom] ?? 0;
  const byModel = seen === undefined || shifts === null ? 0 : over(shifts, seen);
  return { value: Math.max(LEAST_CHANCE, byRule, byModel), from: byModel >= byRule && byModel > LEAST_CHANCE ? "model" : "trade" };
}
