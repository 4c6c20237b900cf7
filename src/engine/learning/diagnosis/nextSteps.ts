import type { SurfaceAct } from "../../rules/events.ts";
import { CAUSE_IDS, type CauseId } from "./causes.ts";

/** Something that could be done next to tell causes apart. */
export interface Step {
  /** What it takes, minutes: common practice. */
  readonly minutes: number;
  readonly isSanding: boolean;
  /** What is done to the cover, as rule books part it; not there where nothing is. */
  readonly act?: SurfaceAct;
  /** Chance that it turns out positive with each cause; `otherwise` for those not named. Rules of the trade, common practice; figures **chosen**. */
  readonly positive: Partial<Record<CauseId, number>>;
  readonly otherwise: number;
}

const LANE = { "lane.drier": 0.92, "lane.oilier": 0.92, "lane.transition": 0.85 } as const;
const RELEASE = {
  "release.slower": 0.88,
  "release.faster": 0.88,
  "release.lessTurn": 0.85,
  "release.tired": 0.85,
  "release.grip": 0.7,
} as const;

/** Add a step by a record here and its words; a test walks both. */
export const STEPS = {
  /** A ball known to be right, thrown on the same line: does it do the same? */
  referenceBall: { minutes: 4, isSanding: false, positive: { ...LANE, ...RELEASE, "pins.carry": 0.6 }, otherwise: 0.06 },
  askLaneMechanic: {
    minutes: 3,
    isSanding: false,
    positive: { "lane.drier": 0.75, "lane.oilier": 0.75, "lane.transition": 0.35 },
    otherwise: 0.1,
  },
  timeTheBall: {
    minutes: 5,
    isSanding: false,
    positive: { "release.slower": 0.85, "release.faster": 0.85, "release.tired": 0.65, "release.lessTurn": 0.5, "release.grip": 0.4 },
    otherwise: 0.08,
  },
  lookAtGrip: { minutes: 4, isSanding: false, positive: { "release.grip": 0.85, "release.tired": 0.2 }, otherwise: 0.05 },
  wipe: { minutes: 1, isSanding: false, act: "dryTowel", positive: { "ball.dirty": 0.75, "ball.oilSoaked": 0.35 }, otherwise: 0.04 },
  clean: { minutes: 4, isSanding: false, act: "liquid", positive: { "ball.dirty": 0.92, "ball.oilSoaked": 0.5 }, otherwise: 0.05 },
  handPad: {
    minutes: 4,
    isSanding: true,
    act: "abrasive",
    positive: {
      "ball.faded": 0.8,
      "ball.tooSmooth": 0.75,
      "ball.oilSoaked": 0.3,
      "ball.dirty": 0.4,
      "ball.tooWeak": 0.3,
      "ball.unsuited": 0.5,
    },
    otherwise: 0.06,
  },
  finePad: {
    minutes: 4,
    isSanding: true,
    act: "abrasive",
    positive: { "ball.tooDull": 0.75, "ball.spareWorn": 0.7, "ball.unsuited": 0.5, "ball.tooStrong": 0.3, "ball.faded": 0.4 },
    otherwise: 0.06,
  },
  otherBall: {
    minutes: 3,
    isSanding: false,
    positive: {
      "ball.tooStrong": 0.8,
      "ball.tooWeak": 0.8,
      "ball.tooDull": 0.75,
      "ball.tooSmooth": 0.75,
      "ball.unsuited": 0.7,
      "ball.faded": 0.75,
      "ball.oilSoaked": 0.75,
      "ball.dirty": 0.7,
      "ball.uneven": 0.8,
      "ball.crack": 0.8,
      "ball.spareWorn": 0.8,
      "ball.tooLight": 0.6,
      "lane.transition": 0.5,
      "lane.drier": 0.35,
      "lane.oilier": 0.35,
    },
    otherwise: 0.15,
  },
  reading: {
    minutes: 5,
    isSanding: false,
    positive: { "ball.faded": 0.85, "ball.tooDull": 0.85, "ball.tooSmooth": 0.85, "ball.uneven": 0.6, "ball.spareWorn": 0.8 },
    otherwise: 0.08,
  },
  lookForCrack: { minutes: 3, isSanding: false, positive: { "ball.crack": 0.92, "ball.uneven": 0.15 }, otherwise: 0.02 },
  spinForUneven: { minutes: 4, isSanding: false, positive: { "ball.uneven": 0.85, "ball.crack": 0.3 }, otherwise: 0.04 },
  extract: { minutes: 60, isSanding: false, act: "liquid", positive: { "ball.oilSoaked": 0.85, "ball.dirty": 0.3 }, otherwise: 0.05 },
  watchTenShots: {
    minutes: 10,
    isSanding: false,
    positive: { "pins.carry": 0.8, "ball.tooLight": 0.5, "release.lessTurn": 0.4 },
    otherwise: 0.12,
  },
} as const satisfies Record<string, Step>;

export type StepId = keyof typeof STEPS;
export const STEP_IDS = Object.keys(STEPS) as readonly StepId[];

/** A step with what it is expected to tell, nats. */
export interface StepWorth {
  readonly step: StepId;
  readonly nats: number;
  readonly minutes: number;
}

/** A minute of talk goes with every step. */
const TALK_MINUTES = 2;

/** Some steps by what they tell for their time, best first. */
export function stepsByWorth(probabilities: ReadonlyMap<CauseId, number>, offered: readonly StepId[]): readonly StepWorth[] {
  return offered
    .map((step) => ({ step, nats: information(STEPS[step], probabilities), minutes: STEPS[step].minutes }))
    .toSorted((a, b) => b.nats / (b.minutes + TALK_MINUTES) - a.nats / (a.minutes + TALK_MINUTES));
}

/** What is thought after a step has turned out one way: Bayes with the step's own chances. */
export function afterStep(probabilities: ReadonlyMap<CauseId, number>, step: StepId, isPositive: boolean): ReadonlyMap<CauseId, number> {
  const { positive, otherwise }: Step = STEPS[step];
  const weighed = CAUSE_IDS.map((id) => {
    const chance = positive[id] ?? otherwise;
    return (probabilities.get(id) ?? 0) * (isPositive ? chance : 1 - chance);
  });
  const sum = weighed.reduce((total, one) => total + one, 0);
  return new Map(CAUSE_IDS.map((id, i) => [id, weighed[i] / sum]));
}

/** Mutual information of the step's outcome and the cause: entropy of the outcome less its mean entropy with the cause known. */
function information(step: Step, probabilities: ReadonlyMap<CauseId, number>): number {
  let positive = 0;
  let known = 0;
  for (const id of CAUSE_IDS) {
    const share = probabilities.get(id) ?? 0;
    const chance = step.positive[id] ?? step.otherwise;
    positive += share * chance;
    known += share * entropy(chance);
  }
  return Math.max(0, entropy(positive) - known);
}

function entropy(chance: number): number {
  return [chance, 1 - chance].reduce((sum, p) => (p > 0 ? sum - p * Math.log(p) : sum), 0);
}
