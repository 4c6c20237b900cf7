import type { MeasuredBall, Quantity } from "./measuredBall.ts";

/** Sets of equipment limits. The second is taken to hold the first one's equipment limits; its rules on surfaces were not read. */
export const BOOK_IDS = ["usbc", "world-bowling"] as const;
export type BookId = (typeof BOOK_IDS)[number];

/** The day that decides which record speaks: the day of play, of the ball's approval, or of its making. */
export type Dated = "use" | "approval" | "manufacture";

/** One dated limit. A record is never edited: a change of the rule ends it and begins another. */
export interface LimitRecord {
  /** Records of one topic follow each other in time or part by weight. */
  readonly topic: string;
  readonly quantity: Quantity;
  readonly least: number | null;
  readonly most: number | null;
  /** First and last day, inclusive; null where none was found. */
  readonly from: string | null;
  readonly until: string | null;
  readonly dated: Dated;
  /** A warning never puts a ball outside: the number is weak, or the rule does not bind the owner. An event may replace it. */
  readonly strength: "limit" | "warning";
  /** Null where the ball is not known well enough to say. */
  readonly applies: (ball: MeasuredBall) => boolean | null;
  /** What must be known for that. */
  readonly needs: readonly (keyof MeasuredBall)[];
  readonly mark: "published" | "memory" | "computed";
  readonly source: string;
}

/** How far a ball may be out of round, in. USBC Equipment Specifications, from memory. */
export const ROUNDNESS_IN = 0.01;

const SPECS = "USBC Equipment Specifications";
const ALWAYS = {
  from: null,
  until: null,
  dated: "use",
  strength: "limit",
  applies: () => true,
  needs: [],
  mark: "published",
  source: SPECS,
} as const;
const APPROVAL = { ...ALWAYS, dated: "approval" } as const;

const heavy = ({ massLb }: MeasuredBall) => (massLb === null ? null : massLb >= 13);
const overTen = ({ massLb }: MeasuredBall) => (massLb === null ? null : massLb > 10);
const eightToTen = ({ massLb }: MeasuredBall) => (massLb === null ? null : massLb >= 8 && massLb <= 10);
const underEight = ({ massLb }: MeasuredBall) => (massLb === null ? null : massLb < 8);
const withHole = ({ balanceHoles }: MeasuredBall) => (balanceHoles === null ? null : balanceHoles > 0);
const withoutHole = (ball: MeasuredBall) => not(withHole(ball));
const slowAbsorbing = ({ oilAbsorptionMinutes, highPerformanceCore }: MeasuredBall) =>
  and(oilAbsorptionMinutes === null ? null : oilAbsorptionMinutes > 90, highPerformanceCore);

/** Both, where "not known" and "no" is still no. */
function and(a: boolean | null, b: boolean | null): boolean | null {
  if (a === false || b === false) return false;
  return a === null || b === null ? null : true;
}

function not(a: boolean | null): boolean | null {
  return a === null ? null : !a;
}

/** Top or bottom, side, and finger or thumb weight under one condition. */
function balance(
  [topBottomOz, sideOz, fingerThumbOz]: readonly [number, number, number],
  rest: Pick<LimitRecord, "from" | "until" | "strength" | "applies" | "needs" | "mark" | "source">,
): LimitRecord[] {
  const most = { topBottomOz, sideOz, fingerThumbOz };
  return (["topBottomOz", "sideOz", "fingerThumbOz"] as const).map((quantity) => ({
    topic: quantity,
    quantity,
    least: -most[quantity],
    most: most[quantity],
    dated: "use",
    ...rest,
  }));
}

const BALANCE = { strength: "limit", mark: "published", source: SPECS } as const;
const WEAK = {
  from: null,
  until: null,
  strength: "warning",
  mark: "memory",
  source: `${SPECS}, an older rule, weakly remembered`,
} as const;
const OWNER_FREE = `${SPECS}: at manufacture; does not limit what the owner does afterwards`;

