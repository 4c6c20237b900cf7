import type { Ball } from "#contract/records/ball";
import type { Bowler } from "#contract/records/bowler";
import type { Ticket } from "#contract/records/ticket";

/** What every paper is made from. */
export interface SheetParts {
  readonly ticket: Ticket;
  readonly ball: Ball;
  readonly bowler: Bowler | null;
}
