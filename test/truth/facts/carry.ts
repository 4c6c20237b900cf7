import { assume } from "#engine/assumptions";
import { BOARD } from "#engine/lane/geometry";
import { chanceOver, type HitPoint, strikeAt, strikeMap, TYPICAL_QUALITY } from "#engine/pins/carry";
import { hitsAbout, leaveMeaning } from "#engine/pins/explain";
import { leaveOf } from "#engine/pins/leave";
import { INCH } from "#engine/units";
import type { Fact } from "../fact.ts";

const map = strikeMap(assume());
/** How far behind our plane the published boards are read, ft: what the fit came to (docs/model/carry-fit.md). */
const READ_BEHIND_FT = 0.41;

/** A hit on a board read where the published boards are. */
function published(board: number, entryDeg: number): HitPoint {
  const shiftBoards = (READ_BEHIND_FT * 12 * Math.tan((entryDeg * Math.PI) / 180)) / (BOARD / INCH);
  return { board: board - shiftBoards, entryDeg, quality: TYPICAL_QUALITY };
}

const HALF_INCH = { boards: (0.5 * INCH) / BOARD, entryDeg: 0.01 };
const bestScattered = (entryDeg: number): number =>
  Math.max(
    ...Array.from(
      { length: 41 },
      (_, i) => chanceOver(hitsAbout({ board: 15 + 0.1 * i, entryDeg, quality: TYPICAL_QUALITY }, HALF_INCH)).value,
    ),
  );

const fact = (says: string, source: string, unit: string, known: Fact["known"], within: number, predict: () => number): Fact => ({
  topic: "Carry",
  says,
  source,
  provenance: "published",
  unit,
  known,
  within,
  predict,
});

const USBC = "USBC pin carry, second-hand";

/** Most of these the table's coefficients were fitted to; docs/model/carry-fit.md says which were kept out. The table is smoothed over half an inch, which lowers a narrow zone at its edges: hence the wide bounds there. */
export const CARRY_FACTS: readonly Fact[] = [
  fact("strikes on board 17.5 at 6°, the best hit", USBC, "1", [0.95, 1], 0, () => chanceOver([published(17.5, 6)]).value),
  fact("strikes on board 17.0 at 6°, the edge of the 90 % zone", USBC, "1", 0.9, 0.075, () => chanceOver([published(17, 6)]).value),
  fact("strikes on board 18.5 at 6°, the edge of the 90 % zone", USBC, "1", 0.9, 0.125, () => chanceOver([published(18.5, 6)]).value),
  fact("boards on which a straight ball (1°) strikes nine times in ten", USBC, "board", [0, 1], 0, () => {
    const boards = Array.from({ length: 401 }, (_, i) => 14 + 0.015 * i);
    return 0.015 * boards.filter((board) => strikeAt(map, board, 1) >= 0.9).length;
  }),
  fact(
    "strikes gained by going from 2° to 6°, for a bowler who scatters by half an inch",
    `${USBC}: more angle carries more`,
    "1",
    [0.02, 0.4],
    0,
    () => bestScattered(6) - bestScattered(2),
  ),
  fact(
    "carry of pocket hits, boards 16.5–18.5 at 3.5–5.5°",
    "televised finals, 40 of 54, 95 % interval; second-hand",
    "1",
    [0.61, 0.84],
    0,
    () => {
      const boards = Array.from({ length: 9 }, (_, i) => 16.5 + 0.25 * i);
      return chanceOver(boards.flatMap((board) => [3.5, 4.5, 5.5].map((deg) => published(board, deg)))).value;
    },
  ),
  {
    ...fact(
      "boards that hits lie high of the best which leave the 4",
      "the trade",
      "board",
      [0.3, 4],
      0,
      () => leaveMeaning(leaveOf([4]), map)?.boardsHigh ?? Number.NaN,
    ),
    provenance: "common practice",
  },
  {
    ...fact(
      "boards that hits lie light of the best which leave the 5-7",
      "the trade",
      "board",
      [0.3, 4],
      0,
      () => -(leaveMeaning(leaveOf([5, 7]), map)?.boardsHigh ?? Number.NaN),
    ),
    provenance: "common practice",
  },
];
