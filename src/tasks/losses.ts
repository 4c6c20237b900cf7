import { band, worldsOf } from "#engine/planning/comparison";
import type { FinishPlan, Interval } from "#engine/planning/plan";
import type { WorldBlock } from "#engine/planning/worldScores";

/** Good shots in a hundred that a finish loses against the pick; below 0 where it would be the better one. Null without a line. */
export interface FinishLoss {
  readonly finish: string;
  readonly lossPer100: Interval | null;
}

/**
 * What each candidate costs against the pick (against the best, where nothing is picked). The value is the plan's own
 * difference; the band is that of the *differences* world by world, which is far narrower than the band of the levels,
 * because a world that lifts one finish lifts its neighbours too. Without worlds the band is the value itself.
 */
export function lossesOf(plan: FinishPlan, blocks: readonly WorldBlock[]): FinishLoss[] {
  const best = plan.candidates.reduce((most, c) => ((c.chance?.value ?? -1) > (most?.chance?.value ?? -1) ? c : most), plan.candidates[0]);
  const reference = plan.candidates.find((c) => c.finish === plan.pick?.finish) ?? best;
  if (reference === undefined || reference.chance === null) return [];
  const level = reference.chance.value;
  const { weights, blocks: used } = worldsOf(blocks);
  const chancesOf = (finish: string) => used.flatMap(({ finishes }) => finishes.find((one) => one.finish === finish)?.scores ?? []);
  const referenceChances = chancesOf(reference.finish);
  return plan.candidates.map(({ finish, chance }) => {
    if (chance === null) return { finish, lossPer100: null };
    const value = 100 * (level - chance.value);
    const drawn = chancesOf(finish).map((own, i) => 100 * (referenceChances[i] - own));
    return { finish, lossPer100: { value, ...band(drawn, value, weights) } };
  });
}
