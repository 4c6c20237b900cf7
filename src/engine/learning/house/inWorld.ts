import type { Assumed } from "../../assumptions.ts";
import { averagedBall, houseFriction } from "../../motion/ground.ts";
import { shotLikelihood } from "./likelihood.ts";
import type { Eye, SituationSeen } from "./notes.ts";
import { distancesOf, type Off, observe, roughnessSeen } from "./observe.ts";
import { deliveryAt, type Hand, laneAt, type Place } from "./parameters.ts";
import { type Scatter, scatterOf } from "./scatter.ts";

/** Shots that were seen, and how well the eye reads. */
export interface Looking {
  readonly hands: readonly Hand[];
  readonly situations: readonly SituationSeen[];
  readonly eye: Eye;
  /** By situation, the distance at which its ball was expected to turn: what "early" and "late" are told against. */
  readonly expectedFt: readonly number[];
  /** A house and a hand near those that threw the shots: about there it is counted how shots scatter. */
  readonly near: Place;
}

/** What a place shows of each situation, latent by latent. */
export type Shown = readonly ArrayLike<number>[];

/** One world, seen through the averaged model. */
export interface InWorld {
  readonly shown: (place: Place) => Shown;
  /** Logarithm of the chance of what was seen of one of the hands. */
  readonly logLikelihood: (place: Place, hand: number) => number;
  /** By situation, how shots scatter about what was meant. */
  readonly scatters: readonly Scatter[];
}

/** What the shots say in one world: what does not change in it from house to house is worked out once. */
export function seenIn(world: Assumed, { hands, situations, eye, expectedFt, near }: Looking): InWorld {
  const own = situations.map((situation) => ({
    situation,
    distances: distancesOf(situation),
    ball: averagedBall(situation.ball, world["roll.resistance"]),
    frictionIn: houseFriction(situation.film, situation.ball, roughnessSeen(situation, world), world),
  }));
  const seenAt = (place: Place, of: number, off?: Off): Float64Array => {
    const { situation, distances, ball, frictionIn } = own[of];
    const bowler = { ...hands[situation.hand].bowler, ...deliveryAt(place, hands, situation.hand) };
    return observe({ bowler, ball, friction: frictionIn(laneAt(place)) }, situation, distances, off);
  };
  const scatters = situations.map(({ shots }, of) => scatterOf((off) => seenAt(near, of, off), shots.length));
  const likelihoods = situations.map((situation, i) =>
    situation.shots.map((shot) => shotLikelihood(shot, scatters[i], expectedFt[i], own[i].distances, eye)),
  );
  const ofHand = hands.map((_, hand) => situations.flatMap((situation, i) => (situation.hand === hand ? [i] : [])));
  return {
    scatters,
    shown: (place) => situations.map((_, of) => seenAt(place, of)),
    logLikelihood: (place, hand) => {
      let sum = 0;
      for (const of of ofHand[hand]) {
        const shown = seenAt(place, of);
        for (const likelihood of likelihoods[of]) sum += likelihood(shown);
      }
      return sum;
    },
  };
}