const EQUIPMENT: readonly LimitRecord[] = [
  { ...ALWAYS, topic: "mass", quantity: "massLb", least: null, most: 16 },
  { ...ALWAYS, topic: "diameter", quantity: "diameterIn", least: 8.5, most: 8.595, applies: heavy, needs: ["massLb"] },
  { ...ALWAYS, topic: "circumference", quantity: "circumferenceIn", least: 26.704, most: 27.002, applies: heavy, needs: ["massLb"] },
  { ...ALWAYS, topic: "roundness", quantity: "roundnessIn", least: null, most: ROUNDNESS_IN, mark: "memory" },
  { ...APPROVAL, topic: "rg", quantity: "rgIn", least: 2.43, most: 2.8, until: "2010-06-30" },
  { ...APPROVAL, topic: "rg", quantity: "rgIn", least: 2.46, most: 2.8, from: "2010-07-01" },
  { ...APPROVAL, topic: "differential", quantity: "differentialIn", least: null, most: 0.08, until: "2005-01-31" },
  { ...APPROVAL, topic: "differential", quantity: "differentialIn", least: null, most: 0.06, from: "2005-02-01" },
  {
    ...ALWAYS,
    topic: "intermediate",
    quantity: "intermediateOverTotalIn",
    least: null,
    most: 0,
    mark: "computed",
    source: "no limit of its own was found; the intermediate differential cannot exceed the total one",
  },
  { ...APPROVAL, topic: "friction", quantity: "friction", least: null, most: 0.32 },
  { ...APPROVAL, topic: "hardness", quantity: "hardnessD", least: 72, most: null, until: "2020-12-31" },
  { ...APPROVAL, topic: "hardness", quantity: "hardnessD", least: 73, most: null, from: "2021-01-01" },
  { ...APPROVAL, topic: "hardnessMade", quantity: "hardnessD", least: 73, most: null, from: "2022-08-01", dated: "manufacture" },
  {
    ...APPROVAL,
    topic: "hardnessSlow",
    quantity: "hardnessD",
    least: 78,
    most: null,
    from: "2025-12-31",
    applies: slowAbsorbing,
    needs: ["oilAbsorptionMinutes", "highPerformanceCore"],
  },
  {
    ...APPROVAL,
    topic: "meanRoughness",
    quantity: "meanRaMicroinch",
    least: null,
    most: 50,
    from: "2009-04-01",
    dated: "manufacture",
    strength: "warning",
    applies: heavy,
    needs: ["massLb"],
    source: OWNER_FREE,
  },
  {
    ...APPROVAL,
    topic: "highestRoughness",
    quantity: "highestRaMicroinch",
    least: null,
    most: 65,
    from: "2009-04-01",
    dated: "manufacture",
    strength: "warning",
    applies: heavy,
    needs: ["massLb"],
    source: OWNER_FREE,
  },
  { ...APPROVAL, topic: "oilAbsorption", quantity: "oilAbsorptionMinutes", least: 2.25, most: null, from: "2020-08-01" },
  { ...ALWAYS, topic: "surface", quantity: "unevenSurface", least: null, most: 0 },
  ...balance([3, 1, 1], {
    ...BALANCE,
    from: null,
    until: "2020-07-31",
    applies: (ball) => and(overTen(ball), withHole(ball)),
    needs: ["massLb", "balanceHoles"],
  }),
  ...balance([3, 3, 3], {
    ...BALANCE,
    from: "2018-08-01",
    until: null,
    applies: (ball) => and(overTen(ball), withoutHole(ball)),
    needs: ["massLb", "balanceHoles"],
  }),
  ...balance([2, 0.75, 0.75], { ...WEAK, applies: eightToTen, needs: ["massLb"] }),
  ...balance([0.75, 0.75, 0.75], { ...WEAK, applies: underEight, needs: ["massLb"] }),
  { ...ALWAYS, topic: "balanceHoles", quantity: "balanceHoles", least: null, most: 0, from: "2020-08-01" },
  { ...ALWAYS, topic: "gripHoles", quantity: "gripHoles", least: null, most: 5, from: "2020-08-01" },
  { ...ALWAYS, topic: "unusedGripHoles", quantity: "unusedGripHoles", least: null, most: 0, from: "2020-08-01" },
];

/** A sample of at least so many µin calls for eight more at manufacture; it says nothing of an owner's ball. USBC, published. */
export const EIGHT_MORE_FROM_MICROINCH = 42;

/** Hardness is tested between these temperatures, °C. USBC, published. */
export const HARDNESS_TEST_C = [21, 25] as const;

export const RULE_BOOKS: Readonly<Record<BookId, readonly LimitRecord[]>> = {
  usbc: EQUIPMENT,
  "world-bowling": EQUIPMENT.map((record) => ({
    ...record,
    mark: record.mark === "computed" ? "computed" : "memory",
    source: record.mark === "computed" ? record.source : `World Bowling, taken to follow: ${record.source}`,
  })),
};
