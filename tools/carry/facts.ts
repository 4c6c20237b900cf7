import { BOARD } from "#engine/lane/geometry";
import { evenPoints, normalDeviate } from "#engine/random";
import { INCH } from "#engine/units";
import { KINDS, type Kind } from "./kinds.ts";

/** How likely each kind of outcome is at a hit; from the emulator, under one set of coefficients. */
export interface Chances {
  kind(kind: Kind, offsetIn: number, entryDeg: number): number;
  idealPath(offsetIn: number, entryDeg: number): number;
}

/** What the published figures leave open, with the range in which it is sought. */
export const UNSAID = {
  planeFt: { low: 0, high: 0.5, meaning: "how far behind our plane (59.5 ft) the published boards are read: 0.5 is the head pin's spot" },
  aimBoard: { low: 16.6, high: 18.2, meaning: "mean board of the tracked bowlers in our plane" },
  aimSpreadBoards: { low: 0.4, high: 1.8, meaning: "its standard deviation" },
  aimEntryDeg: { low: 3.5, high: 6, meaning: "mean entry angle of the tracked bowlers" },
  leftHanders: { low: 0.05, high: 0.25, meaning: "share of left-handers among them" },
} as const;
export type UnsaidName = keyof typeof UNSAID;
export type Unsaid = Readonly<Record<UnsaidName, number>>;
export const UNSAID_NAMES = Object.keys(UNSAID) as readonly UnsaidName[];

/** A published figure that the fit or the test of it looks at. */
export interface CarryFact {
  readonly id: string;
  readonly says: string;
  readonly published: number;
  /** What the published figure is uncertain by, and what a simplified body cannot be asked for: one standard deviation. */
  readonly sd: number;
  /** On which side a deviation counts. */
  readonly counts: "both" | "above" | "below";
  readonly source: string;
  /** Facts kept out are predicted, never fitted. */
  readonly use: "fitted" | "kept out";
  predict(chances: Chances, unsaid: Unsaid): number;
}

const USBC = "USBC, pin carry figures, second-hand";
const QUICK_STUDY = "Physics Today, Quick Study on bowling, second-hand";
const TRACKED = "tracking of 7155 televised professional first balls, both hands, aim unknown; second-hand";

/** The hit's place for a board read in the published plane. */
function offsetAt(board: number, entryDeg: number, { planeFt }: Unsaid): number {
  const behind = planeFt * 12 * Math.tan((entryDeg * Math.PI) / 180);
  return ((20 - board) * BOARD) / INCH + behind;
}

const OFFSETS = Array.from({ length: 33 }, (_, i) => 0.75 + i * 0.1);
const BOARD_IN = BOARD / INCH;

/** Width in boards of the stretch about the best hit on which the strike chance is at least `level`. */
function zoneBoards(chances: Chances, entryDeg: number, level: number): number {
  const above = OFFSETS.map((offset) => chances.kind("strike", offset, entryDeg) - level);
  let width = 0;
  for (let i = 0; i + 1 < above.length; i++) {
    const [a, b] = [above[i], above[i + 1]];
    if (a >= 0 && b >= 0) width += 0.1;
    else if (a >= 0 || b >= 0) width += (0.1 * Math.max(a, b)) / Math.abs(a - b);
  }
  return width / BOARD_IN;
}

const AIM_SCATTER_IN = 0.5;
const AIMS = OFFSETS.filter((_, i) => i % 2 === 0);
/** The best chance for a bowler who scatters by half an inch, over where to aim. */
export function scatteredBest(chances: Chances, entryDeg: number): number {
  const raw = AIMS.map((offset) => chances.kind("strike", offset, entryDeg));
  let best = 0;
  for (const aim of AIMS) {
    let [sum, weights] = [0, 0];
    AIMS.forEach((offset, i) => {
      const weight = Math.exp(-0.5 * ((offset - aim) / AIM_SCATTER_IN) ** 2);
      sum += weight * raw[i];
      weights += weight;
    });
    best = Math.max(best, sum / weights);
  }
  return best;
}

/** Entry angle at which the scattered chance is best, deg: the mean of the angles by how near their chance comes to the top. */
function bestEntryDeg(chances: Chances): number {
  const angles = Array.from({ length: 9 }, (_, i) => i);
  const values = angles.map((deg) => scatteredBest(chances, deg));
  const top = Math.max(...values);
  const weights = values.map((value) => Math.exp((value - top) / 0.01));
  return angles.reduce((sum, deg, i) => sum + deg * weights[i], 0) / weights.reduce((sum, weight) => sum + weight, 0);
}

const TRACKED_POINTS = 96;
const ENTRY_SPREAD_DEG = 0.8;
const tracked = evenPoints(TRACKED_POINTS, 2, 7155);

