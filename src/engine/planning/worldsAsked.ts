import type { Bowler } from "../delivery/bowler.ts";
import { ensemble, type World } from "../worlds/ensemble.ts";
import { NIGHT_IDS } from "../worlds/parameters.ts";
import { weightedMean } from "./comparison.ts";
import type { HouseLearned, LearnedInWorlds, PlanQuestion } from "./question.ts";

/** The worlds that a question is asked in: by number, the first `own` of them as they are, then the same on further nights. */
export interface WorldsAsked {
  readonly own: readonly World[];
  readonly draws: number;
  readonly drawn: (draw: number) => World;
}

/** The ensemble's; or, where a house has taught which of them it is and what it is like, those, each with its house and hand. */
export function worldsAsked({ house, bowler }: Pick<PlanQuestion, "house" | "bowler">): WorldsAsked {
  const all = ensemble();
  if (!isTaughtInWorlds(house)) return { own: all.worlds, draws: all.draws, drawn: all.drawn };
  const { worlds } = house.inWorlds;
  const isSameHand = isHandOf(house.inWorlds, bowler);
  const shares = worlds.map(({ world, weight }) => (weight * all.worlds[world].priorWeight) / all.worlds[world].weight);
  const total = shares.reduce((sum, share) => sum + share, 0);
  const own = worlds.map(({ world, weight, lane, delivery: [speedMph, revRateRpm, axisRotationDeg] }, id): World => {
    const base = all.worlds[world];
    return {
      ...base,
      id,
      weight,
      priorWeight: shares[id] / total,
      night: {
        lane: Object.fromEntries(NIGHT_IDS.map((name, i) => [name, lane[i]])),
        delivery: base.night.delivery,
        ...(isSameHand ? { thrown: { speedMph, revRateRpm, axisRotationDeg } satisfies Partial<Bowler> } : {}),
      },
    };
  });
  return { own, draws: own.length, drawn: (draw) => own[draw] };
}

/** Whether what was learned is of this bowler's hand: of one whose numbers have changed since it says nothing. */
function isHandOf({ bowler: whose }: LearnedInWorlds, { speedMph, revRateRpm, axisRotationDeg }: Bowler): boolean {
  return whose.join() === [speedMph, revRateRpm, axisRotationDeg].join();
}

/** The bowler as the shots have shown the hand, in the mean; as given where they have not. */
export function bowlerLearned({ house, bowler }: Pick<PlanQuestion, "house" | "bowler">): Bowler {
  if (!isTaughtInWorlds(house) || !isHandOf(house.inWorlds, bowler)) return bowler;
  const { worlds } = house.inWorlds;
  const weights = worlds.map(({ weight }) => weight);
  const [speedMph, revRateRpm, axisRotationDeg] = [0, 1, 2].map((i) =>
    weightedMean(
      worlds.map(({ delivery }) => delivery[i]),
      weights,
    ),
  );
  return { ...bowler, speedMph, revRateRpm, axisRotationDeg };
}

/** Whether a house has taught in the worlds that plans draw from now: what was learned in others is taken as it was before there were any. */
export function isTaughtInWorlds(house: HouseLearned | null): house is HouseLearned & Required<Pick<HouseLearned, "inWorlds">> {
  return house?.inWorlds !== undefined && house.inWorlds.ensemble === ensemble().digest;
}
