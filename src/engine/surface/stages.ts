import { type Assumed, assume } from "../assumptions.ts";
import { coverOf } from "../ball/ball.ts";
import { refuse } from "../fault.ts";
import type { CautionId } from "../rules/cautions.ts";
import { type Findings, STOPS, type StopId, stopsFor } from "../rules/stops.ts";
import { INCH, MICROMETRE } from "../units.ts";
import { ABRASIVES, type Abrasive, type AbrasiveId, LEVELS_A_PLUG, POLISHES } from "./abrasives.ts";
import { type BenchBall, hardnessOf, type SurfaceKnownFrom, surfaceIsUnknown, trackRoughness } from "./benchBall.ts";
import { type CutSetting, depthRateUm, type Force, valleyDepthUm } from "./cut.ts";
import { effectiveRaUm, type Finish } from "./finish.ts";
import { hazardsOf } from "./hazards.ts";
import { type RoughnessRange, roughnessOfHistory } from "./history.ts";
import { CUT_BACK_TO, FINISHES_FROM, FINISHES_TO, grainOfNumberUm, OPENED_WITH, PAD_NUMBERS } from "./pads.ts";
import { SIDE_SETS, type SideId } from "./padWork/sides.ts";

/** How this shop works. */
export interface BenchHabits {
  readonly by: "spinner" | "hand";
  readonly sides: 2 | 4 | 6;
  readonly dry: boolean;
  readonly spinnerRpm: number;
  /** Many open the surface with 500 before extracting oil; the order is the shop's. The final finish comes after extraction, always. */
  readonly oilOrder: "extractFirst" | "openFirst";
  /** A technician's own cut over the usual one. */
  readonly ownCut: number;
}

export const USUAL_HABITS: BenchHabits = { by: "spinner", sides: 6, dry: false, spinnerRpm: 400, oilOrder: "extractFirst", ownCut: 1 };

export const STAGE_KINDS = ["clean", "open", "extract", "dryOff", "plug", "cut", "polish", "check"] as const;
export type StageKind = (typeof STAGE_KINDS)[number];

export interface Stage {
  readonly kind: StageKind;
  readonly abrasive: AbrasiveId | null;
  readonly wet: boolean;
  readonly sides: number;
  /** Which sides, in the order in which they are worked; their axes are in padWork/sides. Empty where a stage has none. */
  readonly sideIds: readonly SideId[];
  readonly secondsPerSide: number;
  readonly force: Force;
  readonly spinnerRpm: number;
  /** After the stage, µm effective; null where a stage does not touch the texture. */
  readonly expectedRaUm: RoughnessRange | null;
  /** Mean depth taken off, µm. */
  readonly removedUm: number;
  /** Hazards that this stage brings and the one before did not. */
  readonly cautions: readonly CautionId[];
  /** Why it is there. */
  readonly why: StageWhy;
}

export const STAGE_WHYS = [
  "before",
  "oil",
  "openPores",
  "heat",
  "plugFlush",
  "deepWear",
  "scratches",
  "unknownBefore",
  "establish",
  "removeLast",
  "polishOver",
  "prove",
] as const;
export type StageWhy = (typeof STAGE_WHYS)[number];

export interface StagePlan {
  readonly stops: readonly { readonly id: StopId; readonly hard: boolean }[];
  /** Empty where a hard stop holds. */
  readonly stages: readonly Stage[];
  readonly now: RoughnessRange & { readonly from: SurfaceKnownFrom };
  readonly expectedRaUm: RoughnessRange;
  readonly removedUm: number;
  readonly diameterLossIn: number;
  readonly benchSeconds: number;
  /** How often the same work can be done before each end is reached, fewest first. */
  readonly ends: readonly { readonly what: "diameter" | "serial"; readonly times: number }[];
}

