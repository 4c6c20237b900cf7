import type { Line } from "#engine/delivery/bowler";
import { band, compare, type Shares } from "#engine/planning/comparison";
import { SITUATIONS, type Situation } from "#engine/planning/situations";
import { effectiveRaUm, finishText, parseFinish } from "#engine/surface/finish";
import { effectiveNumber } from "#engine/worlds/effectiveNumber";
import type { Ensemble } from "#engine/worlds/ensemble";
import { PARAMETER_IDS, PRIORS, type Prior, worldAt } from "#engine/worlds/parameters";
import { weightedMean } from "#engine/worlds/weightedMean";
import { ladderFor, outsideLead } from "./model.ts";
import { type InWorlds, saidAndCame, type Truth } from "./saidAndCame.ts";
import { missOf, situationName, TARGETS, type Target } from "./targets.ts";

/** What the worlds of the ensemble said when it was made. */
export interface Stored {
  readonly digest: string;
  readonly seed: number;
  readonly tried: number;
  readonly drawn: number;
  readonly unfitted: number;
  readonly effectiveOfTried: number;
  readonly leastLoss: number;
  /** Which of the tried places each world is. */
  readonly places: readonly number[];
  /** World by world: each target. */
  readonly said: readonly (readonly (number | null)[])[];
  /** The line of each situation's mean shot. */
  readonly lines: readonly Line[];
  readonly ladders: InWorlds["ladders"];
  readonly shots: InWorlds["shots"];
  /** The same of truths of another contact law: the first worlds, with an exponential one. */
  readonly otherLaw: InWorlds;
}

/** docs/model/calibration.md. @throws when what is stored belongs to another ensemble */
export function calibrationPage(stored: Stored, { digest, worlds }: Ensemble): string {
  if (stored.digest !== digest) throw new Error(`said.json is of ${stored.digest}, the engine has ${digest}: run npm run calibrate`);
  const weights = worlds.map(({ weight }) => weight);
  const shares = { weights, priorWeights: worlds.map(({ priorWeight }) => priorWeight) };
  return [
    "# Calibration: worlds in place of constants",
    "",
    "*Written by `npm run calibrate`. Do not edit.*",
    "",
    "Nobody has published the friction of a given cover with a given finish in a film of given thickness. The law's form is physics (friction.md); its constants nobody",
    "has measured. A plan therefore does not believe one set of them: it is computed in many complete *worlds*, each one value for everything that is not known, weighed by how well it",
    "says what *is* known: published bands, second-hand where they say so, and what the trade puts on whose ball on which lane (common practice, no source). Agreement is plausibility, not proof.",
    "",
    `${stored.tried} places of the priors (an even sequence, seed ${stored.seed}) were asked; the logarithm of a weight is −½ Σ (miss / unit)² over the fitted targets, a world that has no line to answer on`,
    `misses by 4 units. They count as ${stored.effectiveOfTried.toFixed(0)} (1/Σw²); the best of them has a loss of ${stored.leastLoss.toFixed(2)}. ${stored.drawn} were drawn by weight, ${Math.round(100 * stored.unfitted)} % of them from the priors as they are, so that *sure* stays modest.`,
    `Kept: ${worlds.length} different worlds, which count as ${effectiveNumber(weights).toFixed(0)}; ordered so that the first few stand for all (herding on the situations' ladders). Digest \`${digest}\`.`,
    "",
    "## Nothing is pinned",
    "",
    "A single constant is hardly known better than before: *never read a row as something learned of that constant*. What is fixed a little are combinations. What is drawn, and told where one number",
    "is wanted, is the *middle law*: of the first worlds' friction laws (all else at the registry's values, friction in oil within what is published) the one whose ladders and constants lie in the middle.",
    "",
    "| parameter | prior | 5 % | 50 % | 95 % | spread over the prior's |",
    "|---|---|---|---|---|---|",
    ...parameterRows(worlds, weights),
    "",
    "## Targets that were fitted",
    "",
    ...targetTable(stored, weights, (target) => !target.leftOut),
    "",
    "## Kept out, and predicted",
    "",
    ...targetTable(stored, weights, (target) => target.leftOut),
    "",
    "## The trade's situations through the session",
    "",
    "As a plan scores them: mean over the worlds of the session's strikes in 100. *Lead*: of the best finish inside the trade's interval over the best outside. *Loss*: what the trade's best loses against the best of all.",
    `*Picks*: by the rule of the plan, with ${TODAYS.join(", ")} on the ball; bold where the trade disagrees.`,
    "",
    "| situation | fitted | strikes in 100, dull to smooth | lead | loss | picks |",
    "|---|---|---|---|---|---|",
    ...situationRows(stored, weights),
    "",
    "## Said, and what came",
    "",
    "Each world in turn is taken for the true one, in each situation; a plan over 64 of the others says which finishes it cannot tell apart from the best and in what share of worlds one of them is",
    "within two strikes of the best (*said*, weighed by what is believed). *Printed* is the lower limit of that share, by what is believed or by the priors alone, whichever is less. *Came*: how often it was so in the true",
    "world. Then, of the same worlds, whether the truth lay in the 90 % interval: strikes of every finish, and the mean shot on one line (board at the pins, entry angle, hook start); *wide*: the median interval over that of all worlds as they are believed.",
    "",
    ...truthsOf(stored, shares).flatMap(({ name, truths }) => [`**${name}.**`, "", ...saidAndCame(stored, shares, truths), ""]),
  ].join("\n");
}

