import type { Assumed } from "../../assumptions.ts";
import type { Bowler } from "../../delivery/bowler.ts";
import { averagedBall, houseFriction } from "../../motion/ground.ts";
import { shotLikelihood } from "./likelihood.ts";
import type { Eye, SituationSeen } from "./notes.ts";
import { distancesOf, type Off, observe, roughnessSeen } from "./observe.ts";
import { deliveryAt, laneAt, type MeanKnown, type Place } from "./parameters.ts";
import { type Scatter, scattersOf } from "./scatter.ts";

/** Shots that were seen, of one bowler, and how well the eye reads. */
export interface Looking {
  readonly bowler: Bowler;
  readonly known: MeanKnown;
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
  /** Logarithm of the chance of everything that was seen. */
  readonly logLikelihood: (place: Place) => number;
  /** By situation, how shots scatter about what was meant. */
  readonly scatters: readonly Scatter[];
}

/** What the shots say in one world: what does not change in it from house to house is worked out once. */
export function seenIn(world: Assumed, { bowler, known, situations, eye, expectedFt, near }: Looking): InWorld {
  const own = situations.map((situation) => ({
    situation,
    distances: distancesOf(situation),
    ball: averagedBall(situation.ball, world["roll.resistance"]),
    frictionIn: houseFriction(situation.film, situation.ball, roughnessSeen(situation, world), world),
  }));
  const seenAt = (place: Place, off?: Off): Float64Array[] => {
    const house = laneAt(place);
    const thrown = { ...bowler, ...deliveryAt(place, bowler, known) };
    return own.map(({ situation, distances, ball, frictionIn }) =>
      observe({ bowler: thrown, ball, friction: frictionIn(house) }, situation, distances, off),
    );
  };
  const scatters = scattersOf((off) => seenAt(near, off), situations);
  const likelihoods = situations.map((situation, i) =>
    situation.shots.map((shot) => shotLikelihood(shot, scatters[i], expectedFt[i], own[i].distances, eye)),
  );
  return {
    scatters,
    shown: (place) => seenAt(place),
    logLikelihood: (place) => {
      const shown = seenAt(place);
      let sum = 0;
      likelihoods.forEach((shots, i) => {
        for (const likelihood of shots) sum += likelihood(shown[i]);
      });
      return sum;
    },
  };
}
