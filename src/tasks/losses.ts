import type { FinishDraws } from "#engine/planning/draws";
import type { FinishPlan, Interval } from "#engine/planning/plan";

/** Good shots in a hundred that a finish loses against the pick; below 0 where it would be the better one. Null without a line. */
export interface FinishLoss {
  readonly finish: string;
  readonly lossPer100: Interval | null;
}

/** Nine of ten draws lie inside. */
const BAND = [0.05, 0.95] as const;

/**
 * What each candidate costs against the pick (against the best, where nothing is picked). The value is the plan's own
 * difference; the band is that of the *differences* draw by draw, which is far narrower than the band of the levels,
 * because a draw that lifts one finish lifts its neighbours too. Without draws the band is the value itself.
 */
export function lossesOf(plan: FinishPlan, draws: readonly FinishDraws[]): FinishLoss[] {
  const best = plan.candidates.reduce((most, c) => ((c.chance?.value ?? -1) > (most?.chance?.value ?? -1) ? c : most), plan.candidates[0]);
  const reference = plan.candidates.find((c) => c.finish === plan.pick?.finish) ?? best;
  if (reference === undefined || reference.chance === null) return [];
  const level = reference.chance.value;
  const referenceDraws = chancesOf(reference.finish, draws);
  return plan.candidates.map(({ finish, chance }) => {
    if (chance === null) return { finish, lossPer100: null };
    const value = 100 * (level - chance.value);
    const own = chancesOf(finish, draws);
    const drawn = own.map((c, i) => 100 * (referenceDraws[i] - c)).sort((a, b) => a - b);
    if (drawn.length === 0) return { finish, lossPer100: { value, low: value, high: value } };
    return {
      finish,
      lossPer100: { value, low: Math.min(value, quantile(drawn, BAND[0])), high: Math.max(value, quantile(drawn, BAND[1])) },
    };
  });
}

function chancesOf(finish: string, draws: readonly FinishDraws[]): number[] {
  return draws
    .filter((d) => d.finish === finish)
    .toSorted((a, b) => a.from - b.from)
    .flatMap((d) => d.scores);
}

/** Quantile of sorted values, straight between them. */
function quantile(sorted: readonly number[], share: number): number {
  const at = share * (sorted.length - 1);
  const [below, above] = [Math.floor(at), Math.ceil(at)];
  return sorted[below] + (at - below) * (sorted[above] - sorted[below]);
}
