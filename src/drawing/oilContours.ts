import { contours } from "d3-contour";
import type { FilmSheet } from "#engine/lane/filmSheet";
import type { LaneFrame } from "./laneFrame.ts";
import { simplified } from "./simplify.ts";
import type { Point } from "./svg.ts";

/** One depth of oil: the ground it covers, and its shore lines without the stretches that only run along the lane's edge. */
export interface OilLevel {
  readonly um: number;
  readonly areas: readonly (readonly Point[])[];
  readonly lines: readonly (readonly Point[])[];
}

/** A figure on a line or a sounding in between. */
export interface OilFigure {
  readonly at: Point;
  readonly um: number;
}

/** Close together where oil is thin, because that is where the ball begins to feel the lane. */
const LEVELS_UM = [0.1, 0.3, 0.6, 1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20] as const;

/** Picture units by which a contour may be straightened: a third of its own stroke. */
const TOLERANCE = 0.25;

type GridPoint = readonly [number, number];

/** The ring cut where it follows the border of the table, each piece a line of its own. */
function openLines(ring: readonly GridPoint[], columns: number, rows: number): GridPoint[][] {
  const lines: GridPoint[][] = [];
  let line: GridPoint[] = [];
  for (let i = 1; i < ring.length; i++) {
    const [a, b] = [ring[i - 1] as GridPoint, ring[i] as GridPoint];
    if (followsBorder(a, b, columns, rows)) {
      if (line.length > 1) lines.push(line);
      line = [];
    } else {
      if (line.length === 0) line.push(a);
      line.push(b);
    }
  }
  if (line.length > 1) lines.push(line);
  return lines;
}

/** In the outermost half cell there is no oil to tell of: the ring only closes itself there. */
function followsBorder(a: GridPoint, b: GridPoint, columns: number, rows: number): boolean {
  const onEdge = (p: GridPoint): boolean => p[0] <= 0.5 || p[0] >= columns - 0.5 || p[1] <= 0.5 || p[1] >= rows - 0.5;
  return onEdge(a) && onEdge(b);
}

/** The depths of oil that occur on the lane, thinnest first. */
export function oilLevels(film: FilmSheet, frame: LaneFrame): OilLevel[] {
  const most = film.um.reduce((a, b) => Math.max(a, b), 0);
  const levels = LEVELS_UM.filter((um) => um < most);
  // Column c is the centre of board c + 1, so grid x = 0 is the lane's right edge, board 0.5.
  const place = ([x, y]: GridPoint): Point => frame.fromRight(Math.max(0, film.firstFt + (y - 0.5) * film.stepFt), x + 0.5);
  return contours()
    .size([film.columns, film.rows])
    .thresholds(levels)([...film.um])
    .map((shape) => {
      const rings = shape.coordinates.flat() as unknown as GridPoint[][];
      return {
        um: shape.value,
        areas: rings.map((ring) => simplified(ring.map(place), TOLERANCE)),
        lines: rings
          .flatMap((ring) => openLines(ring, film.columns, film.rows))
          .map((line) => simplified(withoutRepeats(line.map(place)), TOLERANCE)),
      };
    });
}

/** Behind the foul line the table has half a row more than the lane: those points fall on one place. */
function withoutRepeats(line: readonly Point[]): Point[] {
  return line.filter((p, i) => i === 0 || p[0] !== line[i - 1][0] || p[1] !== line[i - 1][1]);
}

const distance = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/**
 * One figure for each depth, on its line, as far from the other figures as `gap` asks. Tried on the side of the lane
 * the bowler does not play, from the middle outwards; a depth that finds no room goes without.
 */
export function figuresOnLines(levels: readonly OilLevel[], frame: LaneFrame, gap: number): OilFigure[] {
  const found: OilFigure[] = [];
  for (const level of [...levels].reverse()) {
    for (const board of [26, 29, 23, 32, 35]) {
      const at = crossing(level, frame, board);
      if (at !== null && found.every((other) => distance(other.at, at) >= gap)) {
        found.push({ at, um: level.um });
        break;
      }
    }
  }
  return found;
}

/** Where the line crosses a board of the bowler's count, furthest down the lane. */
function crossing(level: OilLevel, frame: LaneFrame, board: number): Point | null {
  const lying = frame.layout === "lying";
  const across = frame.fromHand(0, board)[lying ? 1 : 0];
  let best: Point | null = null;
  for (const line of level.lines) {
    for (let i = 1; i < line.length; i++) {
      const [a, b] = [line[i - 1] as Point, line[i] as Point];
      const [from, to] = lying ? [a[1], b[1]] : [a[0], b[0]];
      if (from === to || (from - across) * (to - across) > 0) continue;
      const t = (across - from) / (to - from);
      const at: Point = [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
      if (best === null || (lying ? at[0] > best[0] : at[1] < best[1])) best = at;
    }
  }
  return best;
}

/** Depths written between the lines, in a staggered net, where nothing else is drawn. */
export function soundings(film: FilmSheet, frame: LaneFrame, avoid: readonly Point[], gap: number): OilFigure[] {
  const found: OilFigure[] = [];
  const [everyFt, everyBoard] = frame.layout === "lying" ? [5, 5] : [6, 7];
  for (let k = 0; 3 + k * everyFt < film.lengthFt - 1; k++) {
    const ft = 3 + k * everyFt;
    for (let board = k % 2 === 0 ? 4 : 6.5; board < 39; board += everyBoard) {
      const row = Math.round((ft - film.firstFt) / film.stepFt);
      const um = film.um[row * film.columns + Math.round(board) - 1];
      const at = frame.fromRight(ft, board);
      if (um !== undefined && um >= 0.05 && avoid.every((p) => distance(p, at) >= gap)) found.push({ at, um });
    }
  }
  return found;
}
