import { finishText } from "../../surface/finish.ts";
import { CAUSE_IDS, CAUSES, type CauseId } from "./causes.ts";
import type { Shift } from "./changes.ts";
import type { Complaint } from "./complaint.ts";
import type { Evidence } from "./evidence.ts";
import { FINDINGS } from "./findings.ts";
import { hitEvidence, symptomEvidence } from "./seenAs.ts";
import type { Suited } from "./suited.ts";

/** What speaks for and against a cause. */
export function evidenceFor(
  cause: CauseId,
  complaint: Complaint,
  shifts: readonly Shift[] | null,
  suited: Suited | null = null,
): readonly Evidence[] {
  return [
    ...symptomEvidence(cause, complaint, shifts),
    ...hitEvidence(cause, complaint, shifts),
    ...FINDINGS.flatMap((finding) => finding(cause, complaint) ?? []),
    ...(cause === "ball.unsuited" ? [suitedEvidence(suited)] : []),
  ];
}

/** Strikes, 0–1, that another finish must gain before this one is called unsuited; and what less than which is none. Chosen. */
const GAINS = { clearly: 0.05, hardly: 0.02 } as const;

/** Whether another finish would strike more often here; where that cannot be asked the cause is as good as none. */
function suitedEvidence(suited: Suited | null): Evidence {
  if (suited === null) return { id: "suits", factor: 0.05, from: "model", params: {} };
  const params = { finish: finishText(suited.finish), points: 100 * suited.gain };
  if (suited.gain >= GAINS.clearly) return { id: "doesNotSuit", factor: 4, from: "model", params };
  return {
    id: suited.gain >= GAINS.hardly ? "doesNotSuit" : "suits",
    factor: suited.gain >= GAINS.hardly ? 0.8 : 0.08,
    from: "model",
    params,
  };
}

/** Probability of each cause: weight times every factor, made to sum to one. */
export function probabilities(evidence: ReadonlyMap<CauseId, readonly Evidence[]>): ReadonlyMap<CauseId, number> {
  const odds = CAUSE_IDS.map((id) => (evidence.get(id) ?? []).reduce<number>((product, { factor }) => product * factor, CAUSES[id].weight));
  const sum = odds.reduce((total, one) => total + one, 0);
  return new Map(CAUSE_IDS.map((id, i) => [id, odds[i] / sum]));
}
