import { type Assumed, assume } from "../../assumptions.ts";
import { EngineFault, type Problem } from "../../fault.ts";
import type { HandNumbers, HouseLearned, LearnedWorld } from "../../planning/question.ts";
import { deriveSeed, normalDeviate } from "../../random.ts";
import { effectiveWorlds } from "../../worlds/effectiveNumber.ts";
import { ensemble, type World } from "../../worlds/ensemble.ts";
import { NIGHT_IDS } from "../../worlds/parameters.ts";
import { weightedMean } from "../../worlds/weightedMean.ts";
import { weightedCovariance } from "../matrix.ts";
import { cloudOf, type Particle } from "./cloud.ts";
import { type InWorld, type Looking, type Shown, seenIn } from "./inWorld.ts";
import type { Eye, SituationSeen } from "./notes.ts";
import { LATENT, observe, throwerFor } from "./observe.ts";
import {
  DELIVERY_IDS,
  type DeliveryId,
  deliveryAt,
  type Hand,
  laneAt,
  middlePlace,
  type Parameter,
  type ParameterId,
  type Place,
  parametersOf,
  placeSize,
  valuesAt,
} from "./parameters.ts";
import type { Scatter } from "./scatter.ts";

/** Everything a house is learned from. */
export interface CorrectQuestion {
  readonly seed: number;
  /** Whose shots were seen: at least one. */
  readonly hands: readonly Hand[];
  readonly situations: readonly SituationSeen[];
  readonly eye: Eye;
  readonly assumptions: Readonly<Partial<Assumed>>;
}

/** One parameter after the shots. */
export interface Learned {
  readonly id: ParameterId;
  /** Whose hand, by its place; null: the house's. */
  readonly hand: number | null;
  /** Mean, and the ends of the 90 % interval. */
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly before: { readonly value: number; readonly low: number; readonly high: number };
  /** Standard deviation over that of the prior: 1 is nothing learned. */
  readonly left: number;
}

/** What the shots tell of a house. */
export interface Correction {
  readonly shots: number;
  readonly parameters: readonly Learned[];
  /** Pairs that the shots tell together better than apart. */
  readonly tied: readonly { readonly pair: readonly [Parameter, Parameter]; readonly correlation: number }[];
  /** Parameters of which the shots say next to nothing. */
  readonly untold: readonly Parameter[];
  /** Parameters that came out wholly outside what was believed of them before. */
  readonly beyond: readonly Parameter[];
  /** Of how many worlds that were asked, and on how many it rests: their effective number. */
  readonly worlds: { readonly asked: number; readonly effective: number; readonly areFew: boolean };
  /** How well clouds that know nothing of one another agree: 1 is wholly. */
  readonly worstRhat: number;
  /** What a plan takes in place of the worlds' own nights. */
  readonly house: HouseLearned;
}

/** A correction with what it was computed from, for asking on. */
export interface CorrectionRun {
  readonly correction: Correction;
  /** By situation, in the middle world. */
  readonly scatters: readonly Scatter[];
  /** Each counts alike. */
  readonly drawn: readonly Drawn[];
}

/** A house and a hand in one of the worlds. */
export interface Drawn {
  readonly world: World;
  readonly place: Place;
  /** Every parameter, in the order of {@link parametersOf}. */
  readonly values: readonly number[];
  readonly shown: Shown;
}

/** So many worlds are asked. */
const WORLDS = 160;
/** What rests on fewer is rough. Chosen. */
const FEW_WORLDS = 10;
/** Clouds that know nothing of one another, and the houses and hands in each; and in the middle world, which is what is drawn and told in words. */
const CLOUDS = 2;
const IN_CLOUD = 512;
const MOST_IN_CLOUD = 2048;
const IN_MIDDLE = 128;
/** So many are kept for plans, and for asking what to look at next. */
const KEPT = 128;
/** Told to less than so much of the prior's width nothing was learned. */
const UNTOLD_FROM = 0.9;
/** Nor was nothing learned of what has moved by so much of it. */
const MOVED = 0.5;
const TIED_FROM = 0.5;
/** Clouds that agree worse than this have not settled (Gelman and Rubin 1992: "near 1, say below 1.2"; from memory). */
const SETTLED = 1.2;

/** Whether the clouds agree so well that what they say may be used. */
export function hasSettled({ worstRhat }: Pick<Correction, "worstRhat">): boolean {
  return worstRhat <= SETTLED;
}

/**
 * A house, and the bowler's mean delivery, from shots that were seen: which houses and hands may have thrown them, in which of the worlds that plans draw from.
 *
 * @throws EngineFault where there is no shot
 */
