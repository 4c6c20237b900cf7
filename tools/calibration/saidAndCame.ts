import { band, compare, type Scored, type Shares } from "#engine/planning/comparison";
import { SITUATIONS } from "#engine/planning/situations";
import { weightedMean } from "#engine/worlds/weightedMean";
import { ladderFor } from "./model.ts";

/** How many worlds a plan is computed in. */
const WORLDS = 64;
const AS_GOOD = 0.02;
const BINS = [0, 0.5, 0.7, 0.9, 1.0001] as const;
const SHOT_FIGURES = ["board at the pins", "entry angle", "hook start"] as const;

/** World by world: each situation's ladder through the session, and its mean shot on one line (board, entry angle, hook start). */
export interface InWorlds {
  readonly ladders: readonly (readonly (readonly number[])[])[];
  readonly shots: readonly (readonly (readonly number[])[])[];
}

/** A world taken for the true one. */
export interface Truth {
  /** Its place in the ensemble: it does not help to predict itself. */
  readonly at: number;
  readonly weight: number;
  readonly ladders: readonly (readonly number[])[];
  readonly shots: readonly (readonly number[])[];
}

/** One plan of one situation, with what then came. */
export interface Trial {
  readonly weight: number;
  readonly raw: number;
  readonly printed: number;
  readonly came: number;
  readonly strikes: Held;
  /** As `SHOT_FIGURES`. */
  readonly shot: readonly Held[];
}

/** Share of the truths inside the 90 % interval, and its width over that of all worlds. */
interface Held {
  readonly inside: number;
  readonly wide: number;
}

/** Every situation with every truth. */
export function trialsOf(worlds: InWorlds, shares: Shares, truths: readonly Truth[]): readonly Trial[] {
  const all = SITUATIONS.map((_, k) => ({
    strikes: ladderFor(SITUATIONS[k]).map((_, f) =>
      intervalOf(
        worlds.ladders.map((ladders) => ladders[k][f]),
        shares.weights,
      ),
    ),
    shot: SHOT_FIGURES.map((_, f) =>
      intervalOf(
        worlds.shots.map((shots) => shots[k][f]),
        shares.weights,
      ),
    ),
  }));
  return truths.filter(({ weight }) => weight > 0).flatMap((truth) => SITUATIONS.map((_, k) => trialOf(worlds, shares, truth, k, all[k])));
}

/** What was said and printed, and what came, by what was said; then the intervals. */
export function saidAndCame(worlds: InWorlds, shares: Shares, truths: readonly Truth[]): string[] {
  const trials = trialsOf(worlds, shares, truths);
  const row = (name: string, own: readonly Trial[]) =>
    own.length === 0
      ? []
      : [`| ${name} | ${own.length} | ${of(own, "raw").toFixed(2)} | ${of(own, "printed").toFixed(2)} | ${of(own, "came").toFixed(2)} |`];
  const bins = (by: "raw" | "printed") =>
    BINS.slice(1).flatMap((to, i) =>
      row(
        `${by === "raw" ? "said" : "printed"} ${BINS[i]} to ${Math.min(1, to)}`,
        trials.filter((one) => one[by] >= BINS[i] && one[by] < to),
      ),
    );
  const held = (name: string, pick: (trial: Trial) => Held) => {
    const inside = weightedMean(
      trials.map((trial) => pick(trial).inside),
      trials.map(({ weight }) => weight),
    );
    const wide = trials.map((trial) => pick(trial).wide).sort((a, b) => a - b)[Math.floor(trials.length / 2)];
    return `| ${name} | ${inside.toFixed(2)} | ${wide.toFixed(2)} |`;
  };
  return [
    "| share | plans | said | printed | came |",
    "|---|---|---|---|---|",
    ...bins("raw"),
    ...bins("printed"),
    ...row("all", trials),
    "",
    "| 90 % interval of | truth inside | wide |",
    "|---|---|---|",
    held("strikes of each finish", ({ strikes }) => strikes),
    ...SHOT_FIGURES.map((name, f) => held(name, ({ shot }) => shot[f])),
  ];
}

type Range = { readonly low: number; readonly high: number };

function intervalOf(values: readonly number[], weights: readonly number[]): Range {
  return band(values, weightedMean(values, weights), weights);
}

function trialOf(
  worlds: InWorlds,
  shares: Shares,
  truth: Truth,
  k: number,
  all: Readonly<Record<"strikes" | "shot", readonly Range[]>>,
): Trial {
  const used = shares.weights.flatMap((_, i) => (i === truth.at ? [] : [i])).slice(0, WORLDS);
  const own = { weights: used.map((i) => shares.weights[i]), priorWeights: used.map((i) => shares.priorWeights[i]) };
  const standings = ladderFor(SITUATIONS[k]).map((finish, f): Scored => {
    const drawn = used.map((i) => worlds.ladders[i][k][f]);
    return { finish, score: weightedMean(drawn, own.weights), drawn };
  });
  const { plateau, share, sureShare } = compare(standings, own, "strikeChance", null);
  const row = truth.ladders[k];
  const strikes = standings.map(({ drawn }, f) => heldBy(intervalOf(drawn, own.weights), row[f], all.strikes[f]));
  return {
    weight: truth.weight,
    raw: share,
    printed: sureShare,
    came: Math.max(...row.slice(plateau[0], plateau[1] + 1)) >= Math.max(...row) - AS_GOOD ? 1 : 0,
    strikes: { inside: mean(strikes.map(({ inside }) => inside)), wide: mean(strikes.map(({ wide }) => wide)) },
    shot: SHOT_FIGURES.map((_, f) => {
      const drawn = used.map((i) => worlds.shots[i][k][f]);
      return heldBy(intervalOf(drawn, own.weights), truth.shots[k][f], all.shot[f]);
    }),
  };
}

function heldBy({ low, high }: Range, value: number, all: Range): Held {
  return { inside: value >= low && value <= high ? 1 : 0, wide: (high - low) / Math.max(1e-9, all.high - all.low) };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** @returns the mean over plans, each by the share of its truth */
export function of(trials: readonly Trial[], what: "raw" | "printed" | "came"): number {
  return weightedMean(
    trials.map((trial) => trial[what]),
    trials.map(({ weight }) => weight),
  );
}
