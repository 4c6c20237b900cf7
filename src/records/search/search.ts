import type { Ball } from "#contract/records/ball";
import type { Bowler } from "#contract/records/bowler";
import type { StageDone } from "#contract/records/stageDone";
import type { Ticket } from "#contract/records/ticket";

export interface Found {
  readonly bowlers: readonly Bowler[];
  readonly balls: readonly Ball[];
}

export interface LastTime {
  readonly ticket: Ticket;
  readonly stagesDone: readonly StageDone[];
}

export interface Search {
  /**
   * Bowlers and balls by what stands on the ball, a name, or a telephone number: beginnings of words, a serial or its end, a number or its end.
   *
   * @param words 1 to 200 letters
   * @param limit most of each kind, 1 to 100; 20 where nothing is said
   */
  find(words: string, limit?: number): Promise<Found>;
  /** The last finished work on a ball, with the stages as they were done; null where there is none. */
  lastTime(ballId: string): Promise<LastTime | null>;
}
