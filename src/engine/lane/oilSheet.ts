import { FOOT, MICROLITRE, MICROMETRE, MILLILITRE } from "../units.ts";
import { type FilmMap, filmFrom } from "./filmMap.ts";
import { BOARD } from "./geometry.ts";
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
      fromFt, toFt,
      fromBoard: Math.min(pass.fromBoard, pass.toBoard) - 0.5,
      toBoard: Math.max(pass.fromBoard, pass.toBoard) + 0.5,
      um: (pass.perBoardMicrolitres * pass.times * MICROLITRE) / area / MICROMETRE,
    };
  });
  return filmFrom(sheet.lengthFt, (board, ft) =>
    stretches.reduce((sum, s) => sum + s.um * cover(board, s.fromBoard, s.toBoard, 0.25) * cover(ft, s.fromFt, s.toFt, 0.125), 0),
  );
}

/** Share of a grid cell of the given half width, centred at `at`, that lies within [from, to]: keeps the laid volume on the grid. */
function cover(at: number, from: number, to: number, half: number): number {
  return Math.max(0, Math.min(1, (Math.min(at + half, to) - Math.max(at - half, from)) / (2 * half)));
}
