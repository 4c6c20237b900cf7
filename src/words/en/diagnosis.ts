import { type CauseId, isUnclear } from "#engine/learning/diagnosis/causes";
import type { SymptomId } from "#engine/learning/diagnosis/complaint";
import type { Diagnosis, DiagnosisMessageId, RankedCause } from "#engine/learning/diagnosis/diagnose";
import type { Sense } from "#engine/learning/diagnosis/direction";
import type { Evidence, EvidenceId } from "#engine/learning/diagnosis/evidence";
import type { StepId } from "#engine/learning/diagnosis/nextSteps";
import { usefulnessOf } from "#engine/learning/usefulness";
import { feet, fixed, signed } from "../figures.ts";
import { Params, type Sentence } from "../params.ts";
import { USEFULNESS } from "./usefulness.ts";

/** What a bowler complains of, as plain sentences. */
export const SYMPTOM_WORDS: Readonly<Record<SymptomId, string>> = {
  hooksEarlyHitsWeak: "It hooks too early.",
  doesNothing: "It does nothing at the end of the lane.",
  skidsPast: "It skids past the spot.",
  leavesCorner: "It leaves the corner pin.",
  comesInHigh: "It comes in high.",
  hooksLess: "It hooks less than it did.",
  deflects: "It hits weak: the pins turn it aside.",
  neverTheSame: "It is never the same twice.",
  spareBallHooks: "The spare ball hooks.",
  knocks: "It knocks or sounds wrong.",
  looksShiny: "It looks shiny in the track.",
  feelsOily: "It feels oily.",
};

/** What may be wrong. */
export const CAUSE_WORDS: Readonly<Record<CauseId, string>> = {
  "lane.drier": "The lanes are drier than usual",
  "lane.oilier": "The lanes are oilier than usual",
  "lane.transition": "The oil has been played away on this line",
  "release.slower": "The bowler throws slower",
  "release.faster": "The bowler throws faster",
  "release.lessTurn": "The bowler turns the ball less",
  "release.tired": "The bowler is tired",
  "release.grip": "The grip does not fit",
  "ball.faded": "The finish has faded in the track",
  "ball.oilSoaked": "The cover is full of oil",
  "ball.dirty": "The cover is dirty",
  "ball.tooDull": "The surface is too dull for this",
  "ball.tooSmooth": "The surface is too smooth for this",
  "ball.tooStrong": "The ball is too strong for this bowler on this oil",
  "ball.tooWeak": "The ball is too weak for this bowler on this oil",
  "ball.unsuited": "The finish does not suit this bowler on this oil",
  "ball.uneven": "The ball is uneven: a plug, a flat spot, a side worked more",
  "ball.crack": "The ball is cracked, or the cover has come away",
  "ball.spareWorn": "The spare ball's cover is worn dull",
  "ball.tooLight": "The ball is light, and the pins turn it aside",
  "pins.carry": "Nothing but carry: good hits leave a pin now and then",
};

/** What is done, where that depends on whether the ball should then do more or less. */
export type AnswerBySense = Readonly<Record<Sense, string>>;

/** What would be done about it, if it is that. */
export const ANSWER_WORDS: Readonly<Record<CauseId, string | AnswerBySense>> = {
  "lane.drier": {
    less: "Move in, or take a weaker ball; the surface stays as it is.",
    more: "Another line or another ball; the surface stays as it is.",
  },
  "lane.oilier": {
    more: "Move out, or take a stronger ball; the surface stays as it is.",
    less: "Another line or another ball; the surface stays as it is.",
  },
  "lane.transition": {
    less: "Move in, or change to a weaker ball.",
    more: "Move out, or change to a stronger ball: oil has been carried down this line.",
  },
  "release.slower": "Time it over some shots; see what has changed in the approach.",
  "release.faster": "Time it over some shots; see what has changed in the approach.",
  "release.lessTurn": "Film the release, and compare with earlier figures.",
  "release.tired": { less: "A smoother or weaker ball, or rest.", more: "A duller or stronger ball, or rest." },
  "release.grip": "Look at fit, tape and inserts.",
  "ball.faded": "Renew the finish, all sides alike.",
  "ball.oilSoaked": "Draw the oil out, within the maker's limit for heat; then the finish.",
  "ball.dirty": "Clean it, and wipe it after every shot.",
  "ball.tooDull": "A smoother finish; where there is none, fresh polish or a weaker ball.",
  "ball.tooSmooth": "A duller finish.",
  "ball.tooStrong": "Another ball; sanding alone will not make it weak enough.",
  "ball.tooWeak": "Another ball; sanding alone will not make it strong enough.",
  "ball.unsuited": { less: "A smoother finish: see the finish plan.", more: "A duller finish: see the finish plan." },
  "ball.uneven": "Make plug and surface even, then all sides alike.",
  "ball.crack": "Stop: no spinner, no pad, no heat, no more throwing; photograph it, and ask about the warranty first.",
  "ball.spareWorn": "Polish it again.",
  "ball.tooLight": "A heavier ball, if the bowler can hold it: ask a coach.",
  "pins.carry": "Leave the ball alone.",
};

