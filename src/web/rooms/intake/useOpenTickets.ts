import { useQueries } from "@tanstack/react-query";
import type { Ticket } from "#contract/records/ticket";
import { OPEN_STATES } from "#contract/records/ticketStates";
import { answered, shop } from "../../shop/shopClient.ts";
import type { BallDraft } from "./visitDraft.ts";

export interface OpenTickets {
  /** The newest open ticket of a ball, by the key that the ball has in the form. */
  readonly of: ReadonlyMap<string, Ticket>;
  /** Whether it has been asked for every ball; where the shop is away nobody can say. */
  readonly isRead: boolean;
}

/** Balls of the form that are in the shop already. */
export function useOpenTickets(balls: readonly BallDraft[]): OpenTickets {
  const known = balls.filter(({ ballId }) => ballId !== null);
  const reads = useQueries({
    queries: known.map(({ ballId }) => ({
      queryKey: ["tickets", "of ball", ballId],
      queryFn: () => answered(shop.tickets.$get({ query: { ballId: ballId ?? "", limit: "50" } })),
    })),
  });
  const open = known.flatMap(({ key }, i): [string, Ticket][] => {
    const ticket = reads[i].data?.items.find(({ state }) => OPEN_STATES.includes(state));
    return ticket === undefined ? [] : [[key, ticket]];
  });
  return { of: new Map(open), isRead: reads.every(({ isLoading }) => !isLoading) };
}
