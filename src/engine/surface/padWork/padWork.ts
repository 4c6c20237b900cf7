import { ASSUMPTIONS, assume } from "../../assumptions.ts";
import { refuse } from "../../fault.ts";
import { deriveSeed } from "../../random.ts";
import { MICROMETRE } from "../../units.ts";
import type { Vector } from "../../vector.ts";
import { cutConstant } from "../cut.ts";
import { ballCells, type Cells } from "./cells.ts";
import { type Evenness, evennessOf, type ThinSpot, thinSpots } from "./evenness.ts";
import { type FlatSpot, flatSpotOf } from "./flatSpot.ts";
import { addHandSide } from "./handWork.ts";
import { type PadStage, type SideWork, USUAL_PAD_WORK } from "./padStage.ts";
import { nothingReceived, type Received, receive, sumReceived } from "./received.ts";
import { padAngle, profileAt, type SideProfile, sideProfile } from "./sideProfile.ts";
import { SIDE_AXES, SIDE_COUNTS, SIDE_IDS, SIDE_SETS, type SideCount, type SideId } from "./sides.ts";

/** A ball and what was or is to be done to it. */
export interface PadQuestion {
  readonly diameterIn: number;
  /** Shore D; a softer cover is cut deeper by the same work. */
  readonly hardnessD: number;
  readonly stages: readonly PadStage[];
  readonly cells: number;
  /** For strokes by hand. */
  readonly seed: number;
  /** Turned axes instead of the ball's own; a test turns all of them together. */
  readonly axes: Readonly<Record<SideId, Vector>>;
}

export const PLAIN_QUESTION: Omit<PadQuestion, "stages"> = {
  diameterIn: 8.594,
  hardnessD: 75,
  cells: USUAL_PAD_WORK.cells,
  seed: 1,
  axes: SIDE_AXES,
};

const CUT = ASSUMPTIONS["cut.preston"];
/** Between which multiples of the depths told the true ones are believed to lie. */
export const DEPTH_RANGE = { low: CUT.low / CUT.value, high: CUT.high / CUT.value } as const;

export interface SideShare {
  readonly side: SideId;
  readonly seconds: number;
  /** Of all work done on the ball. */
  readonly share: number;
  /** The ball's evenness if this side were skipped. */
  readonly without: Evenness;
}

export interface PadWork {
  readonly cells: Cells;
  readonly received: Received;
  readonly evenness: Evenness;
  readonly thin: readonly ThinSpot[];
  readonly sides: readonly SideShare[];
  /** The same stages in the same time, spread over two, four and six sides. */
  readonly compared: readonly { readonly sides: SideCount; readonly evenness: Evenness }[];
  readonly flat: FlatSpot;
}

/** A pad cannot reach further round a ball than this, radians. */
const WIDEST_PAD = 1.5;

/**
 * Everything that is said of pad work: the sum, how even it is, what each side does in it, and what other counts of sides would do.
 *
 * @throws {EngineFault} for a pad too wide for the ball
 */
export function padWorkOf(question: PadQuestion): PadWork {
  for (const [i, { padDiameterIn }] of question.stages.entries())
    if (padAngle(padDiameterIn, question.diameterIn) > WIDEST_PAD)
      refuse(`stages.${i}.padDiameterIn`, padDiameterIn, `x ≤ ${WIDEST_PAD} × the ball's diameter`);
  const cells = ballCells(question.cells);
  const bySide = workBySide(question, cells);
  const received = sumReceived([...bySide.values()], cells.count);
  const total = received.work.reduce((sum, work) => sum + work, 0);
  const sides = [...bySide].map(([side, part]): SideShare => {
    const others = [...bySide].filter(([other]) => other !== side).map(([, work]) => work);
    return {
      side,
      seconds: secondsOn(question.stages, side),
      share: total === 0 ? 0 : part.work.reduce((sum, work) => sum + work, 0) / total,
      without: evennessOf(sumReceived(others, cells.count)),
    };
  });
  return {
    cells,
    received,
    evenness: evennessOf(received),
    thin: thinSpots(cells, received.work),
    sides,
    compared: SIDE_COUNTS.map((count) => ({ sides: count, evenness: onSides(question, cells, count) })),
    flat: flatSpotOf(received),
  };
}

/** What each side brings, summed over the stages; sides that are not worked are left out. */
export function workBySide(question: PadQuestion, cells: Cells): Map<SideId, Received> {
  const bySide = new Map<SideId, Received>();
  const a = assume();
  for (const [s, stage] of question.stages.entries()) {
    const umPerWork = cutConstant({ grainUm: stage.grainUm, hardnessD: question.hardnessD, ownCut: 1 }, a) / MICROMETRE;
    for (const [w, work] of stage.sides.entries()) {
      const into = bySide.get(work.side) ?? nothingReceived(cells.count);
      bySide.set(work.side, into);
      const axis = question.axes[work.side];
      if (stage.by === "spinner") addSpinnerSide(into, cells, axis, sideProfile(stage, work, question.diameterIn), umPerWork);
      else
        addHandSide(into, cells, axis, stage, work, {
          diameterIn: question.diameterIn,
          umPerWork,
          seed: deriveSeed(question.seed, 64 * s + w),
        });
    }
  }
  return new Map(SIDE_IDS.flatMap((side) => (bySide.has(side) ? [[side, bySide.get(side) as Received]] : [])));
}

function secondsOn(stages: readonly PadStage[], side: SideId): number {
  return stages
    .flatMap(({ sides }) => sides)
    .filter((work) => work.side === side)
    .reduce((sum, { seconds, held }) => sum + seconds + (held?.seconds ?? 0), 0);
}

/** The same stages, each in the time it takes now, moved evenly over so many sides; nothing is held still. */
function onSides(question: PadQuestion, cells: Cells, count: SideCount): Evenness {
  const stages = question.stages.map((stage): PadStage => {
    const seconds = stage.sides.reduce((sum, work) => sum + work.seconds, 0) / count;
    return { ...stage, sides: SIDE_SETS[count].map((side): SideWork => ({ side, seconds, force: stage.sides[0].force, held: null })) };
  });
  return evennessOf(sumReceived([...workBySide({ ...question, stages }, cells).values()], cells.count));
}

/** Lays a side's profile about its axis over the ball; scratches run along the rings. */
export function addSpinnerSide(into: Received, cells: Cells, [ax, ay, az]: Vector, profile: SideProfile, umPerWork: number): void {
  for (let i = 0; i < cells.count; i++) {
    const [x, y, z] = cells.at[i];
    const cosine = ax * x + ay * y + az * z;
    const work = profileAt(profile, Math.acos(Math.max(-1, Math.min(1, cosine))));
    if (work > 0) receive(into, cells, i, work, umPerWork, ay * z - az * y, az * x - ax * z, ax * y - ay * x);
  }
}
