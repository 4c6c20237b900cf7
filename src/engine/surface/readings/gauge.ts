import { refuse } from "../../fault.ts";

/** One reading of a gauge study. */
export interface GaugeReading {
  readonly part: string;
  readonly person: string;
  readonly trial: number;
  readonly value: number;
}

/** Standard deviations of a study and their shares of the total, per cent. */
export interface GaugeResult {
  /** Repeatability: one person, one part, again. */
  readonly ev: number;
  /** Reproducibility: between people. */
  readonly av: number;
  readonly grr: number;
  /** Between parts. */
  readonly pv: number;
  readonly tv: number;
  readonly percent: { readonly ev: number; readonly av: number; readonly grr: number; readonly pv: number };
  /** How many kinds of part the gauge can tell apart, 1.41 PV/GRR, whole. */
  readonly distinct: number;
}

export interface Anova extends GaugeResult {
  /** F of the interaction of part and person; null where it cannot be had. */
  readonly interactionF: number | null;
  /** Whether the interaction was pooled with repeatability, its F being no larger than would be by chance. */
  readonly pooled: boolean;
}

/** d₂* for the range of so many values over so many subgroups: the tables of the AIAG manual (Measurement Systems Analysis); K = 1/d₂*. Published. */
const K1: Readonly<Record<number, number>> = { 2: 0.8862, 3: 0.5908 };
const K2: Readonly<Record<number, number>> = { 2: 0.7071, 3: 0.5231 };
const K3: Readonly<Record<number, number>> = {
  2: 0.7071,
  3: 0.5231,
  4: 0.4467,
  5: 0.403,
  6: 0.3742,
  7: 0.3534,
  8: 0.3375,
  9: 0.3249,
  10: 0.3146,
};
/** Interaction is pooled below the 75 % point, about: the manual pools where its significance is above 0.25. */
const POOL_BELOW_F = 1.3;

interface Table {
  readonly parts: readonly string[];
  readonly people: readonly string[];
  readonly trials: number;
  /** Values by part, person, trial. */
  readonly values: readonly (readonly (readonly number[])[])[];
}

/** @throws EngineFault unless every person measured every part equally often, at least twice, and there are at least two of each. */
function tableOf(readings: readonly GaugeReading[]): Table {
  const parts = [...new Set(readings.map(({ part }) => part))];
  const people = [...new Set(readings.map(({ person }) => person))];
  const values = parts.map((part) =>
    people.map((person) =>
      readings
        .filter((one) => one.part === part && one.person === person)
        .toSorted((a, b) => a.trial - b.trial)
        .map(({ value }) => value),
    ),
  );
  const trials = Math.max(...values.flat().map((cell) => cell.length));
  if (values.some((row) => row.some((cell) => cell.length !== trials)))
    refuse("readings", "unequal", `every person measures every part ${trials} times`);
  if (parts.length < 2 || people.length < 2 || trials < 2)
    refuse("readings", `${parts.length} parts, ${people.length} people, ${trials} trials`, "at least 2 parts, 2 people and 2 trials");
  return { parts, people, trials, values };
}

/**
 * Range method of the AIAG manual.
 *
 * @throws EngineFault for a study that is not crossed and balanced, or larger than the method's tables: 2–3 people and trials, 2–10 parts.
 */
export function rangeStudy(readings: readonly GaugeReading[]): GaugeResult {
  const { parts, people, trials, values } = tableOf(readings);
  const [k1, k2, k3] = [K1[trials], K2[people.length], K3[parts.length]];
  if (k1 === undefined || k2 === undefined || k3 === undefined)
    refuse(
      "readings",
      `${parts.length} parts, ${people.length} people, ${trials} trials`,
      "2–10 parts, 2–3 people, 2–3 trials for the range method",
    );
  const cells = values.flat();
  const meanRange = mean(cells.map(rangeOf));
  const personMeans = people.map((_, person) => mean(values.flatMap((row) => row[person])));
  const partMeans = values.map((row) => mean(row.flat()));
  const ev = meanRange * k1;
  const av = Math.sqrt(Math.max(0, (rangeOf(personMeans) * k2) ** 2 - ev ** 2 / (parts.length * trials)));
  return resultOf(ev, av, rangeOf(partMeans) * k3);
}

/** Analysis of variance with both factors random; a negative component counts as none. */
export function anovaStudy(readings: readonly GaugeReading[]): Anova {
  const { parts, people, trials, values } = tableOf(readings);
  const [p, o, r] = [parts.length, people.length, trials];
  const grand = mean(values.flat(2));
  const partMeans = values.map((row) => mean(row.flat()));
  const personMeans = people.map((_, person) => mean(values.flatMap((row) => row[person])));
  const cellMeans = values.map((row) => row.map(mean));
  const ssPart = o * r * sum(partMeans.map((m) => (m - grand) ** 2));
  const ssPerson = p * r * sum(personMeans.map((m) => (m - grand) ** 2));
  const ssCell = r * sum(cellMeans.flat().map((m) => (m - grand) ** 2));
  const ssError = sum(values.flatMap((row, i) => row.flatMap((cell, j) => cell.map((value) => (value - cellMeans[i][j]) ** 2))));
  const ssInteraction = ssCell - ssPart - ssPerson;
  const [dfInteraction, dfError] = [(p - 1) * (o - 1), p * o * (r - 1)];
  const msInteraction = ssInteraction / dfInteraction;
  const msError = ssError / dfError;
  const interactionF = msError > 0 ? msInteraction / msError : null;
  const pooled = interactionF !== null && interactionF < POOL_BELOW_F;
  const msRepeat = pooled ? (ssError + ssInteraction) / (dfError + dfInteraction) : msError;
  const msBelow = pooled ? msRepeat : msInteraction;
  const varInteraction = pooled ? 0 : Math.max(0, (msInteraction - msError) / r);
  const varPerson = Math.max(0, (ssPerson / (o - 1) - msBelow) / (p * r));
  const varPart = Math.max(0, (ssPart / (p - 1) - msBelow) / (o * r));
  return { ...resultOf(Math.sqrt(msRepeat), Math.sqrt(varPerson + varInteraction), Math.sqrt(varPart)), interactionF, pooled };
}

function resultOf(ev: number, av: number, pv: number): GaugeResult {
  const grr = Math.hypot(ev, av);
  const tv = Math.hypot(grr, pv);
  const share = (sd: number) => (tv > 0 ? (100 * sd) / tv : 0);
  return {
    ev,
    av,
    grr,
    pv,
    tv,
    percent: { ev: share(ev), av: share(av), grr: share(grr), pv: share(pv) },
    distinct: grr > 0 ? Math.max(1, Math.floor((1.41 * pv) / grr)) : 0,
  };
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const mean = (values: readonly number[]): number => sum(values) / values.length;
const rangeOf = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
