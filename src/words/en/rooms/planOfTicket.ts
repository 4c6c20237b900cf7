/** English text of a finish plan that was asked for by a ticket. */
export const PLAN_OF_TICKET = {
  title: "Finish plan",
  pageTitle: (ball: string) => `Finish plan: ${ball}`,
  whom: (ball: string, bowler: string | null) =>
    bowler === null ? `Planned for ${ball}, which is nobody's.` : `Planned for ${bowler}, ${ball}.`,
  lane: "The lane is the usual one: set it to where the ball is bowled.",
  laneOf: (pattern: string) => `On ${pattern}, as it was told at check-in.`,
  asPlanned: (day: string) => `Use bowler and lane as planned on ${day}`,
  notKnown: (what: readonly string[]) => `Not in the records, so the usual is taken: ${what.join(", ")}.`,
  unknown: { delivery: "the delivery", cover: "the cover", finish: "today's finish", core: "the core" },
  startAgain: "Back to the records",
  toTicket: "To the ticket",
  finish: "Finish for the ticket",
  isPick: (finish: string) => `${finish} (the plan's pick)`,
  noPick: "choose one",
  take: "Take this finish for the ticket",
  stopped: "Work on this ball is stopped: the finish is kept, the work is written when the stop is cleared and the finish chosen again.",
} as const;