/** Truths of three kinds, for what is said to be held against what comes. */
export function truthsOf(
  { ladders, shots, otherLaw }: Stored,
  { weights, priorWeights }: Shares,
): readonly { readonly name: string; readonly truths: readonly Truth[] }[] {
  const own = (shares: readonly number[]) => shares.map((weight, at): Truth => ({ at, weight, ladders: ladders[at], shots: shots[at] }));
  const other = otherLaw.ladders.map((ladder, at): Truth => ({ at, weight: weights[at], ladders: ladder, shots: otherLaw.shots[at] }));
  return [
    { name: "Truths as they are believed", truths: own(weights) },
    { name: "Truths from the priors as they are", truths: own(priorWeights) },
    { name: "Truths of another contact law: asperities let go exponentially", truths: other },
  ];
}

function parameterRows(worlds: Ensemble["worlds"], weights: readonly number[]): string[] {
  const all = worlds.map(({ unit }) => worldAt(unit));
  return PARAMETER_IDS.map((id, i) => {
    const values = all.map((world) => world[id] ?? Number.NaN);
    const at = (share: number) => quantile(values, weights, share).toPrecision(3);
    const units = worlds.map(({ unit }) => unit[i]);
    const mean = weightedMean(units, weights);
    const sd = Math.sqrt(
      weightedMean(
        units.map((unit) => (unit - mean) ** 2),
        weights,
      ),
    );
    return `| ${id} | ${priorText(PRIORS[id])} | ${at(0.05)} | ${at(0.5)} | ${at(0.95)} | ${(sd * Math.sqrt(12)).toFixed(2)} |`;
  });
}

function priorText({ low, high, scale, of }: Prior): string {
  return `${low}–${high}${scale === "log" ? ", log" : ""}${of === undefined ? "" : ` × ${of}`}`;
}

function quantile(values: readonly number[], weights: readonly number[], share: number): number {
  const sorted = values.map((value, i) => ({ value, weight: weights[i] })).sort((a, b) => a.value - b.value);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  let passed = 0;
  for (const { value, weight } of sorted) {
    passed += weight;
    if (passed >= share * total) return value;
  }
  return sorted[sorted.length - 1].value;
}

