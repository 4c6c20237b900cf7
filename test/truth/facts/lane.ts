import { assume } from "#engine/assumptions";
import { COVER_IDS } from "#engine/ball/ball";
import { TYPICAL_BALL } from "#engine/ball/typical";
import { filmOfPattern } from "#engine/lane/film";
import { middleToOutside, toFilmSheet, volumeMl } from "#engine/lane/filmMap";
import { BOARD, boardToX, HEAD_PIN, LANE_EDGE, LANE_WIDTH, PINS_PLANE } from "#engine/lane/geometry";
import type { OilPass, OilSheet } from "#engine/lane/lane";
import { oilSheetFilm, oilSheetTotalMl } from "#engine/lane/oilSheet";
import { PATTERNS, type PatternId } from "#engine/lane/patterns";
import { wearLaw, wornFilm } from "#engine/lane/wear";
import { averagedBall, frictionOnLane } from "#engine/motion/ground";
import { trackOf } from "#engine/motion/track";
import { STYLES } from "#engine/planning/situations";
import { DEGREE, FOOT, INCH, MICROMETRE, POUND } from "#engine/units";
import type { Fact } from "../fact.ts";

const USBC = "USBC Equipment Specifications Manual";
const MASS_BALANCE = "mass balance: 1 mL/m² is 1 µm";

/** A sheet that lays one film outside and another inside, evenly to its length. */
function twoLevelSheet(lengthFt: number, insideUm: number, outsideUm: number): OilSheet {
  const pass = (fromBoard: number, toBoard: number, um: number): OilPass => ({
    direction: "out",
    fromBoard,
    toBoard,
    times: 1,
    fromFt: 0,
    toFt: lengthFt,
    perBoardMicrolitres: um * MICROMETRE * BOARD * lengthFt * FOOT * 1e9,
  });
  return {
    name: "two levels",
    lengthFt,
    passes: [pass(1, 9, outsideUm), pass(10, 30, insideUm), pass(31, 39, outsideUm)],
    stated: { totalMl: null, ratio: null },
  };
}

/** Boards 10–30 and the other 18 at a ratio, holding a volume: mean, outside and inside film. */
function levels(lengthFt: number, ml: number, ratio: number) {
  const mean = (ml * 1e-6) / (LANE_WIDTH * lengthFt * FOOT) / MICROMETRE;
  const outside = (39 * mean) / (18 + 21 * ratio);
  return { outside, inside: ratio * outside };
}

const flat = (um: number, lengthFt: number) => twoLevelSheet(lengthFt, um, um);

/** Ball's centre at contact with the head pin for a hit on a board, in before the pin spot. */
function contactBeforePinIn(board: number): number {
  const radii = 8.595 / 2 + 4.766 / 2;
  return Math.sqrt(radii ** 2 - (boardToX(board) / INCH) ** 2);
}

function pickUpMl(cover: (typeof COVER_IDS)[number]): number {
  const assumed = assume();
  const film = oilSheetFilm(flat(2, 40));
  const ball = { ...TYPICAL_BALL, cover, finish: { number: 500, polished: false } };
  const friction = frictionOnLane(film, ball, 1.1, assumed);
  const still = { ...STYLES.matched, spread: { ...STYLES.matched.spread, laydownBoards: 0, launchAngleDeg: 0 } };
  const track = trackOf({ bowler: still, ball: averagedBall(ball, 0.003), friction }, { laydownBoard: 20, launchAngleDeg: 0 });
  return wornFilm(film, [track], 1, { ...wearLaw(cover, 1.1, assumed), laidDown: 0 }).takenMl;
}

const published: Readonly<Record<PatternId, { readonly ml: readonly [number, number]; readonly ratio: readonly [number, number] }>> = {
  "house-40": { ml: [20, 27], ratio: [8, 12] },
  "light-38": { ml: [7.2, 27.5], ratio: [4, 8] },
  "medium-41": { ml: [22, 27.4], ratio: [4, 8] },
  "heavy-44": { ml: [24, 31], ratio: [1, 4] },
};

