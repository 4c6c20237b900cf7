import type { Correction } from "#engine/learning/house/correct";
import type { Misfit } from "#engine/learning/house/misfit";
import type { Parameter, ParameterId } from "#engine/learning/house/parameters";
import { usefulnessOf } from "#engine/learning/usefulness";
import { fixed, inHundred } from "../figures.ts";
import { USEFULNESS } from "./usefulness.ts";

/** What is learned, as it is called in a report, with its unit and decimals. */
export const PARAMETER_WORDS: Readonly<Record<ParameterId, { readonly name: string; readonly unit: string; readonly decimals: number }>> = {
  "house.dry": { name: "friction on the dry, over the usual", unit: "", decimals: 2 },
  "friction.oil": { name: "friction on full oil", unit: "", decimals: 4 },
  "film.scale": { name: "oil on the lane, over what is stated", unit: "", decimals: 2 },
  "house.frontOil": { name: "oil at the front, over what is stated", unit: "", decimals: 2 },
  "carriedOil.share": { name: "oil that the ball carries with it", unit: "", decimals: 2 },
  "friction.laneRoughness": { name: "roughness of the lane", unit: "µm", decimals: 2 },
  speedMph: { name: "launch speed", unit: "mph", decimals: 1 },
  revRateRpm: { name: "rev rate", unit: "rpm", decimals: 0 },
  axisRotationDeg: { name: "axis rotation", unit: "°", decimals: 1 },
};

function figure(id: ParameterId, value: number): string {
  const { decimals, unit } = PARAMETER_WORDS[id];
  return `${fixed(value, decimals)}${unit === "" || unit === "°" ? unit : ` ${unit}`}`;
}

/** A parameter by its name; of one of several hands, with whose. */
export function parameterName({ id, hand }: Parameter, handNames: readonly string[]): string {
  const { name } = PARAMETER_WORDS[id];
  return hand === null || handNames.length === 1 ? name : `${handNames[hand]}: ${name}`;
}

/** Shots that nothing which was learned explains. @param names of each kind's ball */
export function misfitText({ strange, shots, kinds }: Misfit, names: readonly string[]): string {
  const [worst] = kinds;
  const beside =
    worst.boardsOff === null
      ? ""
      : `, ${fixed(Math.abs(worst.boardsOff), 1)} boards ${worst.boardsOff > 0 ? "high" : "light"} of what was learned in the mean`;
  return `These shots do not fit. ${strange} of ${shots} with figures lie where one in a hundred would, most of all those of ${names[worst.situation]}${beside}. See whether boards are counted from the bowler's own side, and whether ball, line and oil are the right ones, before you use this.`;
}

/** The report of a house correction. */
export const CORRECT = {
  figure,
  heading: (shots: number, kinds: number) =>
    `${shots === 1 ? "One shot" : `${shots} shots`} of ${kinds === 1 ? "one kind" : `${kinds} kinds`} (ball, line, oil)`,
  columns: {
    what: ["", ""],
    before: ["assumed", "range"],
    after: ["now", ""],
    range: ["", "5–95 of 100"],
    left: ["spread", "left"],
  },
  percent: (share: number) => `${fixed(100 * Math.min(1, share), 0)} %`,
  untold: (names: readonly string[]) => `The shots say next to nothing of: ${names.join("; ")}.`,
  tied: (first: string, second: string, correlation: number) =>
    correlation > 0
      ? `Tied together: more ${first} would show like less ${second}; only their balance is told (${fixed(correlation, 2)}).`
      : `Tied against each other: less ${first} would show like less ${second}; only both together are told (${fixed(correlation, 2)}).`,
  next: "What one more careful look would tell most",
  nextLine: (ball: string, line: string, nats: number, tells: string, left: number) =>
    `${ball}, ${line}: ${USEFULNESS[usefulnessOf(nats)]}; tells most of ${tells}, of whose spread ${fixed(100 * left, 0)} % would be left`,
  plans: (worlds: number) => `The finish plan over ${worlds} worlds, without and with what the house has taught`,
  restsOn: ({ asked, effective, areFew }: Correction["worlds"]) =>
    `${asked} worlds were asked; what was learned rests on about ${fixed(effective, 0)} of them${areFew ? ": few, so take it as rough" : ""}.`,
  beyond: (names: readonly string[]) =>
    `Wholly outside what was believed before: ${names.join("; ")}. Either that was wrong, or the notes are: look before you use this.`,
  planLine: (ball: string, before: string, after: string, change: number) =>
    `${ball}: ${before === after ? `${after} as before` : `${before} before, ${after} now`}; the pick is now thought to strike ${inHundred(Math.abs(change))} ${change < 0 ? "less" : "more"} than it was`,
  noPick: "none named",
  notConverged: (factor: number) =>
    `The sampling has not settled (Gelman–Rubin ${fixed(factor, 2)}): take another seed, or fewer kinds of shot.`,
  jobHouse:
    "With --json the block `house` is for a job file: a plan then asks the worlds that say these shots, each with its house and its hands.",
  held: "Constants of covers and of contact are not told one by one: the shots say in which worlds they were thrown.",
} as const;
