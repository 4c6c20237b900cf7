import { ARROW_BOARDS } from "../delivery/arrows.ts";
import { fromOtherEdge } from "../delivery/backup.ts";
import { type Bowler, type Line, targetBoard } from "../delivery/bowler.ts";
import { POCKET_BOARD } from "../lane/geometry.ts";
import type { LineMap } from "./lineMap.ts";
import type { Limits, PlanQuestion } from "./question.ts";
import type { Stage } from "./session.ts";
import { lineAt, linesWithin } from "./softLines.ts";

/** Lines whose mean shot ends further than this from the pocket are not what somebody plays, boards. */
const NEAR_POCKET = 3;

/**
 * The line that is played today: the one that was named; else the best with today's finish of those over the arrow that the bowler plays; else the best of all.
 *
 * @param fresh the lane as found with today's finish
 */
export function todaysLine({ line, bowler, limits }: PlanQuestion, { map, choice }: Pick<Stage, "map" | "choice">): Line | null {
  if (line !== null) return line;
  return bestOver(bowler, map, limits) ?? choice.best?.line ?? null;
}

/** The best line over the arrow that is played; null where nobody said which, or where none over it comes near the pocket. */
function bestOver({ plays, isBackup }: Bowler, map: LineMap, limits: Limits): Line | null {
  if (plays === undefined) return null;
  // Arrows count from the side of the bowler's hand, which for a backup ball is not the side it hooks from.
  const [from, to] = isBackup ? ARROW_BOARDS[plays].map(fromOtherEdge).toReversed() : ARROW_BOARDS[plays];
  let best: { readonly line: Line; readonly chance: number } | null = null;
  for (const at of linesWithin(map, limits)) {
    const line = lineAt(map, at);
    const target = targetBoard(line);
    if (target < from || target > to || Math.abs(map.board[at] - POCKET_BOARD) >= NEAR_POCKET) continue;
    if (best === null || map.chance[at] > best.chance) best = { line, chance: map.chance[at] };
  }
  return best?.line ?? null;
}