/** A second of turning the ball and wetting it, for each side: what the clock loses. */
const TURN_SECONDS = 15;
const LEAST_SECONDS = 10;
const MOST_SECONDS = 90;
/** Grain ratio that a step should not exceed, and numbers that it may skip: the trade's step rules, common practice. */
export const MOST_GRAIN_RATIO = 2;
export const MOST_SKIPPED = 1;
/** Games after which a surface is cut back to the ladder's start instead of refreshed (published: resurface at 60–80). */
const RESURFACE_FROM_GAMES = 60;
/** Depth of a worn track beyond its roughness, µm: chosen; a scratch that catches a fingernail is taken as deep as deep wear. */
const WEAR_DEPTH_UM: Readonly<Record<BenchBall["trackWear"], number>> = { none: 0, light: 2, deep: 8 };
/** Smallest ball of 13 lb and more (USBC, published). */
const LEAST_DIAMETER_IN = 8.5;

/** The work from the ball as it is to the finish wanted, each stage taking off the depth that the last one left. */
export function planStages(
  ball: BenchBall,
  wanted: Finish,
  findings: Findings,
  habits: BenchHabits = USUAL_HABITS,
  a: Assumed = assume(),
): StagePlan {
  const stops = stopsFor(findings).map((id) => ({ id, hard: STOPS[id].hard }));
  const now = trackRoughness(ball, a);
  const bench = new Bench(ball, habits, now, a);
  if (!stops.some((stop) => stop.hard)) {
    bench.plain("clean", "before");
    oilStages(bench, ball, habits);
    if (ball.plug === "proud") bench.cut("plug", LEVELS_A_PLUG, "plugFlush", 0);
    for (const { id, why, depthUm } of cutsFor(ball, wanted, bench.roughness, bench.opened, a)) bench.cut("cut", id, why, depthUm);
    if (wanted.polished) bench.polish();
    bench.plain("check", "prove");
  }
  const removedUm = bench.stages.reduce((sum, stage) => sum + stage.removedUm, 0);
  return {
    stops,
    stages: bench.stages,
    now,
    expectedRaUm: bench.roughness,
    removedUm,
    diameterLossIn: (2 * removedUm * MICROMETRE) / INCH,
    benchSeconds: bench.stages.reduce((sum, stage) => sum + stage.sides * (stage.secondsPerSide + TURN_SECONDS), 0),
    ends: endsAfter(ball, removedUm, a),
  };
}

function oilStages(bench: Bench, ball: BenchBall, habits: BenchHabits): void {
  if (ball.oil === "clean") return;
  if (habits.oilOrder === "openFirst" && ball.cover !== null && coverOf(ball.cover).opensForOil)
    bench.cut("open", `pad-${OPENED_WITH}`, "openPores", 0);
  bench.plain("extract", "oil");
  bench.plain("dryOff", "heat");
}

interface Cut {
  readonly id: AbrasiveId;
  readonly why: StageWhy;
  /** What it must take off, µm. */
  readonly depthUm: number;
}

/** From coarse to fine: a cut-back where the surface calls for one, then up the ladder to the number wanted. */
function cutsFor(ball: BenchBall, wanted: Finish, now: RoughnessRange, opened: boolean, a: Assumed): readonly Cut[] {
  const start = opened ? OPENED_WITH : startNumber(ball, wanted, now, a);
  // What was opened need not be sanded with the same number again, unless that is the finish or the track wants it.
  const again = !opened || wanted.number <= OPENED_WITH || ball.trackWear === "deep" || ball.scratches === "deep" || ball.plug === "proud";
  const numbers = ladder(Math.min(start, wanted.number), wanted.number).slice(again ? 0 : 1);
  let left =
    Math.max(valleyDepthUm(now.value, a), valleyDepthUm(effectiveRaUm({ number: start, polished: false }, a), a)) +
    Math.max(WEAR_DEPTH_UM[ball.trackWear], ball.scratches === "deep" ? WEAR_DEPTH_UM.deep : 0);
  return numbers.map((number, i) => {
    const cut: Cut = {
      id: abrasiveFor(ball, number),
      why: i > 0 ? "removeLast" : whyFirst(ball),
      depthUm: left,
    };
    left = valleyDepthUm(effectiveRaUm({ number, polished: false }, a), a);
    return cut;
  });
}

