import type { StageDone } from "#contract/records/stageDone";
import type { StockItem } from "#contract/records/stock";
import type { Ticket } from "#contract/records/ticket";
import { workHere } from "../../benchWork/onTheBench.ts";
import { answered, shop } from "../../shop/shopClient.ts";
import { useOutbox } from "../../shop/useOutbox.tsx";
import { useQueue } from "../../shop/useQueue.ts";
import { useRead } from "../../shop/useShop.ts";
import { waitingUse } from "./waitingWork.ts";

/** In these something may have been signed already. */
const BEGUN: readonly Ticket["state"][] = ["in work", "drying", "rework", "waiting for approval", "warranty hold"];
const DONE: readonly Ticket["state"][] = ["ready", "uncollected"];

/** What the work that waits will take of each item; nothing before the queue has been read. */
export function useWaitingUse(stock: readonly StockItem[]): ReadonlyMap<string, number> {
  const tickets = (useQueue().data?.items ?? []).map(({ ticket }) => ticket).filter(({ state }) => !DONE.includes(state));
  const begun = tickets.filter(({ state }) => BEGUN.includes(state)).map(({ id }) => id);
  const signed = useRead(["stages-done", "of", ...begun], () => signedOf(begun)).data;
  const { waiting } = useOutbox();
  return waitingUse(
    stock,
    tickets.map((ticket) => workHere(ticket, signed?.get(ticket.id) ?? [], waiting)),
  );
}

async function signedOf(ids: readonly string[]): Promise<ReadonlyMap<string, readonly StageDone[]>> {
  const pages = await Promise.all(ids.map((ticketId) => answered(shop["stages-done"].$get({ query: { ticketId, limit: "200" } }))));
  return new Map(pages.map(({ items }, i) => [ids[i], items]));
}
