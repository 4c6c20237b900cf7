import type { Ball } from "#contract/records/ball";
import { dueByGames } from "#contract/records/dueByGames";
import { RecordsFault } from "#contract/records/fault";
import { OPEN_STATES } from "#contract/records/ticketStates";
import type { DueByGames } from "#contract/routes/balls";
import type { Records } from "#records/records";
import { everything } from "./everything.ts";
import { UNREADABLE_NAME } from "./nameOf.ts";

/** More than anybody calls in a quiet hour. */
const MOST = 8;

/** Whose balls are due by their games and not in the shop, the most overdue first. */
export async function dueBalls({ balls, bowlers, tickets }: Records): Promise<DueByGames> {
  const inUse = await everything<Ball>((after) => balls.list({ after, limit: 500, order: "oldest first", where: { state: "in use" } }));
  const open = await everything((after) => tickets.list({ after, limit: 500, where: { state: OPEN_STATES } }));
  const due = dueByGames(inUse, new Set(open.map(({ ballId }) => ballId)));
  const items = await Promise.all(
    due.slice(0, MOST).map(async ({ bowlerId, balls: own }) => ({ bowlerId, ...(await calledBy(bowlers, bowlerId)), balls: [...own] })),
  );
  return { items, of: due.length };
}

/** What a bowler is called, and by which number. One that cannot be read must not hide the others. */
async function calledBy(bowlers: Records["bowlers"], id: string): Promise<{ bowlerName: string; phone: string | null }> {
  try {
    const { name, phone } = await bowlers.get(id);
    return { bowlerName: name, phone };
  } catch (fault) {
    if (fault instanceof RecordsFault && fault.kind === "unreadable") return { bowlerName: UNREADABLE_NAME, phone: null };
    throw fault;
  }
}
