import { CALIBRATED } from "./calibrated.ts";

/** Where a number comes from. `calibrated` and `chosen` are ours; no mark makes an assumption a measurement. */
export type Mark = "calibrated" | "chosen" | "published" | "memory" | "common practice";

export interface Assumption {
  readonly value: number;
  /** Ends of the range in which the value is believed to lie. */
  readonly low: number;
  readonly high: number;
  readonly unit: string;
  readonly mark: Mark;
  readonly source: string;
}

const WEIGHED = "worlds weighed by published bands and the trade's situations, see docs/model/calibration.md";
const CHOSEN = "chosen, not measured; range from what changes a path by less than the trade would notice";

/** A constant of the friction law: its value is the one that stands in the middle of all worlds, its range holds nine worlds of ten. */
function calibrated(id: keyof typeof CALIBRATED, unit: string): Assumption {
  const { value, low, high } = CALIBRATED[id];
  return { value, low, high, unit, mark: "calibrated", source: WEIGHED };
}

/**
 * Every number that the model assumes, with its range. Add one here and nowhere else; the model's page names it.
 */
export const ASSUMPTIONS = {
  "friction.dry.polyester": calibrated("friction.dry.polyester", "1"),
  "friction.dry.urethane": calibrated("friction.dry.urethane", "1"),
  "friction.dry.solid": calibrated("friction.dry.solid", "1"),
  "friction.dry.hybrid": calibrated("friction.dry.hybrid", "1"),
  "friction.dry.pearl": calibrated("friction.dry.pearl", "1"),
  "friction.oil": calibrated("friction.oil", "1"),
  "friction.filmRatio": calibrated("friction.filmRatio", "1"),
  "friction.exponent": { value: 2, low: 1.7, high: 2.3, unit: "1", mark: "chosen", source: CHOSEN },
  "friction.exponentialShare": {
    value: 0,
    low: 0,
    high: 1,
    unit: "1",
    mark: "chosen",
    source:
      "shape of the contact law, 0 the rational one that plans take, 1 an exponential one: there so that plans can be tried on a truth of another shape",
  },
  "friction.dryWithRoughness": {
    value: 0,
    low: -0.06,
    high: 0.06,
    unit: "1",
    mark: "chosen",
    source: "power of the ball's roughness (over that of a 2000 pad) with which dry friction grows; published signs differ",
  },
  "friction.laneRoughness": { value: 0.25, low: 0.18, high: 0.35, unit: "µm", mark: "chosen", source: CHOSEN },
  "filmReach.polyester": calibrated("filmReach.polyester", "1"),
  "filmReach.urethane": calibrated("filmReach.urethane", "1"),
  "filmReach.solid": calibrated("filmReach.solid", "1"),
  "filmReach.hybrid": { value: 1, low: 0.94, high: 1.06, unit: "1", mark: "chosen", source: "the other covers are told against it" },
  "filmReach.pearl": calibrated("filmReach.pearl", "1"),
  "carriedOil.share": calibrated("carriedOil.share", "1"),
  "carriedOil.reach": { value: 3.5, low: 2.5, high: 5, unit: "ft", mark: "chosen", source: CHOSEN },
  "carriedOil.polyester": { value: 2.0, low: 1.6, high: 2.4, unit: "1", mark: "chosen", source: CHOSEN },
  "carriedOil.urethane": { value: 1.4, low: 1.1, high: 1.7, unit: "1", mark: "chosen", source: CHOSEN },
  "carriedOil.solid": { value: 0.9, low: 0.75, high: 1.05, unit: "1", mark: "chosen", source: CHOSEN },
  "carriedOil.hybrid": { value: 1.0, low: 0.85, high: 1.15, unit: "1", mark: "chosen", source: CHOSEN },
  "carriedOil.pearl": { value: 1.1, low: 0.9, high: 1.3, unit: "1", mark: "chosen", source: CHOSEN },
  "roll.resistance": { value: 0.003, low: 0.001, high: 0.006, unit: "1", mark: "chosen", source: CHOSEN },
  "roughness.scale": {
    value: 1,
    low: 0.8,
    high: 1.2,
    unit: "1",
    mark: "chosen",
    source: "spread of pads, pressure and hands between shops; chosen",
  },
  "roughness.spread": {
    value: 1,
    low: 0.8,
    high: 1.2,
    unit: "1",
    mark: "chosen",
    source: "how far pads lie apart in roughness, in powers about a 2000 pad: shops' readings of one ladder differ; chosen",
  },
  "roughness.readingFactor": {
    value: 1.45,
    low: 1.33,
    high: 1.61,
    unit: "1",
    mark: "memory",
    source: "effective over read roughness: ratio of the calibrated table to fresh-pad readings remembered in the trade",
  },
  "roughness.polishKeeps": {
    value: 0.35,
    low: 0.25,
    high: 0.45,
    unit: "1",
    mark: "chosen",
    source: "share of the base's roughness that is felt through polish; chosen so that 4000 + polish is 0.12 µm",
  },
  "roughness.polishFloor": {
    value: 0.092,
    low: 0.07,
    high: 0.12,
    unit: "µm",
    mark: "memory",
    source: "polished balls read 2–5 µin, from memory, times the reading factor",
  },
  "roughness.slipPolishKeeps": {
    value: 0.6,
    low: 0.4,
    high: 0.8,
    unit: "1",
    mark: "chosen",
    source: "share of the base's roughness felt through a polish that only fills; chosen above that of a cutting polish",
  },
  "work.handReach": {
    value: 0.42,
    low: 0.25,
    high: 0.6,
    unit: "1",
    mark: "published",
    source: "a 500 pad by hand took a ball from about 3000 to about 1651: 0.42 of the way in the logarithm of Ra; one case",
  },
  "work.spinnerReach": {
    value: 0.95,
    low: 0.85,
    high: 1,
    unit: "1",
    mark: "chosen",
    source: "a full set of sides on the spinner all but resets the surface",
  },
  "cut.preston": {
    value: 5e-11,
    low: 2e-11,
    high: 1.2e-10,
    unit: "1/Pa",
    mark: "chosen",
    source:
      "Preston's constant for a 10 µm grain on a 75 D cover; chosen so that half a minute a side takes off what the grade before left",
  },
  "cut.valleysPerRa": {
    value: 6,
    low: 5,
    high: 8,
    unit: "1",
    mark: "memory",
    source: "peak to valley over Ra of sanded surfaces, from memory",
  },
  "cut.spinnerRpm": {
    value: 400,
    low: 250,
    high: 600,
    unit: "rpm",
    mark: "chosen",
    source: "ball spinners; the shop's own is on its plate",
  },
  "cut.handSpeed": { value: 0.5, low: 0.3, high: 0.8, unit: "m/s", mark: "chosen", source: "strokes of a hand over the ball" },
  "cut.serialDepth": {
    value: 250,
    low: 150,
    high: 400,
    unit: "µm",
    mark: "chosen",
    source: "depth of an engraved serial number; look at the ball",
  },
  "fade.level.reactive": {
    value: 0.2,
    low: 0.16,
    high: 0.25,
    unit: "µm",
    mark: "published",
    source: "a 1000 finish drifts to an equivalent 4000–5000 in use, second-hand",
  },
  "fade.level.urethane": {
    value: 0.35,
    low: 0.25,
    high: 0.5,
    unit: "µm",
    mark: "common practice",
    source: "urethane shines in the track too, later",
  },
  "fade.level.polyester": { value: 0.2, low: 0.14, high: 0.28, unit: "µm", mark: "chosen", source: "like reactive resin, slower" },
  "fade.games.reactive": {
    value: 16,
    low: 9,
    high: 28,
    unit: "games",
    mark: "published",
    source: "reaction fades from 7–14 games; refresh about every 30, second-hand",
  },
  "fade.games.urethane": {
    value: 70,
    low: 40,
    high: 120,
    unit: "games",
    mark: "common practice",
    source: "a dull texture on urethane lasts months of use",
  },
  "fade.games.polyester": { value: 50, low: 25, high: 100, unit: "games", mark: "chosen", source: "between resin and urethane" },
  "fade.offTrack": {
    value: 5,
    low: 3,
    high: 8,
    unit: "1",
    mark: "chosen",
    source: "how many times slower the surface beside the track changes",
  },
  "film.unit": {
    value: 0.09,
    low: 0.08,
    high: 0.18,
    unit: "µm",
    mark: "memory",
    source: "0.0167 mL/ft² is 0.180 µm (memory); published volumes fit about 0.09 µm",
  },
  "film.scale": {
    value: 1,
    low: 0.85,
    high: 1.18,
    unit: "1",
    mark: "chosen",
    source: "oil laid against oil stated: temperature, machine, lane",
  },
  "wear.removal": {
    value: 0.06,
    low: 0.03,
    high: 0.08,
    unit: "1",
    mark: "chosen",
    source: "share of the film taken in the middle of a track; held under the pick-up ceiling of 0.088 mL a shot",
  },
  "wear.footprint": {
    value: 0.55,
    low: 0.4,
    high: 0.8,
    unit: "board",
    mark: "chosen",
    source: "standard deviation of the track's width, contact diameter 2.8–4.4 mm plus flare",
  },
  "wear.laidDown.polyester": { value: 0.7, low: 0.5, high: 0.85, unit: "1", mark: "chosen", source: CHOSEN },
  "wear.laidDown.urethane": { value: 0.5, low: 0.3, high: 0.7, unit: "1", mark: "chosen", source: CHOSEN },
  "wear.laidDown.reactive": { value: 0.06, low: 0.02, high: 0.15, unit: "1", mark: "chosen", source: CHOSEN },
  "wear.laidDownReach": { value: 6, low: 4, high: 8, unit: "ft", mark: "chosen", source: CHOSEN },
  "house.dry": {
    value: 1,
    low: 0.8,
    high: 1.2,
    unit: "1",
    mark: "chosen",
    source: "friction of this house's dry boards over the usual; learned from shots that were seen",
  },
  "house.frontOil": {
    value: 1,
    low: 0.75,
    high: 1.3,
    unit: "1",
    mark: "chosen",
    source: "oil at the front of this house's lanes over what is stated, and as much less at the back; learned from shots that were seen",
  },
  "play.shotsAGame": {
    value: 17,
    low: 15,
    high: 19,
    unit: "shots",
    mark: "common practice",
    source:
      "shots of a bowler in a game: 12 to 21 by the rules of scoring, about 17 in a league; eight on a pair put about 70 on each lane",
  },
  "play.fieldSpeed": { value: 17, low: 16, high: 18, unit: "mph", mark: "chosen", source: "launch speed of a usual league bowler" },
  "play.fieldRevs": { value: 300, low: 250, high: 350, unit: "rpm", mark: "chosen", source: "rev rate of a usual league bowler" },
  "play.fieldVariety": {
    value: 1,
    low: 0.6,
    high: 1.4,
    unit: "1",
    mark: "chosen",
    source: "how much league bowlers differ, over 1.4 mph, 70 rpm, 10° of rotation, 4° of tilt",
  },
  "play.ballChange": {
    value: 0.35,
    low: 0.1,
    high: 0.8,
    unit: "strikes",
    mark: "chosen",
    source: "what taking up another ball costs until its line is found",
  },
  "carry.level": {
    value: 0.5,
    low: 0.02,
    high: 0.98,
    unit: "1",
    mark: "calibrated",
    source: "fitted to published carry: 0 worst, 1 best",
  },
  "carry.shape": {
    value: 0.5,
    low: 0.02,
    high: 0.98,
    unit: "1",
    mark: "calibrated",
    source: "fitted to published carry: the second way",
  },
} as const satisfies Record<string, Assumption>;

export type AssumptionId = keyof typeof ASSUMPTIONS;
export type Assumed = Readonly<Record<AssumptionId, number>>;

export const ASSUMPTION_IDS = Object.keys(ASSUMPTIONS) as readonly AssumptionId[];

/** The registry's own values, with some of them set otherwise. */
export function assume(instead: Partial<Assumed> = {}): Assumed {
  const values = {} as Record<AssumptionId, number>;
  for (const id of ASSUMPTION_IDS) values[id] = instead[id] ?? ASSUMPTIONS[id].value;
  return values;
}