/** Why the first cut begins where it does. */
function whyFirst(ball: BenchBall): StageWhy {
  if (ball.trackWear === "deep") return "deepWear";
  if (ball.scratches === "deep") return "scratches";
  return surfaceIsUnknown(ball) ? "unknownBefore" : "establish";
}

/** Where to begin: at the number wanted if that is duller than what is there; else just duller than what is there; further back for wear, scratches and age, and where nobody knows what is there. */
function startNumber(ball: BenchBall, wanted: Finish, now: RoughnessRange, a: Assumed): number {
  if (ball.trackWear === "deep" || ball.plug === "proud")
    return Math.min(wanted.number, ball.cover === null ? CUT_BACK_TO : coverOf(ball.cover).deepCutTo);
  if (ball.scratches === "deep" || surfaceIsUnknown(ball)) return Math.min(wanted.number, CUT_BACK_TO);
  if (ball.gamesSince >= RESURFACE_FROM_GAMES) return Math.min(wanted.number, CUT_BACK_TO);
  const dullerThanNow = PAD_NUMBERS.filter((number) => effectiveRaUm({ number, polished: false }, a) >= now.value);
  return Math.min(wanted.number, dullerThanNow[dullerThanNow.length - 1] ?? CUT_BACK_TO);
}

/** The numbers from `start` to `end`: as few as the step rules allow. */
export function ladder(start: number, end: number): readonly number[] {
  const between = [...new Set([start, ...PAD_NUMBERS.filter((number) => number > start && number < end), end])];
  const numbers = [between[0]];
  let at = 0;
  while (at < between.length - 1) {
    let next = at + 1;
    while (
      next < between.length - 1 &&
      next + 1 - at - 1 <= MOST_SKIPPED &&
      grainOf(between[at]) / grainOf(between[next + 1]) <= MOST_GRAIN_RATIO
    )
      next++;
    numbers.push(between[next]);
    at = next;
  }
  return numbers;
}

function grainOf(number: number): number {
  return grainOfNumberUm(number) ?? refuse("finish", number, `a number from ${FINISHES_FROM} to ${FINISHES_TO}`);
}

/** Paper where it suits the cover best and there is one of that number; else a pad, and for numbers without a pad of their own the nearest. */
function abrasiveFor(ball: BenchBall, number: number): AbrasiveId {
  const paper = `paper-P${number}`;
  if (ball.cover !== null && coverOf(ball.cover).wetPaper === "first" && paper in ABRASIVES) return paper as AbrasiveId;
  const nearest = PAD_NUMBERS.reduce((best, pad) => (Math.abs(Math.log(pad / number)) < Math.abs(Math.log(best / number)) ? pad : best));
  return `pad-${nearest}`;
}

function endsAfter(ball: BenchBall, removedUm: number, a: Assumed): StagePlan["ends"] {
  if (removedUm <= 0) return [];
  const spare = Math.max(0, ((ball.diameterIn - LEAST_DIAMETER_IN) * INCH) / MICROMETRE / 2);
  return [
    { what: "diameter" as const, times: Math.floor(spare / removedUm) },
    { what: "serial" as const, times: Math.floor(a["cut.serialDepth"] / removedUm) },
  ].sort((one, other) => one.times - other.times);
}

/** The bench as the stages go over it: what has been done, how rough the ball is now, which hazards are on. */
class Bench {
  readonly stages: Stage[] = [];
  roughness: RoughnessRange;
  private hazards: readonly CautionId[] = [];
  private readonly ball: BenchBall;
  private readonly habits: BenchHabits;
  private readonly a: Assumed;

  constructor(ball: BenchBall, habits: BenchHabits, now: RoughnessRange, a: Assumed) {
    this.ball = ball;
    this.habits = habits;
    this.a = a;
    this.roughness = { value: now.value, low: now.low, high: now.high };
  }