/** What could be done next to tell causes apart. */
export const STEP_WORDS: Readonly<Record<StepId, string>> = {
  referenceBall: "Throw a ball that is known to be right on the same line",
  askLaneMechanic: "Ask the lane mechanic what has changed",
  timeTheBall: "Time the ball over some shots, and compare",
  lookAtGrip: "Look at the grip: fit, tape, inserts, the thumb",
  wipe: "Wipe the ball with a dry towel, and throw again",
  clean: "Clean the ball, and throw again",
  handPad: "Put a pad on by hand at the lane, and throw again",
  finePad: "Go over it by hand with a fine pad at the lane, and throw again",
  otherBall: "Throw another ball of the bag",
  reading: "Take readings: track, beside it, every side",
  lookForCrack: "Look and listen for a crack, under a lamp, at holes and plugs",
  spinForUneven: "Turn it on the spinner by hand and feel for plug and flat spot",
  extract: "Draw the oil out",
  watchTenShots: "Watch ten shots, and note what is left",
};

/** How a step turned out, where it speaks for what it looks for; and where it does not. */
export const STEP_OUTCOMES: Readonly<Record<StepId, readonly [yes: string, no: string]>> = {
  referenceBall: ["It does the same", "It runs as it should"],
  askLaneMechanic: ["Something has changed", "Nothing has changed"],
  timeTheBall: ["It has changed", "As before"],
  lookAtGrip: ["Something is wrong with it", "It fits"],
  wipe: ["It is better", "No better"],
  clean: ["It is better", "No better"],
  handPad: ["It is better", "No better"],
  finePad: ["It is better", "No better"],
  otherBall: ["That one runs right", "No better"],
  reading: ["Off what they should be", "As they should be"],
  lookForCrack: ["There is one", "None found"],
  spinForUneven: ["It is uneven", "It is even"],
  extract: ["It is better", "No better"],
  watchTenShots: ["Good hits leave pins", "The hits are not good"],
};

const EVIDENCE: Readonly<Record<EvidenceId, Sentence>> = {
  symptom: (p) => shiftText(p) ?? `“${symptomOf(p)}” is what this does`,
  notComplainedOf: () => "it would show in other ways too, of which nobody speaks",
  hit: (p) => `the hits are ${p.text("hits")}`,
  allChanged: () => "all balls changed",
  onlyThisOne: () => "only this ball changed",
  suddenly: () => "it came suddenly",
  slowly: () => "it came slowly",
  always: () => "it was always so",
  gamesFade: (p) => `${fixed(p.number("games"), 0)} games have moved the roughness of the track by ${signed(p.number("percent"), 0)} %`,
  gamesFadeLittle: (p) =>
    `${fixed(p.number("games"), 0)} games have hardly moved the roughness of the track (${signed(p.number("percent"), 0)} %)`,
  oilDue: (p) => `${fixed(p.number("games"), 0)} games since oil was drawn out`,
  oilNotDue: (p) => `only ${fixed(p.number("games"), 0)} games since oil was drawn out, or a cover that takes none`,
  trackSmoother: (p) => `the track reads ${fixed(p.number("track"), 0)} µin, beside it ${fixed(p.number("beside"), 0)}`,
  trackAlike: (p) => `track and beside read alike (${fixed(p.number("track"), 0)} and ${fixed(p.number("beside"), 0)} µin)`,
  trackOtherWay: (p) =>
    `the track reads ${fixed(p.number("track"), 0)} µin, beside it ${fixed(p.number("beside"), 0)}: not the way games move it`,
  crackFound: () => "a crack was found",
  noCrackFound: () => "somebody has looked: there is no crack",
  hollow: () => "it sounds hollow",
  plugFound: () => "it has a plug",
  flatSpot: () => "it has a flat spot",
  wornTrack: () => "the track is worn",
  gripChanged: () => "the grip was changed",
  gripHurts: () => "the grip hurts",
  gripSame: () => "the grip is as it was",
  tired: () => "how tired the bowler is",
  speedMeasured: (p) => `the speed measured has changed by ${signed(p.number("mph"), 1)} mph`,
  revsMeasured: (p) => `the rev rate measured has changed by ${signed(p.number("rpm"), 0)} rpm`,
  otherHouse: () => "it is another house",
  laneKnown: () => "the lanes are known to have changed",
  laneKnownSame: () => "the lanes are known to be as they were",
  manyShots: (p) => `${fixed(p.number("shots"), 0)} shots on this oil`,
  fewShots: (p) => `only ${fixed(p.number("shots"), 0)} shots on this oil`,
  lightBall: (p) => `it weighs ${fixed(p.number("lb"), 0)} lb`,
  notLight: (p) => `it weighs ${fixed(p.number("lb"), 0)} lb`,
  freshlyWorked: (p) => `${fixed(p.number("games"), 0)} games on the finish`,
  strongForOil: (p) => `${p.text("cover")} for this oil and hand`,
  weakForOil: (p) => `${p.text("cover")} for this oil and hand`,
  jobOfBall: () => "what the ball is in the bag for",
  suits: (p) =>
    p.optionalNumber("points") === null
      ? "whether another finish would do better cannot be computed from what is known"
      : `no finish strikes clearly more often here (${p.text("finish")} by ${fixed(p.number("points"), 0)} in 100)`,
  doesNotSuit: (p) => `${p.text("finish")} would strike ${fixed(p.number("points"), 0)} more in 100 here`,
};

