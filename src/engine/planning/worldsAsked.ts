import type { Bowler } from "../delivery/bowler.ts";
import { ensemble, type World } from "../worlds/ensemble.ts";
import { NIGHT_IDS } from "../worlds/parameters.ts";
import { weightedMean } from "../worlds/weightedMean.ts";
import type { HandNumbers, HouseLearned, LearnedInWorlds, PlanQuestion } from "./question.ts";

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
  const hand = handOf(house.inWorlds, bowler);
  const shares = worlds.map(({ world, weight }) => (weight * all.worlds[world].priorWeight) / all.worlds[world].weight);
  const total = shares.reduce((sum, share) => sum + share, 0);
  const own = worlds.map(({ world, weight, lane, deliveries }, id): World => {
    const base = all.worlds[world];
    const lanes = Object.fromEntries(NIGHT_IDS.map((name, i) => [name, lane[i]]));
    const thrown = hand === null ? {} : { thrown: thrownBy(bowler, deliveries[hand]) };
    return { ...base, id, weight, priorWeight: shares[id] / total, night: { lane: lanes, delivery: base.night.delivery, ...thrown } };
  });
  return { own, draws: own.length, drawn: (draw) => own[draw] };
}

/** Which of the hands that were learned is this bowler's: null where none is, where the numbers have changed since, or where two have the same. */
function handOf({ bowlers }: LearnedInWorlds, bowler: Bowler): number | null {
  const { speedMph, revRateRpm, axisRotationDeg } = thrownBy(bowler, [bowler.speedMph, bowler.revRateRpm, bowler.axisRotationDeg]);
  const own = [speedMph, revRateRpm, axisRotationDeg].join();
  const [first, second] = bowlers.flatMap((numbers, hand) => (numbers.join() === own ? [hand] : []));
  return first === undefined || second !== undefined ? null : first;
}

/** Numbers of a hand as the question has them, or back: a backup ball's axis was turned the other way when it was seen. */
function thrownBy({ isBackup }: Bowler, [speedMph, revRateRpm, axisRotationDeg]: HandNumbers) {
  return { speedMph, revRateRpm, axisRotationDeg: isBackup ? -axisRotationDeg : axisRotationDeg };
}

/** The bowler as the shots have shown the hand, in the mean; as given where they have not. */
export function bowlerLearned({ house, bowler }: Pick<PlanQuestion, "house" | "bowler">): Bowler {
  if (!isTaughtInWorlds(house)) return bowler;
  const hand = handOf(house.inWorlds, bowler);
  if (hand === null) return bowler;
  const { worlds } = house.inWorlds;
  const weights = worlds.map(({ weight }) => weight);
  const mean = (of: 0 | 1 | 2) =>
    weightedMean(
      worlds.map(({ deliveries }) => deliveries[hand][of]),
      weights,
    );
  return { ...bowler, ...thrownBy(bowler, [mean(0), mean(1), mean(2)]) };
}

/** Whether a house has taught in the worlds that plans draw from now: what was learned in others is taken as it was before there were any. */
export function isTaughtInWorlds(house: HouseLearned | null): house is HouseLearned & Required<Pick<HouseLearned, "inWorlds">> {
  return house?.inWorlds !== undefined && house.inWorlds.ensemble === ensemble().digest;
}