  plain(kind: "clean" | "extract" | "dryOff" | "check", why: StageWhy): void {
    const hazards: readonly CautionId[] = kind === "clean" ? ["cleaner"] : kind === "extract" ? ["heat"] : [];
    this.add(
      {
        kind,
        abrasive: null,
        wet: false,
        sides: 0,
        secondsPerSide: 0,
        force: "light",
        spinnerRpm: 0,
        expectedRaUm: null,
        removedUm: 0,
        why,
      },
      hazards,
    );
  }

  cut(kind: "open" | "plug" | "cut", id: AbrasiveId, why: StageWhy, depthUm: number): void {
    const abrasive: Abrasive = ABRASIVES[id];
    const wet = !abrasive.dryAllowed || !this.habits.dry;
    const { force, seconds, removedUm } = this.effort(abrasive, depthUm);
    this.roughness = roughnessOfHistory([{ abrasive, by: this.habits.by, usesBefore: 0, who: "", on: "" }], this.roughness);
    this.add(
      {
        kind,
        abrasive: id,
        wet,
        sides: this.habits.sides,
        secondsPerSide: seconds,
        force,
        spinnerRpm: this.rpm(),
        expectedRaUm: this.roughness,
        removedUm,
        why,
      },
      this.hazardsOf(abrasive, wet),
    );
  }

  /** Before the first cut the ball is looked over, since nothing that was cut comes back. */
  private hazardsOf(abrasive: Abrasive, wet: boolean): readonly CautionId[] {
    const isFirst = this.stages.every(({ removedUm }) => removedUm === 0);
    return [...(isFirst ? (["lookFirst"] as const) : []), ...hazardsOf(abrasive, { by: this.habits.by, wet })];
  }

  polish(): void {
    const abrasive: Abrasive = ABRASIVES[POLISHES];
    this.roughness = roughnessOfHistory([{ abrasive, by: this.habits.by, usesBefore: 0, who: "", on: "" }], this.roughness);
    this.add(
      {
        kind: "polish",
        abrasive: POLISHES,
        wet: true,
        sides: this.habits.sides,
        secondsPerSide: 30,
        force: "medium",
        spinnerRpm: this.rpm(),
        expectedRaUm: this.roughness,
        removedUm: 0,
        why: "polishOver",
      },
      hazardsOf(abrasive, { by: this.habits.by, wet: true }),
    );
  }

  get opened(): boolean {
    return this.stages.some((stage) => stage.kind === "open");
  }

  private rpm(): number {
    return this.habits.by === "spinner" ? this.habits.spinnerRpm : 0;
  }

  /** Seconds a side for the depth, within what a side is worked; if medium is not enough, hard. */
  private effort(abrasive: Abrasive, depthUm: number): { force: Force; seconds: number; removedUm: number } {
    const { by, spinnerRpm, sides, ownCut } = this.habits;
    const setting: CutSetting = {
      grainUm: abrasive.grainUm,
      by,
      spinnerRpm,
      diameterIn: this.ball.diameterIn,
      ownCut,
      hardnessD: hardnessOf(this.ball),
      force: "medium",
    };
    const need = (force: Force) => depthUm / (depthRateUm({ ...setting, force }, this.a) * sides);
    const force: Force = need("medium") > MOST_SECONDS ? "hard" : "medium";
    const seconds = Math.min(MOST_SECONDS, Math.max(LEAST_SECONDS, 5 * Math.ceil(need(force) / 5)));
    return { force, seconds, removedUm: seconds * sides * depthRateUm({ ...setting, force }, this.a) };
  }

  private add(stage: Omit<Stage, "cautions" | "sideIds">, hazards: readonly CautionId[]): void {
    const cautions = hazards.filter((id) => !this.hazards.includes(id));
    this.hazards = hazards;
    this.stages.push({ ...stage, sideIds: stage.sides > 0 ? SIDE_SETS[this.habits.sides] : [], cautions });
  }
}