function symptomOf(p: Params): string {
  return Object.entries(SYMPTOM_WORDS).find(([id]) => id === p.text("symptom"))?.[1] ?? p.text("symptom");
}

/** What the model says that the cause does to the ball, where it says anything. */
function shiftText(p: Params): string | null {
  if (p.optionalNumber("boards") === null) return null;
  const parts = [
    Math.abs(p.number("hookFt")) < 0.3
      ? null
      : `hooks ${feet(Math.abs(p.number("hookFt")))} ${p.number("hookFt") < 0 ? "earlier" : "later"}`,
    Math.abs(p.number("boards")) < 0.2
      ? null
      : `comes in ${fixed(Math.abs(p.number("boards")), 1)} boards ${p.number("boards") > 0 ? "higher" : "lighter"}`,
    Math.abs(p.number("entryDeg")) < 0.1
      ? null
      : `enters ${fixed(Math.abs(p.number("entryDeg")), 1)}° ${p.number("entryDeg") > 0 ? "steeper" : "flatter"}`,
  ].filter((part) => part !== null);
  const does = parts.length === 0 ? "hardly moves the ball" : `so the ball ${parts.join(", ")}`;
  return `${does} (“${symptomOf(p)}”)`;
}

/** One piece of evidence in words, with where it comes from. */
export function evidenceText({ id, params, from }: Evidence): string {
  return `${EVIDENCE[id](new Params({ id, params }))}${from === "model" ? DIAGNOSIS.byModel : ""}`;
}

export const DIAGNOSIS_SENTENCES: Readonly<Record<DiagnosisMessageId, Sentence>> = {
  "diagnosis.stopCrack": () => "Stop: no spinner, no pad, no heat, no more throwing; photograph it, and ask about the warranty first.",
  "diagnosis.lookFirst": () =>
    "It knocks or sounds hollow: look for a crack before anything else, under a lamp. No spinner, no pad, no heat until then.",
  "diagnosis.claimFirst": () => "A warranty question may be open: settle it before anything is done to the ball.",
  "diagnosis.noSandingAll": () => "All balls changed: no ball is sanded for it.",
  "diagnosis.noSandingCrack": () => "The ball may be cracked: nothing is done to its surface until somebody has looked.",
  "diagnosis.noSandingClaim": () => "Nothing is done to its surface while a claim may be open.",
  "diagnosis.unclear": () => "No cause stands out yet: take the next step before deciding.",
  "diagnosis.whileScoring": () =>
    "While scores count only what is listed below may be done; the rest waits until afterwards. Ask an official before anything but a dry towel touches the ball.",
};

/** What would be done about a cause, by whether the ball should then do more or less. */
export function answerText({ cause, mendedBy }: Pick<RankedCause, "cause" | "mendedBy">): string {
  const answer: string | AnswerBySense = ANSWER_WORDS[cause];
  return typeof answer === "string" ? answer : answer[mendedBy ?? "less"];
}

/** What the customer is told, in two sentences: the likeliest cause and what follows; while nothing stands out, what comes first. */
export function customerText({ causes, steps, answerTo }: Pick<Diagnosis, "causes" | "steps" | "answerTo">): string {
  const answered = causes.find(({ cause }) => cause === answerTo);
  if (answered?.cause === "ball.crack") return `${CAUSE_WORDS[answered.cause]}. ${answerText(answered)}`;
  if (answered !== undefined && !isUnclear(causes)) return `Most likely: ${CAUSE_WORDS[answered.cause]}. ${answerText(answered)}`;
  const next = steps.at(0);
  const look = "We do not know yet, so we look before we work on the ball.";
  return next === undefined ? `${look} Nothing is done to it until then.` : `${look} First: ${STEP_WORDS[next.step]}.`;
}

/** The report. */
export const DIAGNOSIS = {
  byModel: " [computed]",
  causes: "What may be wrong",
  cause: (words: string, percent: number) => `${fixed(percent, 0).padStart(3)} in 100  ${words}`,
  speaksFor: "for",
  against: "against",
  steps: "The next step, by what it tells for its time",
  step: (words: string, minutes: number, nats: number) => `${words} (about ${fixed(minutes, 0)} min; ${USEFULNESS[usefulnessOf(nats)]})`,
  answer: "If it is the first",
  customer: "For the customer",
  chosen: "Chances rest on rules of the trade whose factors are chosen, and on the model where it is marked; see docs/model/diagnosis.md.",
} as const;
