import { DEGREE } from "#engine/units";
import { FIGURE_IDS, type FigureId } from "#engine/video/figures";
import { readSightings } from "#engine/video/readSightings";
import type { Figure, ShotRead } from "#engine/video/shotRead";
import { USUAL_ERRORS } from "#engine/video/sightings";
import { inventedShot, type Truth } from "./shots.ts";
import { inventedCamera, sightingsOf, type Trouble } from "./sightings.ts";

/** Boards are also held at these distances, ft. */
const BOARDS_FT = [15, 30, 45] as const;
export type Held = FigureId | `board${(typeof BOARDS_FT)[number]}`;
export const OUTCOME_WORDS: readonly Held[] = ["board15", "board30", "board45", ...FIGURE_IDS];

/** What each is called in the table of docs/model/video.md. */
export const ROW_NAMES: Readonly<Record<Held, string>> = {
  board15: "board at 15 ft",
  board30: "board at 30 ft",
  board45: "board at 45 ft",
  launchSpeedMph: "launch speed, mph",
  launchAngleDeg: "launch angle, °",
  laydownBoard: "laydown board",
  hookStartFt: "hook start, ft",
  breakpointFt: "breakpoint, ft",
  breakpointBoard: "breakpoint, board",
  entryAngleDeg: "entry angle, °",
  boardAtPins: "board at 59.5 ft",
  speedAtPinsMph: "speed at the pins, mph",
  revRateRpm: "rev rate from the course, rpm",
};

/** One figure of one shot against the truth. */
export interface Against {
  readonly error: number;
  readonly isWithin: boolean;
  readonly half: number;
}

/** A tracker as good as the one that was tried on computed videos, its faults tied from picture to picture. */
export const TRACKER: Trouble = { noise: { u: 0.15, v: 0.25 }, bias: { u: 0.05, v: 0.1 }, marks: 0.4, alike: 0.7 };

export interface Accuracy {
  readonly shots: number;
  readonly read: number;
  readonly by: ReadonlyMap<Held, readonly Against[]>;
}

/** Reads invented shots, each by another camera, and holds every figure against the full model's. */
export function accuracyOver(count: number, seed: number, trouble: Trouble): Accuracy {
  const by = new Map<Held, Against[]>(OUTCOME_WORDS.map((id) => [id, []]));
  let read = 0;
  for (let i = 0; i < count; i++) {
    const truth = inventedShot(seed + i);
    const { shots } = readSightings(sightingsOf(truth, inventedCamera(7 * seed + i), seed + i, trouble, USUAL_ERRORS));
    if (shots.length === 0) continue;
    read += 1;
    for (const [id, against] of againstTruth(shots[0], truth)) by.get(id)?.push(against);
  }
  return { shots: count, read, by };
}

export function againstTruth({ figures, samples }: ShotRead, truth: Truth): [Held, Against][] {
  const true_ = trueFigures(truth);
  const held: [Held, Against][] = FIGURE_IDS.flatMap((id): [Held, Against][] => {
    const [figure, value] = [figures[id], true_[id]];
    return figure === null || value === null ? [] : [[id, against(figure, value)]];
  });
  for (const ft of BOARDS_FT) {
    const sample = samples.find(({ yFt }) => yFt === ft);
    const there = truth.shot.samples.find(({ yFt }) => yFt === ft);
    if (sample === undefined || there === undefined) continue;
    held.push([`board${ft}`, against({ value: sample.board, low: sample.boardLow, high: sample.boardHigh }, there.board)]);
  }
  return held;
}

function against({ value, low, high }: Figure, truth: number): Against {
  return { error: value - truth, isWithin: low <= truth && truth <= high, half: (high - low) / 2 };
}

/** The rev rate that a course can tell is that about the horizontal: tilt spins without moving the contact point. */
export function trueFigures({ setup, shot }: Truth): Readonly<Record<FigureId, number | null>> {
  const { bowler, line } = setup;
  return {
    launchSpeedMph: bowler.speedMph,
    launchAngleDeg: line.launchAngleDeg,
    laydownBoard: line.laydownBoard,
    hookStartFt: shot.phases.hookStartFt,
    breakpointFt: shot.phases.breakpoint.yFt,
    breakpointBoard: shot.phases.breakpoint.board,
    entryAngleDeg: shot.course.entryAngleDeg,
    boardAtPins: shot.course.boardAtPins,
    speedAtPinsMph: shot.phases.speedAtPinsMph,
    revRateRpm: bowler.revRateRpm * Math.cos(bowler.axisTiltDeg * DEGREE),
  };
}

export function rms(errors: readonly Against[]): number {
  return Math.sqrt(errors.reduce((sum, { error }) => sum + error ** 2, 0) / errors.length);
}

export function worst(errors: readonly Against[]): number {
  return errors.reduce((most, { error }) => Math.max(most, Math.abs(error)), 0);
}

export function shareWithin(errors: readonly Against[]): number {
  return errors.filter(({ isWithin }) => isWithin).length / errors.length;
}
