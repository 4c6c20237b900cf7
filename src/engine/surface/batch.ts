import type { AbrasiveId } from "./abrasives.ts";
import { ABRASIVES } from "./abrasives.ts";
import type { Stage, StagePlan } from "./stages.ts";

/** One stop of a batch: one pad, every ball that needs it, then the next pad. */
export interface BatchStop {
  readonly kind: Stage["kind"];
  readonly abrasive: AbrasiveId | null;
  /** Which balls, by their place in the batch, with each one's own seconds a side. */
  readonly balls: readonly { readonly ball: number; readonly stage: number; readonly secondsPerSide: number }[];
}

/**
 * Several balls at the bench, planned by what they share: stages are taken in every ball's own order, and of those that could come next the earliest kind, coarse before fine.
 * So a pad is taken up as few times as their orders allow. Balls with a hard stop have no stages and do not appear.
 */
export function planBatch(plans: readonly StagePlan[]): readonly BatchStop[] {
  const at = plans.map(() => 0);
  const stops: BatchStop[] = [];
  for (;;) {
    const waiting = new Map<string, number[]>();
    for (const [ball, plan] of plans.entries()) {
      const stage = plan.stages[at[ball]];
      if (stage) waiting.set(keyOf(stage), [...(waiting.get(keyOf(stage)) ?? []), ball]);
    }
    if (waiting.size === 0) return stops;
    const rank = (key: string) => order(plans[waiting.get(key)?.[0] ?? 0].stages[at[waiting.get(key)?.[0] ?? 0]]);
    const next = [...waiting.keys()].sort((a, b) => rank(a) - rank(b))[0];
    const balls = waiting.get(next) ?? [];
    const { kind, abrasive } = plans[balls[0]].stages[at[balls[0]]];
    stops.push({
      kind,
      abrasive,
      balls: balls.map((ball) => ({ ball, stage: at[ball], secondsPerSide: plans[ball].stages[at[ball]].secondsPerSide })),
    });
    for (const ball of balls) at[ball]++;
  }
}

function keyOf({ kind, abrasive }: Stage): string {
  return `${kind} ${abrasive ?? ""}`;
}

const KINDS: readonly Stage["kind"][] = ["clean", "open", "extract", "dryOff", "plug", "cut", "polish", "check"];

/** Kinds in the order of the bench; among cuts coarse before fine, so that a ball with a long way does not make a fine pad wait twice. */
function order({ kind, abrasive }: Stage): number {
  return KINDS.indexOf(kind) * 1000 - (kind === "cut" && abrasive ? ABRASIVES[abrasive].grainUm : 0);
}
