import type { Ticket } from "#contract/records/ticket";
import type { JobDraft, Json } from "../../jobFile/jobDraft.ts";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead } from "../../shop/useShop.ts";

/** What a plan of another ball says of the same bowler too: the delivery, where they play, on which oil. The ball's own stays its own. */
const OF_BOWLER = ["bowler", "lane", "line", "limits"] as const;

/** The bowler's last ticket, other than this one, that a plan is kept with; null where there is none. */
export function useEarlierPlan({ id, bowlerId }: Pick<Ticket, "id" | "bowlerId">): Ticket | null {
  const tickets = useRead(
    ["tickets", "of", bowlerId ?? ""],
    () => answered(shop.tickets.$get({ query: { bowlerId: bowlerId ?? "", limit: "50" } })),
    { enabled: bowlerId !== null },
  ).data?.items;
  return tickets?.find((ticket) => ticket.id !== id && ticket.plan !== null) ?? null;
}

/** A job with what was typed of its bowler in an earlier plan. */
export function withEarlier(job: JobDraft, inputs: NonNullable<Ticket["plan"]>["inputs"]): JobDraft {
  const earlier = inputs as JobDraft;
  const taken = Object.fromEntries(
    OF_BOWLER.flatMap((part): [string, Json][] => (earlier[part] === undefined ? [] : [[part, earlier[part]]])),
  );
  return { ...job, ...taken };
}
