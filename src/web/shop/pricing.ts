import { dayIn } from "#contract/records/dayIn";
import type { Price } from "#contract/records/money";
import { lineAt, namedWork, pricesOn, WORK_NAMES } from "#contract/records/pricedWork";
import type { Visit, VisitWritten } from "#contract/records/visit";
import { INTAKE } from "#words/en/rooms/intake";
import { PRICING } from "#words/en/rooms/pricing";
import { everyPage } from "./everyPage.ts";
import { answered, madeOn, shop } from "./shopClient.ts";
import { centsOf } from "./typedValues.ts";
import { useRead } from "./useShop.ts";
import { useSettings } from "./zone.ts";

/** How a ball's work is charged, as it stands in a form. */
export interface PricingDraft {
  /** Id of a price, or one of the words below; empty: by the work. */
  readonly priceId: string;
  readonly freeWhy: string;
  /** What it costs, as it was typed; not there where a price of the list was taken. */
  readonly typed?: string;
}
export const FREE = "free";
/** A price that no list has. */
export const BY_HAND = "by hand";
export const LATER = "later";

/** A price, or a line of a bill, in the language of whoever reads, where it is called by the work; else as the shop wrote it. */
export function chargeName(what: string): string {
  const work = namedWork(what);
  return work === null ? what : `${INTAKE.works[work]}${what.slice(WORK_NAMES[work].length)}`;
}

/** Prices that hold today; undefined until they have been read. */
export function usePricesToday(): readonly Price[] | undefined {
  const settings = useSettings().data;
  const all = useRead(["prices", "all"], () =>
    everyPage((after) => answered(shop.prices.$get({ query: { limit: "200", order: "oldest first", ...after } }))),
  ).data;
  if (settings === undefined || all === undefined) return undefined;
  return pricesOn(all, dayIn(settings.zone, new Date().toISOString()), settings.currency);
}

/** What a line of a bill is made from. */
export type Charged = Pick<Price, "name" | "eachCents" | "taxMillipercent">;

/**
 * What was chosen: prices, or a reason why it is free; null where it is still to be priced.
 *
 * @param usual for the work, null where that is not clear
 * @param taxMillipercent of the shop, for a price that is typed
 */
export function chosenPricing(
  { priceId, freeWhy, typed = "" }: PricingDraft,
  prices: readonly Price[],
  usual: readonly Price[] | null,
  taxMillipercent: number,
): { readonly prices: readonly Charged[] } | { readonly why: string } | null {
  if (priceId === LATER) return null;
  if (priceId === BY_HAND) {
    const eachCents = centsOf(typed);
    return eachCents === null ? null : { prices: [{ name: PRICING.byHandLine, eachCents, taxMillipercent }] };
  }
  if (priceId === FREE) return freeWhy.trim() === "" ? null : { why: freeWhy.trim() };
  if (priceId === "") return usual === null ? null : { prices: usual };
  const chosen = prices.filter(({ id }) => id === priceId);
  return chosen.length === 0 ? null : { prices: chosen };
}

/** Whether free was chosen without a reason. */
export function lacksReason({ priceId, freeWhy }: PricingDraft): boolean {
  return priceId === FREE && freeWhy.trim() === "";
}

/** Whether a price is to be typed, and none is. */
export function lacksAmount({ priceId, typed = "" }: PricingDraft): boolean {
  return priceId === BY_HAND && centsOf(typed) === null;
}

/** Lines and free work of a visit. */
export type Priced = { readonly [Part in "charges" | "free"]: readonly NonNullable<VisitWritten[Part]>[number][] };

/** Lines and free work of a visit with those of one more ball. */
export function withPricing(
  visit: Priced,
  { id, ballName }: { readonly id: string; readonly ballName: string },
  chosen: ReturnType<typeof chosenPricing>,
): Priced {
  const { charges, free } = visit;
  if (chosen === null) return visit;
  if ("why" in chosen) return { charges, free: [...free, { ticketId: id, why: chosen.why }] };
  return { charges: [...charges, ...chosen.prices.map((price) => lineAt(price, ballName, id))], free };
}

/** Prices the work of one ball on its visit as that stands now. @throws {ShopFault} */
export async function priceWork(
  visitId: string,
  ticket: { readonly id: string; readonly ballName: string },
  chosen: ReturnType<typeof chosenPricing>,
): Promise<Visit> {
  const visit = await answered(shop.visits[":id"].$get({ param: { id: visitId } }));
  // Pressed twice, or priced by somebody else meanwhile: it is charged once.
  if (visit.charges.some(({ ticketId }) => ticketId === ticket.id) || visit.free.some(({ ticketId }) => ticketId === ticket.id))
    return visit;
  const { charges, free } = withPricing(visit, ticket, chosen);
  const json = { charges: [...charges], free: [...free] };
  return answered(shop.visits[":id"].$patch({ param: { id: visitId }, json, header: madeOn(visit) }));
}
