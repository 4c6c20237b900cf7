import type { Line } from "../delivery/bowler.ts";
import type { GridAxis } from "../pins/carryGrid.ts";
import type { LineMap } from "./lineMap.ts";
import type { Limits } from "./question.ts";
import { NOWHERE } from "./thrown.ts";

/** Which line is the best jumps about where many are nearly as good: a score is the mean over all of them, each by e^(−loss/this). Chosen: one strike in a hundred. */
const NEARLY = 0.01;
/** Lines that lose more than this share of the best one's weight are left out. */
const LEAST_WEIGHT = 0.001;
/** A line that is to be played brings its mean shot to the pocket's neighbourhood, boards, from the hand's side (entry angle above 0). */
export const POCKET_REACH = [15.5, 19.5] as const;
/** Two grid numbers that differ by less are the same. */
const HAIR = 1e-9;

/** A line that may be played, with its share of the near-best. Weights sum to one. */
export interface SoftLine {
  readonly at: number;
  readonly line: Line;
  readonly chance: number;
  readonly weight: number;
}

export interface SoftChoice {
  /** Mean of what is scored over the near-best lines; 0 where there is no line. */
  readonly score: number;
  readonly lines: readonly SoftLine[];
  readonly best: SoftLine | null;
}

export const NO_CHOICE: SoftChoice = { score: 0, lines: [], best: null };

/** The lines of a map that a bowler may play, for a strike: within the limits, at the pocket with the mean shot. By their places on the map. */
export function playableLines(map: LineMap, limits: Limits): readonly number[] {
  const [inner, outer] = limits.breakpointBoard;
  const { board, entry, breakpoint } = map;
  return linesWithin(map, limits, (at) => {
    if (board[at] < POCKET_REACH[0] || board[at] > POCKET_REACH[1] || entry[at] <= 0) return false;
    return breakpoint[at] >= inner && breakpoint[at] <= outer;
  });
}

/** The lines within the limits, wherever they go, that are wanted; every one where nothing is said. By their places on the map. */
export function linesWithin(
  { laydown, launch }: LineMap,
  { laydownBoard, launchAngleDeg }: Limits,
  isWanted: (at: number) => boolean = () => true,
): readonly number[] {
  const [firstRow, lastRow] = placesOn(laydown, laydownBoard);
  const [firstColumn, lastColumn] = placesOn(launch, launchAngleDeg);
  const places: number[] = [];
  for (let row = firstRow; row <= lastRow; row++) {
    for (let at = row * launch.count + firstColumn; at <= row * launch.count + lastColumn; at++) if (isWanted(at)) places.push(at);
  }
  return places;
}

/** The first and the last place of an axis between two values, a hair beyond them too. */
function placesOn({ from, step, count }: GridAxis, [least, most]: readonly [number, number]): readonly [number, number] {
  return [Math.max(0, Math.ceil((least - HAIR - from) / step)), Math.min(count - 1, Math.floor((most + HAIR - from) / step))];
}

/** The line at a place of a map. */
export function lineAt({ laydown, launch }: LineMap, at: number): Line {
  const column = at % launch.count;
  const row = (at - column) / launch.count;
  return { laydownBoard: rounded(laydown.from + row * laydown.step), launchAngleDeg: rounded(launch.from + column * launch.step) };
}

/** The grid's numbers as they were meant: halves and tenths. */
function rounded(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}

/** The near-best of some lines of a map, each with its share. @param places of the lines @param chance of what is scored, by places of the map */
export function softChoice(map: LineMap, places: readonly number[], chance: Float64Array, nearly = NEARLY): SoftChoice {
  const top = places.reduce((most, at) => Math.max(most, chance[at]), 0);
  if (top <= 0) return NO_CHOICE;
  const near = places.flatMap((at) => {
    const weight = Math.exp((chance[at] - top) / nearly);
    return weight >= LEAST_WEIGHT ? [{ at, line: lineAt(map, at), chance: chance[at], weight }] : [];
  });
  const total = near.reduce((sum, { weight }) => sum + weight, 0);
  const weighed = near.map((one) => ({ ...one, weight: one.weight / total }));
  return {
    score: weighed.reduce((sum, one) => sum + one.weight * one.chance, 0),
    lines: weighed,
    best: weighed.reduce((most, one) => (one.chance > most.chance ? one : most)),
  };
}

/** What a map says of a line, by the nearest place of its fine grid; null where the line lies off it or no ball of it comes near the pins. */
export function placeOfLine({ laydown, launch, board }: LineMap, line: Line): number | null {
  const row = Math.round((line.laydownBoard - laydown.from) / laydown.step);
  const column = Math.round((line.launchAngleDeg - launch.from) / launch.step);
  if (row < 0 || row >= laydown.count || column < 0 || column >= launch.count) return null;
  const at = row * launch.count + column;
  return board[at] === NOWHERE ? null : at;
}

/** Lines that are played side by side, told as a few: what they share of the shots, where they go, and how they scatter about that. */
export interface LineGroup {
  readonly line: Line;
  readonly share: number;
  readonly sdLaunchDeg: number;
  readonly sdLaydownBoards: number;
}

const MOST_GROUPS = 8;

/** The near-best lines gathered by laydown into at most eight: what the lane is worn by. */
export function groupsOf({ lines }: SoftChoice): readonly LineGroup[] {
  if (lines.length === 0) return [];
  const boards = lines.map(({ line }) => line.laydownBoard);
  const [least, most] = [Math.min(...boards), Math.max(...boards)];
  const width = Math.max(0.5, (most - least + 0.5) / MOST_GROUPS);
  const groups = new Map<number, SoftLine[]>();
  for (const one of lines) {
    const group = Math.min(MOST_GROUPS - 1, Math.floor((one.line.laydownBoard - least) / width));
    groups.set(group, [...(groups.get(group) ?? []), one]);
  }
  return [...groups.values()].map((members) => {
    const share = members.reduce((sum, { weight }) => sum + weight, 0);
    const over = (value: (line: Line) => number) => members.reduce((sum, { line, weight }) => sum + (weight / share) * value(line), 0);
    const laydownBoard = over((line) => line.laydownBoard);
    const launchAngleDeg = over((line) => line.launchAngleDeg);
    return {
      line: { laydownBoard, launchAngleDeg },
      share,
      sdLaunchDeg: Math.sqrt(over((line) => (line.launchAngleDeg - launchAngleDeg) ** 2)),
      sdLaydownBoards: Math.sqrt(over((line) => (line.laydownBoard - laydownBoard) ** 2)),
    };
  });
}