export function correct(question: CorrectQuestion): CorrectionRun {
  checkQuestion(question);
  const { seed } = question;
  const middle = assume(question.assumptions);
  const worlds = ensemble().worlds.slice(0, WORLDS);
  const constants = worlds.map((world) => assumedOf(world, question));
  const askedWith = (looking: Looking) => constants.map((assumed, i) => asked(assumed, worlds[i].weight, looking));
  const { hands } = question;
  const cloud = (of: readonly ReturnType<typeof asked>[], size: number, stream: number) =>
    cloudOf(of, hands.length, size, deriveSeed(seed, stream)).particles;
  const first: Looking = { ...question, expectedFt: expectedFt(question, middle), near: middlePlace(hands.length) };
  const looking: Looking = { ...first, near: meanPlace(cloud(askedWith(first), WORLDS, 30)) };
  const inWorlds = askedWith(looking);
  let size = IN_CLOUD;
  const cloudsOf = () => Array.from({ length: CLOUDS }, (_, i) => cloud(inWorlds, size, 31 + i));
  const rowsOf = (of: readonly (readonly Particle[])[]) =>
    of.map((one) => one.map(({ world, place }) => valuesAt(place, constants[world], hands)));
  let clouds = cloudsOf();
  let rows = rowsOf(clouds);
  // Several hands, or shots that few worlds say, want more: the same again with twice as many.
  while (worstRhat(rows) > SETTLED && size < MOST_IN_CLOUD) {
    size *= 2;
    clouds = cloudsOf();
    rows = rowsOf(clouds);
  }
  const drawn = everySo(clouds.flat(), KEPT).map(({ world, place }): Drawn => {
    const values = valuesAt(place, constants[world], hands);
    return { world: worlds[world], place, values, shown: inWorlds[world].seen().shown(place) };
  });
  const inMiddle = asked(middle, 1, looking);
  const house = houseOf(question, drawn, cloud([inMiddle], IN_MIDDLE, 40));
  const effective = effectiveWorlds(clouds.flat().map(({ world }) => ({ world, weight: 1 })));
  return { correction: told(question, rows, house, worlds, effective), scatters: inMiddle.seen().scatters, drawn };
}

