/** States of a ticket, in the order work usually takes. */
export const TICKET_STATES = [
  "received",
  "waiting for approval",
  "in work",
  "drying",
  "ready",
  "collected",
  "uncollected",
  "rework",
  "warranty hold",
  "cancelled",
] as const;
export type TicketState = (typeof TICKET_STATES)[number];

/** Where a ticket may go from where it stands. `collected` may come back as rework; `cancelled` is the end. */
const NEXT: Readonly<Record<TicketState, readonly TicketState[]>> = {
  received: ["waiting for approval", "in work", "warranty hold", "cancelled"],
  "waiting for approval": ["received", "in work", "warranty hold", "cancelled"],
  "in work": ["waiting for approval", "drying", "ready", "warranty hold", "cancelled"],
  drying: ["in work", "ready", "warranty hold", "cancelled"],
  ready: ["in work", "collected", "uncollected", "rework"],
  collected: ["rework", "warranty hold"],
  uncollected: ["collected", "rework", "cancelled"],
  rework: ["in work", "waiting for approval", "warranty hold", "cancelled"],
  "warranty hold": ["received", "in work", "ready", "cancelled"],
  cancelled: [],
};

/** The states that follow one. */
export function statesAfter(state: TicketState): readonly TicketState[] {
  return NEXT[state];
}

/** What may be done with a ball that work has been stopped on. */
const DESPITE_STOP: readonly TicketState[] = ["warranty hold", "waiting for approval", "cancelled"];

/** Where a ticket may go as it stands. */
export function movesOf({
  state,
  stops,
}: {
  readonly state: TicketState;
  readonly stops: readonly { readonly clearedAt: string | null }[];
}): readonly TicketState[] {
  const isStopped = stops.some(({ clearedAt }) => clearedAt === null);
  return NEXT[state].filter((to) => !isStopped || DESPITE_STOP.includes(to));
}

/** The state that a ticket stood in before, to which it may be put back with a reason; null where it has been in one alone. */
export function putBackTo(been: readonly { readonly state: TicketState }[]): TicketState | null {
  const now = been.at(-1)?.state;
  return been.findLast(({ state }) => state !== now)?.state ?? null;
}

/** States in which the ball is in the shop and somebody has something to do. */
export const OPEN_STATES: readonly TicketState[] = TICKET_STATES.filter((state) => state !== "collected" && state !== "cancelled");