/** Rate of a kind among the tracked shots; a left-hander's leaves are mirrored. */
function rate(chances: Chances, unsaid: Unsaid, kind: Kind, mirrored: Kind): number {
  let [right, left] = [0, 0];
  for (let i = 0; i < TRACKED_POINTS; i++) {
    const board = unsaid.aimBoard + unsaid.aimSpreadBoards * normalDeviate(tracked[2 * i]);
    const entryDeg = Math.min(8, Math.max(0, unsaid.aimEntryDeg + ENTRY_SPREAD_DEG * normalDeviate(tracked[2 * i + 1])));
    const offset = (20 - board) * BOARD_IN;
    if (offset < 0.25 || offset > 4.75) continue;
    right += chances.kind(kind, offset, entryDeg) / TRACKED_POINTS;
    left += chances.kind(mirrored, offset, entryDeg) / TRACKED_POINTS;
  }
  return right + unsaid.leftHanders * (left - right);
}

/** Strike chance over the hits that an onlooker calls the pocket. */
function pocketCarry(chances: Chances, unsaid: Unsaid): number {
  let [sum, count] = [0, 0];
  for (let board = 16.5; board <= 18.51; board += 0.25)
    for (const entryDeg of [3.5, 4.5, 5.5]) {
      sum += chances.kind("strike", offsetAt(board, entryDeg, unsaid), entryDeg);
      count++;
    }
  return sum / count;
}

const at = (board: number, level: number, source: string): CarryFact => ({
  id: `strike.${board}`,
  says: `strike chance on board ${board} at 6°, the edge of the ${100 * level} % zone`,
  published: level,
  sd: level === 0.9 ? 0.04 : 0.025,
  counts: "both",
  source,
  use: "fitted",
  predict: (chances, unsaid) => chances.kind("strike", offsetAt(board, 6, unsaid), 6),
});

export const CARRY_FACTS: readonly CarryFact[] = [
  at(17, 0.9, USBC),
  at(18.5, 0.9, USBC),
  at(17.19, 0.95, QUICK_STUDY),
  at(18.15, 0.95, QUICK_STUDY),
  {
    id: "strike.best",
    says: "strike chance on board 17.5 at 6°, the best hit: within the zone above 95 %",
    published: 0.97,
    sd: 0.02,
    counts: "below",
    source: USBC,
    use: "fitted",
    predict: (chances, unsaid) => chances.kind("strike", offsetAt(17.5, 6, unsaid), 6),
  },
  {
    id: "zone.straight",
    says: "width of the 90 % zone for a straight ball (1°): less than one board",
    published: 0.9,
    sd: 0.15,
    counts: "above",
    source: USBC,
    use: "fitted",
    predict: (chances) => zoneBoards(chances, 1, 0.9),
  },
  {
    id: "entry.best",
    says: "entry angle of the best chance, deg",
    published: 6,
    sd: 1,
    counts: "both",
    source: USBC,
    use: "fitted",
    predict: bestEntryDeg,
  },
  {
    id: "path.ideal",
    says: "on the best hit the ball meets pins 1, 3, 5 and 9 only: share of such balls",
    published: 0.9,
    sd: 0.15,
    counts: "below",
    source: `${USBC}; the share is our reading of "best when"`,
    use: "fitted",
    predict: (chances, unsaid) => chances.idealPath(offsetAt(17.5, 6, unsaid), 6),
  },
  tracking("strike", "strike", 0.61, 0.02),
  tracking("10", "7", 0.099, 0.012),
  tracking("7", "10", 0.047, 0.008),
  tracking("9", "8", 0.012, 0.006),
  tracking("7-10", "7-10", 0.0074, 0.004),
  {
    id: "carry.televised",
    says: "carry of pocket hits in televised finals: 40 of 54",
    published: 40 / 54,
    sd: 0.06,
    counts: "both",
    source: "count of televised finals, 54 pocket hits, second-hand; 95 % interval 0.61–0.84",
    use: "kept out",
    predict: pocketCarry,
  },
  {
    id: "zone.flat",
    says: "width of the 95 % zone at 2.5° as a share of that at 6°: about half",
    published: 0.5,
    sd: 0.15,
    counts: "both",
    source: QUICK_STUDY,
    use: "kept out",
    predict: (chances) => zoneBoards(chances, 2.5, 0.95) / Math.max(0.05, zoneBoards(chances, 6, 0.95)),
  },
];

function tracking(kind: Kind, mirrored: Kind, published: number, sd: number): CarryFact {
  return {
    id: `tracked.${kind}`,
    says: kind === "strike" ? "strikes among first balls" : `first balls that leave the ${kind}`,
    published,
    sd,
    counts: "both",
    source: TRACKED,
    use: "fitted",
    predict: (chances, unsaid) => rate(chances, unsaid, kind, mirrored),
  };
}

/** Deviation of a prediction in standard deviations, 0 on the side that does not count. */
export function deviation(fact: CarryFact, predicted: number): number {
  const by = (predicted - fact.published) / fact.sd;
  if (fact.counts === "both") return by;
  return fact.counts === "above" ? Math.max(0, by) : Math.min(0, by);
}

export const kindIndex = (kind: Kind): number => KINDS.indexOf(kind);
