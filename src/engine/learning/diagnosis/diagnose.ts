import { EngineFault } from "../../fault.ts";
import type { Message } from "../../message.ts";
import { CAUSE_IDS, CAUSES, type CauseId, isUnclear } from "./causes.ts";
import { shiftsOf } from "./changes.ts";
import type { Complaint } from "./complaint.ts";
import { askedFor, mends, type Sense } from "./direction.ts";
import type { Evidence } from "./evidence.ts";
import { type StepWorth, stepsByWorth } from "./nextSteps.ts";
import { evidenceFor, probabilities } from "./odds.ts";
import { isForbidden, mustLook, offeredSteps } from "./offered.ts";
import { type Suited, suitedFinish } from "./suited.ts";

/** One cause with what speaks for and against it, the strongest first. */
export interface RankedCause {
  readonly cause: CauseId;
  readonly probability: number;
  /** What mends it: the ball should do more or less; null where it does not show in where the ball arrives. */
  readonly mendedBy: Sense | null;
  readonly for: readonly Evidence[];
  readonly against: readonly Evidence[];
}

export const DIAGNOSIS_MESSAGES = [
  "diagnosis.stopCrack",
  "diagnosis.lookFirst",
  "diagnosis.claimFirst",
  "diagnosis.noSandingAll",
  "diagnosis.noSandingCrack",
  "diagnosis.noSandingClaim",
  "diagnosis.unclear",
  "diagnosis.whileScoring",
] as const;
export type DiagnosisMessageId = (typeof DIAGNOSIS_MESSAGES)[number];

export interface Diagnosis {
  /** Likeliest first. */
  readonly causes: readonly RankedCause[];
  /** By what they tell for their time, best first; none on a ball with a crack, none that makes worse what is complained of. */
  readonly steps: readonly StepWorth[];
  /** What the complaint asks the ball to do; null where it asks for neither or for both. */
  readonly wants: Sense | null;
  /** The finish that would strike most often here, and by how much against this one; null where that cannot be asked. */
  readonly suited: Suited | null;
  /** The cause whose answer may be told: the first; null where its answer would be work on the surface and none may be advised. */
  readonly answerTo: CauseId | null;
  /** Whether anything that takes surface off may be advised. */
  readonly maySand: boolean;
  readonly messages: readonly Message<DiagnosisMessageId>[];
}

/** With a crack this likely nothing is done to the surface until somebody has looked. */
const CRACK_FEARED = 0.1;

/**
 * What may be wrong, ranked, with the evidence, and the cheapest next step that tells the likely causes apart.
 *
 * @throws EngineFault without a symptom
 */
export function diagnose(complaint: Complaint): Diagnosis {
  if (complaint.symptoms.length === 0) throw new EngineFault([{ path: "symptoms", value: "none", allowed: "at least one symptom" }]);
  const suited = suitedFinish(complaint);
  const { causes: shifts, treatments } = shiftsOf(complaint, suited?.finish ?? null);
  const evidence = new Map(CAUSE_IDS.map((cause) => [cause, evidenceFor(cause, complaint, shifts.get(cause) ?? null, suited)]));
  const chances = probabilities(evidence);
  const causes = CAUSE_IDS.map((cause): RankedCause => {
    const all = (evidence.get(cause) ?? []).toSorted((a, b) => Math.abs(Math.log(b.factor)) - Math.abs(Math.log(a.factor)));
    return {
      cause,
      probability: chances.get(cause) ?? 0,
      mendedBy: mends(shifts.get(cause)),
      for: all.filter(({ factor }) => factor > 1.05),
      against: all.filter(({ factor }) => factor < 0.95),
    };
  }).toSorted((a, b) => b.probability - a.probability);
  const said = messagesFor(complaint, causes);
  const maySand = !said.some(({ id }) => id.startsWith("diagnosis.noSanding"));
  const by = { maySand, wants: askedFor(complaint), treatments };
  const messages = isForbidden(complaint, by) ? [...said, { id: "diagnosis.whileScoring", params: {} } as const] : said;
  const [{ cause: first }] = causes;
  // A crack that was found is answered first, whatever else may be wrong.
  const answerTo = complaint.use.crack ? "ball.crack" : mustLook(complaint) || (!maySand && CAUSES[first].isSurface) ? null : first;
  return { causes, steps: stepsByWorth(chances, offeredSteps(complaint, by)), wants: by.wants, suited, answerTo, maySand, messages };
}

function messagesFor(complaint: Complaint, causes: readonly RankedCause[]): readonly Message<DiagnosisMessageId>[] {
  const crack = causes.find(({ cause }) => cause === "ball.crack")?.probability ?? 0;
  const { changed, use } = complaint;
  const said: DiagnosisMessageId[] = [];
  if (use.crack) said.push("diagnosis.stopCrack");
  else if (mustLook(complaint)) said.push("diagnosis.lookFirst");
  if (use.claimOpen) said.push("diagnosis.claimFirst", "diagnosis.noSandingClaim");
  if (use.crack || mustLook(complaint) || (!use.noCrack && crack >= CRACK_FEARED)) said.push("diagnosis.noSandingCrack");
  if (changed === "all") said.push("diagnosis.noSandingAll");
  if (!use.crack && isUnclear(causes)) said.push("diagnosis.unclear");
  return said.map((id) => ({ id, params: {} }));
}
