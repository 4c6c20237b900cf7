import { type SurfaceAnswer, surfaceRules } from "../../rules/events.ts";
import type { Shift } from "./changes.ts";
import type { Complaint } from "./complaint.ts";
import { doneBy, type Sense } from "./direction.ts";
import { STEP_IDS, STEPS, type Step, type StepId } from "./nextSteps.ts";

/** Rules as they stand when none later is known: a complaint has no date. */
const LATEST = "9999-12-31";
/** A ball that knocks or sounds hollow: nothing but this until somebody has looked. */
const LOOK_FIRST: readonly StepId[] = ["lookForCrack"];

/** Whether a crack is to be looked for before anything else. */
export function mustLook({ use, symptoms }: Pick<Complaint, "use" | "symptoms">): boolean {
  return !use.noCrack && (use.hollowSound || symptoms.includes("knocks"));
}
/** Between two shots there is no hour, and no reading that takes a table. */
const MOST_MINUTES_WHILE_SCORING = 5;

export interface OfferedBy {
  readonly maySand: boolean;
  readonly wants: Sense | null;
  readonly treatments: ReadonlyMap<StepId, readonly Shift[]>;
}

/** The steps that may be advised: none on a cracked ball, none that makes what is complained of worse, none that the rules do not allow just now. */
export function offeredSteps(complaint: Complaint, { maySand, wants, treatments }: OfferedBy): readonly StepId[] {
  const { use, when } = complaint;
  if (use.crack) return [];
  if (mustLook(complaint)) return LOOK_FIRST;
  const isRead = use.trackMicroinch !== null && use.besideMicroinch !== null;
  return STEP_IDS.filter((id) => {
    if ((id === "reading" && isRead) || (id === "lookForCrack" && use.noCrack)) return false;
    const { isSanding, minutes }: Step = STEPS[id];
    if (isSanding && !maySand) return false;
    if (when === "scoring" && (minutes > MOST_MINUTES_WHILE_SCORING || !isAllowed(complaint, id))) return false;
    const shifts = treatments.get(id);
    const done = shifts === undefined ? null : doneBy(shifts);
    return wants === null || done === null || done === wants;
  });
}

/** Whether a rule leaves a step out that would else be advised. */
export function isForbidden(complaint: Complaint, by: OfferedBy): boolean {
  const anyTime = offeredSteps({ ...complaint, when: "unknown" }, by);
  return complaint.when === "scoring" && anyTime.some((id) => !isAllowed(complaint, id));
}

/** While scores count, by the book that is played by; where nobody said, by the strictest: only a dry towel. */
function isAllowed({ book }: Complaint, step: StepId): boolean {
  const { act }: Step = STEPS[step];
  if (act === undefined) return true;
  if (book === null) return act === "dryTowel";
  const said: SurfaceAnswer | undefined = surfaceRules(book, LATEST, null).find(
    (rule) => rule.act === act && rule.moment === "scoring",
  )?.answer;
  return said === "yes";
}
