import { leavesPicture } from "#drawing/leavesPicture";
import { PAGE_PAINT } from "#drawing/paint";
import { assume } from "#engine/assumptions";
import type { Hand } from "#engine/delivery/bowler";
import { leaveSeen, strikeMap } from "#engine/pins/carry";
import { explain, leaveMeaning } from "#engine/pins/explain";
import { leaveOf, leaveText, STRIKE } from "#engine/pins/leave";
import { changesText, explainedText, LEAVES_IN_WORDS, leaveMeaningText, liesText } from "#words/en/carry";
import type { LeaveSeen, LeavesAnswer } from "./protocol.ts";

/** What a bowler's shots left, drawn as the bowler sees it, and which hits explain it. @throws {EngineFault} where nothing was seen */
export function tellLeaves(seen: readonly LeaveSeen[], hand: Hand): LeavesAnswer {
  const total = seen.reduce((sum, { count }) => sum + count, 0);
  const carry = strikeMap(assume());
  const left = seen
    .map(({ pins, count }) => ({ leave: leaveOf(pins), count }))
    .filter(({ leave }) => leave !== STRIKE)
    .toSorted((a, b) => b.count - a.count);
  // The engine's frame is a right-hander's.
  const explanation = explain(
    seen.map(({ pins, count }) => ({ leave: leaveSeen(leaveOf(pins), hand), count })),
    carry,
  );
  return {
    picture: left.length === 0 ? null : picture(),
    explained: [liesText(explanation), explainedText(explanation), ...changesText(explanation.changes)],
    meanings: left
      .slice(0, LEAVES_IN_WORDS)
      .map(({ leave }) => leaveMeaningText(leaveText(leave), leaveMeaning(leaveSeen(leave, hand), carry))),
  };

  function picture(): string {
    const drawn = left.slice(0, MOST_DRAWN);
    const other = left.slice(MOST_DRAWN).reduce((sum, { count }) => sum + count, 0);
    const leaves = drawn.map(({ leave, count }) => ({ leave: leaveText(leave), share: count / total }));
    return leavesPicture({ leaves, other: other / total }, PAGE_PAINT, "leaves-seen");
  }
}

const MOST_DRAWN = 12;