export const LANE: readonly Fact[] = [
  {
    topic: "lane",
    says: "width of a board",
    source: USBC,
    provenance: "published",
    unit: "in",
    known: 1.064103,
    within: 1e-6,
    predict: () => BOARD / INCH,
  },
  ...(
    [
      [5, 4.7885],
      [10, 10.109],
      [20, 20.75],
    ] as const
  ).map(
    ([board, inches]): Fact => ({
      topic: "lane",
      says: `centre of board ${board} from the right edge`,
      source: USBC,
      provenance: "published",
      unit: "in",
      known: inches,
      within: 5e-5,
      predict: () => (LANE_EDGE - boardToX(board)) / INCH,
    }),
  ),
  {
    topic: "lane",
    says: "foul line to head pin",
    source: USBC,
    provenance: "published",
    unit: "m",
    known: 18.288,
    within: 1e-9,
    predict: () => HEAD_PIN,
  },
  {
    topic: "lane",
    says: "ball's centre for board 17.5, right of the middle",
    source: USBC,
    provenance: "computed",
    unit: "in",
    known: 2.6603,
    within: 5e-5,
    predict: () => boardToX(17.5) / INCH,
  },
  {
    topic: "lane",
    says: "contact on board 17.5 before the pin spot",
    source: `${USBC}: radii of ball and pin`,
    provenance: "computed",
    unit: "in",
    known: 6.128,
    within: 5e-4,
    predict: () => contactBeforePinIn(17.5),
  },
  {
    topic: "lane",
    says: "plane of the pins lies at that contact",
    source: "half a foot before the head pin",
    provenance: "computed",
    unit: "in",
    known: 6.128,
    within: 0.15,
    predict: () => (HEAD_PIN - PINS_PLANE) / INCH,
  },
  {
    topic: "lane",
    says: "steepest straight line from the lane's edge to board 17.5",
    source: `${USBC}: 1.45°`,
    provenance: "published",
    unit: "deg",
    known: 1.4516,
    within: 5e-4,
    predict: () => Math.atan((LANE_EDGE - boardToX(17.5)) / (HEAD_PIN - contactBeforePinIn(17.5) * INCH)) / DEGREE,
  },
  {
    topic: "units",
    says: "16 lb",
    source: "international pound, 1959",
    provenance: "published",
    unit: "kg",
    known: 7.25748,
    within: 5e-6,
    predict: () => 16 * POUND,
  },
  {
    topic: "units",
    says: "circumference of 8.500 in",
    source: `${USBC}: 26.704 in`,
    provenance: "published",
    unit: "in",
    known: 26.704,
    within: 1e-3,
    predict: () => Math.PI * ((8.5 * INCH) / INCH),
  },
  {
    topic: "oil",
    says: "lane to 40 ft at 0.17976 µm: sheet's total",
    source: "0.0167 mL/ft²; from memory",
    provenance: "memory",
    unit: "mL",
    known: 2.3102,
    within: 5e-5,
    predict: () => oilSheetTotalMl(flat(0.17976, 40)),
  },
  {
    topic: "oil",
    says: "the same laid on the lane",
    source: MASS_BALANCE,
    provenance: "computed",
    unit: "mL",
    known: 2.3102,
    within: 5e-5,
    predict: () => volumeMl(oilSheetFilm(flat(0.17976, 40))),
  },
  {
    topic: "oil",
    says: "41 ft, 27.35 mL: mean film",
    source: `championship pattern, published; ${MASS_BALANCE}`,
    provenance: "published",
    unit: "µm",
    known: 2.076,
    within: 5e-4,
    predict: () => {
      const { inside, outside } = levels(41, 27.35, 2.84);
      return toFilmSheet(oilSheetFilm(twoLevelSheet(41, inside, outside))).meanUm;
    },
  },
  {
    topic: "oil",
    says: "34 ft, 7.21 mL: mean film",
    source: `light-oil event, published; ${MASS_BALANCE}`,
    provenance: "published",
    unit: "µm",
    known: 0.66,
    within: 5e-4,
    predict: () => {
      const { inside, outside } = levels(34, 7.21, 4);
      return toFilmSheet(oilSheetFilm(twoLevelSheet(34, inside, outside))).meanUm;
    },
  },
  {
    topic: "oil",
    says: "ratio of that 41 ft pattern read off the laid film",
    source: "championship pattern, published 2.84",
    provenance: "published",
    unit: "1",
    known: 2.84,
    within: 0.02,
    predict: () => {
      const { inside, outside } = levels(41, 27.35, 2.84);
      return middleToOutside(oilSheetFilm(twoLevelSheet(41, inside, outside))).ratio;
    },
  },
  ...(Object.keys(PATTERNS) as PatternId[]).flatMap((id): Fact[] => [
    {
      topic: "named patterns",
      says: `${id}: volume among published patterns of its length`,
      source: "published pattern sheets, 34–41 ft: 7.2–27.5 mL",
      provenance: "published",
      unit: "mL",
      known: published[id].ml,
      within: 0,
      predict: () => volumeMl(filmOfPattern({ kind: "named", id })),
    },
    {
      topic: "named patterns",
      says: `${id}: ratio within the band of its kind`,
      source: `${USBC}: sport ≤ 4, challenge 4–8, house ≥ 8`,
      provenance: "published",
      unit: "1",
      known: published[id].ratio,
      within: 0,
      predict: () => middleToOutside(filmOfPattern({ kind: "named", id })).ratio,
    },
  ]),
  ...COVER_IDS.map(
    (cover): Fact => ({
      topic: "wear",
      says: `${cover} at 500: oil taken by one shot stays under all that its track holds`,
      source: "a track 3.6 mm × 40 ft × 2 µm holds 0.088 mL",
      provenance: "computed",
      unit: "mL",
      known: [0.005, 0.088],
      within: 0,
      predict: () => pickUpMl(cover),
    }),
  ),
];
