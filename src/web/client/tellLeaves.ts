import { leavesPicture } from "#drawing/leavesPicture";
import { PAGE_PAINT } from "#drawing/paint";
import { assume } from "#engine/assumptions";
import type { Hand } from "#engine/delivery/bowler";
import { leaveSeen, strikeMap } from "#engine/pins/carry";
import { explain, leaveMeaning } from "#engine/pins/explain";
import { leaveOf, leaveText, STRIKE } from "#engine/pins/leave";
import { changesText, explainedText, LEAVES_IN_WORDS, leaveMeaningText, liesText } from "#words/en/carry";
import type { LeaveSeen, LeavesTold } from "./protocol.ts";

/** Fewer balls than this explain nothing: one leave has many causes. */
export const LEAST_TO_EXPLAIN = 3;

/** What a bowler's shots left, drawn as the bowler sees it, and which hits explain it. */
export function tellLeaves(seen: readonly LeaveSeen[], hand: Hand): LeavesTold {
  const total = seen.reduce((sum, { count }) => sum + count, 0);
  const carry = strikeMap(assume());
  const left = seen
    .map(({ pins, count }) => ({ leave: leaveOf(pins), count }))
    .filter(({ leave }) => leave !== STRIKE)
    .toSorted((a, b) => b.count - a.count);
  const drawn = left.slice(0, MOST_DRAWN);
  const other = left.slice(MOST_DRAWN).reduce((sum, { count }) => sum + count, 0);
  // The engine's frame is a right-hander's.
  const explanation =
    total < LEAST_TO_EXPLAIN
      ? null
      : explain(
          seen.map(({ pins, count }) => ({ leave: leaveSeen(leaveOf(pins), hand), count })),
          carry,
        );
  return {
    picture: leavesPicture(
      { leaves: drawn.map(({ leave, count }) => ({ leave: leaveText(leave), share: count / total })), other: other / total },
      PAGE_PAINT,
      "leaves-seen",
    ),
    explained: explanation === null ? [] : [liesText(explanation), explainedText(explanation), ...changesText(explanation.changes)],
    meanings: left
      .slice(0, LEAVES_IN_WORDS)
      .map(({ leave }) => leaveMeaningText(leaveText(leave), leaveMeaning(leaveSeen(leave, hand), carry))),
  };
}

const MOST_DRAWN = 12;
