import type { CauseId } from "./causes.ts";

/** Something known, by what factor it makes a cause likelier (above 1) or less likely, and where the factor comes from. */
export interface Evidence {
  readonly id: EvidenceId;
  readonly factor: number;
  /** `model`: computed for this ball, bowler and oil; `trade`: a rule of the trade, common practice, its factor **chosen**. */
  readonly from: "model" | "trade";
  readonly params: Readonly<Record<string, number | string>>;
}

export const EVIDENCE_IDS = [
  "symptom",
  "notComplainedOf",
  "hit",
  "allChanged",
  "onlyThisOne",
  "suddenly",
  "slowly",
  "always",
  "gamesFade",
  "gamesFadeLittle",
  "oilDue",
  "oilNotDue",
  "trackSmoother",
  "trackAlike",
  "trackOtherWay",
  "crackFound",
  "hollow",
  "plugFound",
  "flatSpot",
  "wornTrack",
  "gripChanged",
  "gripHurts",
  "gripSame",
  "tired",
  "speedMeasured",
  "revsMeasured",
  "otherHouse",
  "laneKnown",
  "laneKnownSame",
  "manyShots",
  "fewShots",
  "lightBall",
  "notLight",
  "freshlyWorked",
  "strongForOil",
  "weakForOil",
  "jobOfBall",
  "noCrackFound",
  "suits",
  "doesNotSuit",
] as const;
export type EvidenceId = (typeof EVIDENCE_IDS)[number];

/** A rule of the trade with its factor. */
export const trade = (id: EvidenceId, factor: number, params: Evidence["params"] = {}): Evidence => ({ id, factor, from: "trade", params });
/** A factor by cause, nothing where the cause is not named. */
export const byCause = (
  id: EvidenceId,
  cause: CauseId,
  factors: Partial<Record<CauseId, number>>,
  params: Evidence["params"] = {},
): Evidence | null => {
  const factor = factors[cause];
  return factor === undefined ? null : trade(id, factor, params);
};
