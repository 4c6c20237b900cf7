import type { FilmSheet } from "#engine/lane/filmSheet";
import type { Course, CoursePoint, Phase } from "#engine/motion/course";

/** A film whose depth is known at every place: 4 µm in the middle falling to 0 at boards 1 and 39, even to 40 ft, none beyond. */
export function wedgeFilm(): FilmSheet {
  const [rows, stepFt] = [121, 0.5];
  const um = Array.from({ length: rows * 39 }, (_, i) => {
    const ft = Math.floor(i / 39) * stepFt;
    const board = (i % 39) + 1;
    return ft <= 40 ? 4 * (1 - Math.abs(board - 20) / 19) : 0;
  });
  return { columns: 39, rows, firstFt: 0, stepFt, um, lengthFt: 40, volumeMl: 20, ratio: 3, meanUm: 2 };
}

/** A course through places that are known: straight from board 19 to board 7 at 40 ft, and straight on to board 17.5 at 59.5 ft. */
export function brokenCourse(hand: "right" | "left"): Course {
  const board = (ft: number): number => (ft <= 40 ? 19 - (12 * ft) / 40 : 7 + (10.5 * (ft - 40)) / 19.5);
  const phase = (ft: number): Phase => (ft < 35 ? "skid" : ft < 52 ? "hook" : "roll");
  const points: CoursePoint[] = Array.from({ length: 120 }, (_, i) => ({ yFt: i / 2, board: board(i / 2), phase: phase(i / 2) }));
  return { hand, points, hookStartFt: 35, rollStartFt: 52, breakpoint: { board: 7, yFt: 40 }, boardAtPins: 17.5, entryAngleDeg: 3.3 };
}
