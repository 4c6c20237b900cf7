import { FOOT, MICROLITRE, MICROMETRE, MILLILITRE } from "../units.ts";
import { type FilmMap, filmFrom } from "./filmMap.ts";
import { BOARD, BOARDS } from "./geometry.ts";
import type { OilPass, OilSheet } from "./lane.ts";

/** What the passes of a sheet lay down in all, mL: volume per board × boards × times. */
export function oilSheetTotalMl(sheet: OilSheet): number {
  return sheet.passes.reduce((sum, pass) => sum + passMicrolitres(pass), 0) * (MICROLITRE / MILLILITRE);
}

function passMicrolitres(pass: OilPass): number {
  return pass.perBoardMicrolitres * pass.times * (Math.abs(pass.toBoard - pass.fromBoard) + 1);
}

/** Each pass lays its volume evenly over its boards and feet; where passes overlap the film adds up. */
export function oilSheetFilm(sheet: OilSheet): FilmMap {
  const stretches = sheet.passes.map((pass) => {
    const fromFt = Math.min(pass.fromFt, pass.toFt);
    const toFt = Math.max(pass.fromFt, pass.toFt);
    const area = BOARD * (toFt - fromFt) * FOOT;
    return {
      fromFt,
      toFt,
      fromBoard: Math.min(pass.fromBoard, pass.toBoard) - 0.5,
      toBoard: Math.max(pass.fromBoard, pass.toBoard) + 0.5,
      um: (pass.perBoardMicrolitres * pass.times * MICROLITRE) / area / MICROMETRE,
    };
  });
  return filmFrom(sheet.lengthFt, (board, ft) =>
    stretches.reduce(
      (sum, s) =>
        sum + s.um * share(board, 0.25, [0.5, BOARDS + 0.5], s.fromBoard, s.toBoard) * share(ft, 0.125, [0, 60], s.fromFt, s.toFt),
      0,
    ),
  );
}

/** Share of a grid cell (centred at `at`, cut off where the lane ends) that lies within [from, to]: keeps the laid volume on the grid. */
function share(at: number, half: number, lane: readonly [number, number], from: number, to: number): number {
  const low = Math.max(at - half, lane[0]);
  const high = Math.min(at + half, lane[1]);
  return high > low ? Math.max(0, (Math.min(high, to) - Math.max(low, from)) / (high - low)) : 0;
}
