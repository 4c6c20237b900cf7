import { standingReadings } from "#contract/records/standingReadings";
import type { ReferenceBall } from "#contract/records/stock";
import { workHere } from "../../benchWork/onTheBench.ts";
import { everyPage } from "../../shop/everyPage.ts";
import { answered, shop } from "../../shop/shopClient.ts";
import { useOutbox } from "../../shop/useOutbox.tsx";
import { useRead } from "../../shop/useShop.ts";
import { useStagesDone } from "../../shop/useTicket.ts";
import type { ReadOf } from "./agreement.ts";
import type { SheetParts } from "./sheetParts.ts";

/** What was signed and measured for a ticket, as papers want it; null until all of it has been read. */
export function useReadOf({ ticket, ball }: SheetParts): (ReadOf & { readonly references: readonly ReferenceBall[] }) | null {
  const { waiting } = useOutbox();
  const readings = useRead(["readings", "all of ticket", ticket.id], () =>
    everyPage((after) => answered(shop.readings.$get({ query: { ticketId: ticket.id, order: "oldest first", limit: "200", ...after } }))),
  ).data;
  const references = useRead(["reference-balls"], () =>
    answered(shop["reference-balls"].$get({ query: { order: "newest first", limit: "200" } })),
  ).data;
  const done = useStagesDone(ticket.id).data;
  if (readings === undefined || references === undefined || done === undefined) return null;
  const again = done.items.flatMap(({ doneAt, sidesAgain }) => (sidesAgain.length === 0 ? [] : [{ at: doneAt, sides: sidesAgain }]));
  const work = workHere(ticket, done.items, waiting);
  return { ticket, ball, readings: standingReadings(readings), work, again, references: references.items };
}
