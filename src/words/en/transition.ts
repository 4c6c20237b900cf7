import { feet, fixed, launchAngle, millilitres } from "../figures.ts";

/** The report of a lane in play. */
export const TRANSITION = {
  heading: (players: number, games: number, shots: number) =>
    `${players === 1 ? "One player" : `${players} players`}, ${games === 1 ? "one game" : `${games} games`}: ${fixed(shots, 0)} shots on each lane`,
  asLaid: "as laid",
  after: (game: number) => `after game ${game}`,
  columns: {
    moment: ["", ""],
    volume: ["oil", "mL"],
    taken: ["taken", "mL"],
    outside: ["boards 1–8", "% left"],
    track: ["9–14", "% left"],
    middle: ["15–24", "% left"],
    burn: ["thinnest", "board"],
    burnShare: ["there", "% left"],
  },
  linesHeading: "Lines, from each bowler's own side",
  noName: (index: number) => `Player ${index + 1}, drawn`,
  line: (board: number, launchDeg: number, hookFt: number | null) =>
    `board ${fixed(board, 0)}, ${launchAngle(launchDeg, 1)}${hookFt === null ? "" : `, hooks at ${feet(hookFt)}`}`,
  notSensible: "no sensible line: straight",
  conserved: (laid: number, left: number, taken: number) =>
    `Laid ${millilitres(laid)}; left ${millilitres(left)}, taken off by balls ${millilitres(taken)}.`,
  carriedDown: (mL: number) => `Beyond the end of the pattern ${fixed(mL, 2)} mL were carried.`,
  side: (hand: "right" | "left") =>
    `Boards and shares are counted from the ${hand}; shares are of the film from 15 ft to the end of the pattern.`,
  chosen: "How much a ball takes and lays down is chosen, not measured: see docs/model/oil-in-play.md for the ranges.",
} as const;
