import type { SignedEntry } from "#contract/records/ticketWork";
import type { StageStanding } from "#engine/signed/entries";
import type { Work } from "#engine/signed/work";
import { ABRASIVES, type AbrasiveId, type AbrasiveKind } from "#engine/surface/abrasives";
import { hazardsOfUsing, isForWetUse } from "#engine/surface/hazards";
import { ABRASIVE_NAMES } from "#words/en/bench";
import type { BallState, PlannedStage } from "../../benchWork/guide.ts";
import { abrasiveName } from "../../benchWork/plannedStages.ts";

/** A stage with what is really used for it: as it was chosen here, else as the sides tell that are done, else as planned. What must not be used dry is used wet. */
export function asUsed(
  planned: PlannedStage,
  { used }: Pick<BallState, "used">,
  { sides }: Pick<Work<SignedEntry>, "sides">,
  { instead }: Pick<StageStanding<SignedEntry>, "instead">,
): PlannedStage {
  // What was signed with another abrasive is over: the stage begins anew, as planned.
  const worked = sides.findLast(({ stageId, at }) => stageId === planned.id && at > (instead?.at ?? ""))?.abrasive;
  const abrasive = used?.stageId === planned.id ? used.abrasive : (worked ?? planned.abrasive);
  return { ...planned, abrasive, way: isForWetUse(abrasive) ? (planned.way?.replace("dry", "wet") ?? null) : planned.way };
}

/** Cautions of a stage by what is really used: those of the plan, with the hazards of the one abrasive in the place of the other's. */
export function cautionsAsUsed(planned: PlannedStage, used: PlannedStage): readonly string[] {
  const [before, now] = [hazardsOfStage(planned), hazardsOfStage(used)];
  return [...new Set([...planned.cautions.filter((id) => now.includes(id) || !before.includes(id)), ...now])];
}

function hazardsOfStage({ abrasive, way }: PlannedStage): readonly string[] {
  if (way === null) return [];
  return hazardsOfUsing(abrasive, { by: way.startsWith("hand") ? "hand" : "spinner", wet: way.endsWith("wet") });
}

const POLISHES: readonly AbrasiveKind[] = ["cuttingPolish", "slipPolish", "compound"];
const CUTS: readonly AbrasiveKind[] = ["foamPad", "wetPaper", "wovenPad", "compound"];

/** Everything that could have been used for a stage, the planned one first. */
export function usable({ abrasive, kind }: PlannedStage): Readonly<Record<string, string>> {
  const planned = abrasive === null ? {} : { [abrasive]: abrasiveName(abrasive) ?? abrasive };
  const kinds = kind === "polish" ? POLISHES : CUTS;
  const others = (Object.keys(ABRASIVES) as AbrasiveId[]).filter((id) => kinds.includes(ABRASIVES[id].kind));
  return { ...planned, ...Object.fromEntries(others.map((id) => [id, ABRASIVE_NAMES[id]])) };
}