function targetTable(stored: Stored, weights: readonly number[], wanted: (target: Target) => boolean): string[] {
  return [
    "| target | wanted | mean | 90 % of the worlds | share of them inside | mean miss / unit | mark and source |",
    "|---|---|---|---|---|---|---|",
    ...TARGETS.flatMap((target, k) => {
      if (!wanted(target)) return [];
      const rows = stored.said.map((row, i) => ({ said: row[k], weight: weights[i] }));
      const heard = rows.filter((row): row is { said: number; weight: number } => row.said !== null);
      const values = heard.map(({ said }) => said);
      const own = heard.map(({ weight }) => weight);
      const mean = weightedMean(values, own);
      const { low, high } = band(values, mean, own);
      const misses = rows.map(({ said }) => missOf(target, said));
      const inside = weightedMean(
        misses.map((miss) => (miss === 0 ? 1 : 0)),
        weights,
      );
      return [
        `| ${target.name} | ${wantedText(target)} | ${mean.toFixed(2)} | ${low.toFixed(2)} to ${high.toFixed(2)} | ${inside.toFixed(2)} | ${weightedMean(misses, weights).toFixed(2)} | ${target.mark}: ${target.source} |`,
      ];
    }),
  ];
}

function wantedText({ wanted: [low, high], unitName }: Target): string {
  return Number.isFinite(low) ? `${low} to ${high} ${unitName}` : `at most ${high} ${unitName}`;
}

/** What is on the ball when the situations are asked: the pick stays near it where finishes cannot be told apart. */
export const TODAYS = ["500", "2000", "4000 + polish"] as const;

/** One situation over all worlds: what a plan would pick with each of the finishes on the ball, and whether the trade agrees. */
export interface InAllWorlds {
  readonly situation: Situation;
  readonly isFitted: boolean;
  readonly means: readonly number[];
  /** Of the best finish inside the trade's interval over the best outside, strikes in 100. */
  readonly lead: number;
  readonly picks: readonly { readonly today: string; readonly finish: string; readonly agrees: boolean }[];
}

export function situationsInAllWorlds(stored: Stored, weights: readonly number[]): readonly InAllWorlds[] {
  return SITUATIONS.map((situation, k) => {
    const standings = ladderFor(situation).map((finish, f) => {
      const drawn = stored.ladders.map((ladders) => ladders[k][f]);
      return { finish, drawn, score: weightedMean(drawn, weights) };
    });
    const means = standings.map(({ score }) => score);
    const [most, least] = [situation.from, situation.to].map((text) => effectiveRaUm(parseFinish(text)));
    return {
      situation,
      isFitted: TARGETS.find(({ name }) => name === situationName(situation))?.leftOut === false,
      means,
      lead: -outsideLead(situation, means),
      picks: TODAYS.map((today) => {
        const { pick } = compare(standings, { weights, priorWeights: weights }, "strikeChance", parseFinish(today));
        const ra = effectiveRaUm(standings[pick].finish);
        return { today, finish: finishText(standings[pick].finish), agrees: ra <= most + 1e-9 && ra >= least - 1e-9 };
      }),
    };
  });
}

function situationRows(stored: Stored, weights: readonly number[]): string[] {
  const all = situationsInAllWorlds(stored, weights);
  return [
    ...all.map(({ situation, isFitted, means, lead, picks }) => {
      const row = picks.map(({ finish, agrees }) => (agrees ? finish : `**${finish}**`)).join(", ");
      return `| ${situationName(situation)} | ${isFitted ? "yes" : "kept out"} | ${means.map((mean) => (100 * mean).toFixed(1)).join(", ")} | ${lead.toFixed(1)} | ${Math.max(0, -lead).toFixed(1)} | ${row} |`;
    }),
    "",
    `The trade agrees with ${TODAYS.map((today, i) => `${all.filter(({ picks }) => picks[i].agrees).length} of ${all.length} picks with ${today} on the ball`).join(", ")}.`,
  ];
}
