import { assume } from "#engine/assumptions";
import { ROUNDNESS_IN } from "#engine/rules/ruleBooks";
import { cutConstant, FORCES } from "#engine/surface/cut";
import { ballCells, type Cells } from "#engine/surface/padWork/cells";
import { evennessOf, meanOf } from "#engine/surface/padWork/evenness";
import type { SpinnerStage } from "#engine/surface/padWork/padStage";
import { PLAIN_QUESTION, workBySide } from "#engine/surface/padWork/padWork";
import { type Received, sumReceived } from "#engine/surface/padWork/received";
import { profileAt, shareUnderPad, sideProfile } from "#engine/surface/padWork/sideProfile";
import { SIDE_AXES, type SideId } from "#engine/surface/padWork/sides";
import { DEGREE } from "#engine/units";
import { aboutAxis, rotate, type Vector } from "#engine/vector";
import type { Fact } from "../fact.ts";

/** A ball of radius 0.1 m, 300 rpm, medium force (20 N), 60 s: every closed form below is of this. */
const RADIUS = 0.1;
const DIAMETER_IN = (2 * RADIUS) / 0.0254;
const TURN = 10 * Math.PI;
const [NEWTONS, SECONDS] = [FORCES.medium, 60];
/** Arc radius of a pad 40 mm wide. */
const PAD = 0.2;

function stageOf(sweepDeg: readonly [number, number], pad: number, sides: readonly SideId[] = ["grip"]): SpinnerStage {
  return {
    by: "spinner",
    grainUm: 10,
    padDiameterIn: pad * DIAMETER_IN,
    spinnerRpm: 300,
    sweepDeg,
    sides: sides.map((side) => ({ side, seconds: SECONDS, force: "medium", held: null })),
  };
}

function worked(stage: SpinnerStage, count = 20_000, axes: Readonly<Record<SideId, Vector>> = SIDE_AXES): [Received, Cells] {
  const cells = ballCells(count);
  return [
    sumReceived([...workBySide({ ...PLAIN_QUESTION, diameterIn: DIAMETER_IN, stages: [stage], axes }, cells).values()], count),
    cells,
  ];
}

function totalJoule(stage: SpinnerStage): number {
  return meanOf(worked(stage)[0].work) * 4 * Math.PI * RADIUS ** 2;
}

function profile(stage: SpinnerStage, ringDeg: number): number {
  return profileAt(sideProfile(stage, stage.sides[0], DIAMETER_IN), ringDeg * DEGREE);
}

const ALL_SIX: readonly SideId[] = ["grip", "opposite", "left", "right", "fingers", "thumb"];

function cv(count: number, axes?: Readonly<Record<SideId, Vector>>): number {
  return evennessOf(worked(stageOf([5, 80], 0.45, ALL_SIX), count, axes)[0]).cv;
}

function turned(): Record<SideId, Vector> {
  const turn = aboutAxis([1, 2, 3], 0.83);
  return Object.fromEntries(Object.entries(SIDE_AXES).map(([side, axis]) => [side, rotate(turn, axis)])) as Record<SideId, Vector>;
}

/** Crossing at the spot that lies a quarter turn from two sides which themselves lie a quarter turn apart. */
function crossingAtThumb(sides: readonly SideId[]): number {
  const [{ work, cos2, sin2 }, { at }] = worked(stageOf([40, 90], PAD, sides));
  const i = at.reduce((best, point, k) => (point[1] < at[best][1] ? k : best), 0);
  return 1 - Math.hypot(cos2[i], sin2[i]) / work[i];
}

const computed = (says: string, unit: string, known: number, within: number, predict: () => number): Fact => ({
  topic: "pad work",
  says,
  source: "closed form",
  provenance: "computed",
  unit,
  known,
  within,
  predict,
});

export const PAD_WORK_FACTS: readonly Fact[] = [
  computed("pad at the pole: whole work is F t ωR (ρ/2 − sin 2ρ/4)/(1 − cos ρ)", "J", poleWork(), 4, () =>
    totalJoule(stageOf([0, 0], PAD)),
  ),
  computed("narrow pad held at 60°: whole work is F t ωR sin 60°", "J", NEWTONS * SECONDS * TURN * RADIUS * Math.sin(Math.PI / 3), 6, () =>
    totalJoule(stageOf([60, 60], 0.1)),
  ),
  computed(
    "equal times at each angle, narrow pad from 40° to 100°: every ring gets F ω t/(2πR Δθ)",
    "J/m²",
    (NEWTONS * TURN * SECONDS) / (2 * Math.PI * RADIUS * 60 * DEGREE),
    60,
    () => profile(stageOf([40, 100], 0.05), 70),
  ),
  computed("the same at another ring", "J/m²", (NEWTONS * TURN * SECONDS) / (2 * Math.PI * RADIUS * 60 * DEGREE), 30, () =>
    profile(stageOf([40, 100], 0.05), 50),
  ),
  computed(
    "at the pole, under a pad held there, work grows with the sine of the angle: F ωR t sin θ/(2πR²(1 − cos ρ)) at 5°",
    "J/m²",
    (NEWTONS * TURN * RADIUS * SECONDS * Math.sin(5 * DEGREE)) / (2 * Math.PI * RADIUS ** 2 * (1 - Math.cos(PAD))),
    1,
    () => profile(stageOf([0, 0], PAD), 5),
  ),
  computed("a ring on the equator under a pad 0.2 rad in radius: share of the turn 0.2/π", "1", 0.2 / Math.PI, 1e-12, () =>
    shareUnderPad(Math.PI / 2, Math.PI / 2, 0.2),
  ),
  computed(
    "one side swept 30–90° by a very narrow pad works a share f = cos 30°/2 evenly: variation √((1 − f)/f)",
    "1",
    Math.sqrt((1 - Math.cos(30 * DEGREE) / 2) / (Math.cos(30 * DEGREE) / 2)),
    0.012,
    () => evennessOf(worked(stageOf([30, 90], 0.02))[0]).cv,
  ),
  computed("one side alone: scratches do not cross", "1", 0, 1e-12, () => crossingAtThumb(["grip"])),
  computed("two sides a quarter turn apart cross fully where they are equally far", "1", 1, 0.005, () =>
    crossingAtThumb(["grip", "right"]),
  ),
  computed("two opposite sides do not cross anywhere", "1", 0, 1e-12, () => crossingAtThumb(["grip", "opposite"])),
  computed("all axes turned together: variation changes by", "1", 0, 0.0003, () => cv(6000, turned()) - cv(6000)),
  computed("twice the cells: variation changes by", "1", 0, 0.0003, () => cv(12_000) - cv(6000)),
  {
    topic: "pad work",
    says: "Preston: 1e-12 1/Pa under 10 kPa at 1 m/s in a minute, through this page's cut",
    source: "Preston, J. Soc. Glass Technol. 11 (1927) 214, worked example",
    provenance: "computed",
    unit: "µm",
    known: 0.6,
    within: 1e-9,
    predict: () => cutConstant({ grainUm: 10, hardnessD: 75, ownCut: 1 }, assume({ "cut.preston": 1e-12 })) * 10_000 * 1 * 60 * 1e6,
  },
  {
    topic: "pad work",
    says: "a ball may be out of round by",
    source: "USBC Equipment Specifications",
    provenance: "memory",
    unit: "in",
    known: 0.01,
    within: 0,
    predict: () => ROUNDNESS_IN,
  },
];

function poleWork(): number {
  return (NEWTONS * SECONDS * TURN * RADIUS * (PAD / 2 - Math.sin(2 * PAD) / 4)) / (1 - Math.cos(PAD));
}
