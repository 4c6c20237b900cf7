import { EngineFault } from "../../fault.ts";
import type { Message } from "../../message.ts";
import { CAUSE_IDS, CAUSES, type CauseId } from "./causes.ts";
import { shiftsOf } from "./changes.ts";
import type { Complaint } from "./complaint.ts";
import { type Evidence, evidenceFor, probabilities } from "./evidence.ts";
import { type StepWorth, stepsByWorth } from "./nextSteps.ts";

/** One cause with what speaks for and against it, the strongest first. */
export interface RankedCause {
  readonly cause: CauseId;
  readonly probability: number;
  readonly for: readonly Evidence[];
  readonly against: readonly Evidence[];
}

export const DIAGNOSIS_MESSAGES = [
  "diagnosis.stopCrack",
  "diagnosis.claimFirst",
  "diagnosis.noSandingAll",
  "diagnosis.noSandingCrack",
  "diagnosis.noSandingClaim",
  "diagnosis.unclear",
] as const;
export type DiagnosisMessageId = (typeof DIAGNOSIS_MESSAGES)[number];

export interface Diagnosis {
  /** Likeliest first. */
  readonly causes: readonly RankedCause[];
  /** By what they tell for their time, best first. */
  readonly steps: readonly StepWorth[];
  /** The cause whose answer may be told: the first; null where its answer would be work on the surface and none may be advised. */
  readonly answerTo: CauseId | null;
  /** Whether anything that takes surface off may be advised. */
  readonly maySand: boolean;
  readonly messages: readonly Message<DiagnosisMessageId>[];
}

/** With a crack this likely nothing is done to the surface until somebody has looked. */
const CRACK_FEARED = 0.1;
/** A first cause less likely than this is no answer yet. */
const CLEAR_FROM = 0.4;

/**
 * What may be wrong, ranked, with the evidence, and the cheapest next step that tells the likely causes apart.
 *
 * @throws EngineFault without a symptom
 */
export function diagnose(complaint: Complaint): Diagnosis {
  if (complaint.symptoms.length === 0) throw new EngineFault([{ path: "symptoms", value: "none", allowed: "at least one symptom" }]);
  const shifts = shiftsOf(complaint);
  const evidence = new Map(CAUSE_IDS.map((cause) => [cause, evidenceFor(cause, complaint, shifts.get(cause) ?? null)]));
  const chances = probabilities(evidence);
  const causes = CAUSE_IDS.map((cause): RankedCause => {
    const all = (evidence.get(cause) ?? []).toSorted((a, b) => Math.abs(Math.log(b.factor)) - Math.abs(Math.log(a.factor)));
    return {
      cause,
      probability: chances.get(cause) ?? 0,
      for: all.filter(({ factor }) => factor > 1.05),
      against: all.filter(({ factor }) => factor < 0.95),
    };
  }).toSorted((a, b) => b.probability - a.probability);
  const messages = messagesFor(complaint, causes);
  const maySand = !messages.some(({ id }) => id.startsWith("diagnosis.noSanding"));
  const [{ cause: first }] = causes;
  const answerTo = !maySand && CAUSES[first].isSurface ? null : first;
  return { causes, steps: stepsByWorth(chances, maySand), answerTo, maySand, messages };
}

function messagesFor({ changed, use }: Complaint, causes: readonly RankedCause[]): readonly Message<DiagnosisMessageId>[] {
  const crack = causes.find(({ cause }) => cause === "ball.crack")?.probability ?? 0;
  const said: DiagnosisMessageId[] = [];
  if (use.crack || use.hollowSound) said.push("diagnosis.stopCrack");
  if (use.claimOpen) said.push("diagnosis.claimFirst", "diagnosis.noSandingClaim");
  if (use.crack || use.hollowSound || crack >= CRACK_FEARED) said.push("diagnosis.noSandingCrack");
  if (changed === "all") said.push("diagnosis.noSandingAll");
  if (causes[0].probability < CLEAR_FROM) said.push("diagnosis.unclear");
  return said.map((id) => ({ id, params: {} }));
}