/** A world that is asked; what the shots say in it is worked out once it is. */
function asked(assumed: Assumed, weight: number, looking: Looking) {
  let known: InWorld | null = null;
  return {
    weight,
    seen: (): InWorld => {
      known ??= seenIn(assumed, looking);
      return known;
    },
  };
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** So many of all, as far apart as can be; and in an order in which the first few of them are so too: whoever asks only some asks those. */
function everySo<T>(all: readonly T[], count: number): readonly T[] {
  const order = Array.from({ length: count }, (_, i) => i).sort((a, b) => ((a * GOLDEN) % 1) - ((b * GOLDEN) % 1));
  const place = order.map((_, i) => order.indexOf(i));
  return place.map((i) => all[Math.floor(((i + 0.5) * all.length) / count)]);
}

/** What is assumed in a world, but for its night. */
export function assumedOf({ values }: Pick<World, "values">, { assumptions }: Pick<CorrectQuestion, "assumptions">): Assumed {
  return assume({ ...values, ...assumptions });
}

/** Where each situation's ball is expected to turn by the middle world: what whoever notes "early" has in mind. */
function expectedFt({ hands, situations }: CorrectQuestion, middle: Assumed): readonly number[] {
  return situations.map((situation) => observe(throwerFor(situation, hands[situation.hand].bowler, middle), situation, [])[LATENT.hookFt]);
}

function meanPlace(cloud: readonly Particle[]): Place {
  return cloud[0].place.map((_, k) => cloud.reduce((sum, { place }) => sum + place[k], 0) / cloud.length);
}

/** @param clouds of each cloud, the parameters of its houses and hands */
function told(
  question: CorrectQuestion,
  clouds: readonly Rows[],
  house: HouseLearned,
  worlds: readonly World[],
  effective: number,
): Correction {
  const rows = clouds.flat();
  const alike = rows.map(() => 1);
  const { covariance } = weightedCovariance(rows, alike);
  const sds = covariance.map((row, i) => Math.sqrt(row[i]));
  const priors = priorsOf(question, worlds);
  const of = parametersOf(question.hands);
  const parameters = of.map(({ id, hand }, i): Learned => {
    const { sd, ...before } = priors[i];
    const after = summary(
      rows.map((row) => row[i]),
      alike,
    );
    return { id, hand, value: after.value, low: after.low, high: after.high, before, left: sds[i] / sd };
  });
  const tied = of.flatMap((a, i) =>
    of.slice(i + 1).flatMap((b, k) => {
      const j = i + 1 + k;
      const correlation = covariance[i][j] / (sds[i] * sds[j]);
      return Math.abs(correlation) >= TIED_FROM ? [{ pair: [a, b] as const, correlation }] : [];
    }),
  );
  return {
    shots: house.shots,
    parameters,
    tied: tied.toSorted((a, b) => Math.abs(b.correlation) - Math.abs(a.correlation)),
    untold: parameters
      .filter(({ left, value, before }, i) => left >= UNTOLD_FROM && Math.abs(value - before.value) < MOVED * priors[i].sd)
      .map(({ id, hand }) => ({ id, hand })),
    beyond: parameters.filter(({ low, high, before }) => low > before.high || high < before.low).map(({ id, hand }) => ({ id, hand })),
    worlds: { asked: worlds.length, effective, areFew: effective < FEW_WORLDS },
    worstRhat: worstRhat(clouds),
    house,
  };
}

/** Gelman & Rubin (1992): spread within clouds against spread of their means. */
function worstRhat(clouds: readonly Rows[]): number {
  const length = clouds[0].length;
  const each = clouds.map((rows) =>
    weightedCovariance(
      rows,
      rows.map(() => 1),
    ),
  );
  return Math.max(
    ...clouds[0][0].map((_, i) => {
      const means = each.map(({ mean }) => mean[i]);
      const all = means.reduce((sum, mean) => sum + mean, 0) / means.length;
      const between = means.reduce((sum, mean) => sum + (mean - all) ** 2, 0) / (means.length - 1);
      const within = each.reduce((sum, { covariance }) => sum + covariance[i][i], 0) / each.length;
      return within > 0 ? Math.sqrt((length - 1) / length + between / within) : 1;
    }),
  );
}

type Rows = readonly (readonly number[])[];

const EVEN = 200;

/** What was believed of each parameter before: over the worlds that were asked, and houses and hands as they may be. */
function priorsOf({ hands, assumptions }: CorrectQuestion, worlds: readonly World[]) {
  const weights = worlds.map(({ weight }) => weight);
  const constants = worlds.map((world) => assumedOf(world, { assumptions }));
  const ends = (share: number) => valuesAt(new Array<number>(placeSize(hands.length)).fill(share), constants[0], hands);
  // Places are standard normal: their 5, 50 and 95 % points, and the deviation of an even or normal prior by even points.
  const [low, value, high] = [-1.6449, 0, 1.6449].map(ends);
  const even = Array.from({ length: EVEN }, (_, i) => ends(normalDeviate((i + 0.5) / EVEN)));
  return parametersOf(hands).map(({ id }, i) => {
    if (!isOwn(id))
      return summary(
        constants.map((assumed) => assumed[id]),
        weights,
      );
    const values = even.map((of) => of[i]);
    const { sd } = summary(
      values,
      values.map(() => 1),
    );
    return { value: value[i], low: low[i], high: high[i], sd };
  });
}

/** Whether a parameter is of the house that night or of the hand, and no constant of a world. */
function isOwn(id: ParameterId): id is Exclude<ParameterId, "friction.oil" | "carriedOil.share" | "friction.laneRoughness"> {
  return NIGHT_IDS.some((one) => one === id) || DELIVERY_IDS.some((one) => one === id);
}

function summary(values: readonly number[], weights: readonly number[]) {
  const value = weightedMean(values, weights);
  const sd = Math.sqrt(
    weightedMean(
      values.map((one) => (one - value) ** 2),
      weights,
    ),
  );
  const sorted = values.map((one, i) => ({ one, weight: weights[i] })).sort((a, b) => a.one - b.one);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const at = (share: number) => {
    let passed = 0;
    for (const { one, weight } of sorted) {
      passed += weight;
      if (passed >= share * total) return one;
    }
    return sorted[sorted.length - 1].one;
  };
  return { value, sd, low: at(0.05), high: at(0.95) };
}

function handOf({ speedMph, revRateRpm, axisRotationDeg }: Readonly<Record<DeliveryId, number>>): HandNumbers {
  return [speedMph, revRateRpm, axisRotationDeg];
}

/** What a plan takes: houses and hands, each in its world; and those of the middle world, for what is drawn. */
function houseOf({ hands, situations }: CorrectQuestion, drawn: readonly Drawn[], inMiddle: readonly Particle[]): HouseLearned {
  const numbersOf = (place: Place) => {
    const lane = laneAt(place);
    return NIGHT_IDS.map((id) => lane[id]);
  };
  const worlds = drawn.map(({ world, place }): LearnedWorld => {
    const deliveries = hands.map((_, hand) => handOf(deliveryAt(place, hands, hand)));
    return { world: world.id, weight: 1 / drawn.length, lane: numbersOf(place), deliveries };
  });
  return {
    shots: situations.reduce((sum, { shots }) => sum + shots.length, 0),
    ids: [...NIGHT_IDS],
    draws: inMiddle.map(({ place }) => numbersOf(place)),
    inWorlds: { ensemble: ensemble().digest, bowlers: hands.map(({ bowler }) => handOf(bowler)), worlds },
  };
}

function checkQuestion({ situations, hands, eye }: CorrectQuestion): void {
  const problems: Problem[] = [];
  if (situations.every(({ shots }) => shots.length === 0))
    problems.push({ path: "shots", value: "none", allowed: "at least one shot that was seen" });
  for (const [name, sd] of [...hands.flatMap(({ known }) => Object.entries(known)), ...Object.entries(eye)])
    if (!(sd > 0 && Number.isFinite(sd))) problems.push({ path: name, value: sd, allowed: "a standard deviation above 0" });
  if (problems.length > 0) throw new EngineFault(problems);
}
