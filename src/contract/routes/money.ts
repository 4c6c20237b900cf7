import { z } from "zod";
import { mapping, oneOf, text } from "../job/fields.ts";
import { cents, day, id, TAX_INCLUDED, TAX_ROUNDINGS } from "../records/fields.ts";
import { paymentKept, paymentWritten, prepaidKept, prepaidWritten, priceKept, priceWritten } from "../records/money.ts";
import { stockItemKept, stockItemWritten, stockMovementKept, stockMovementWritten } from "../records/stock.ts";
import { TICKET_STATES } from "../records/ticketStates.ts";
import { visitKept } from "../records/visit.ts";
import { changeRoute, createOnceRoute, createRoute, getRoute, listRoute, removeRoute } from "./kept.ts";
import { takesPermille } from "./olderTax.ts";
import { idParams, pageOf, pageQuery } from "./parts.ts";
import { answers, route } from "./route.ts";

/** What a visit costs, what was paid of it, and what is owed; a negative amount is owed to the bowler. */
const accountSchema = z.strictObject({
  linesCents: cents,
  discountCents: cents,
  /** Of each rate above nought, the highest first. */
  taxes: z.array(z.strictObject({ taxMillipercent: z.number(), cents })),
  taxCents: cents,
  taxRounding: z.enum(TAX_ROUNDINGS),
  taxIncluded: z.enum(TAX_INCLUDED),
  totalCents: cents,
  paidCents: cents,
  owedCents: cents,
  currency: z.string(),
  /** Balls whose work is done, and neither charged nor free for a reason. */
  notPriced: z.array(z.strictObject({ ticketId: id, ballName: z.string(), state: z.enum(TICKET_STATES) })),
});
export type Account = z.output<typeof accountSchema>;

const visitAccountSchema = z.strictObject({ visit: visitKept, bowlerName: z.string().nullable(), account: accountSchema });
export type VisitAccount = z.output<typeof visitAccountSchema>;
const accountsQuery = mapping(
  {
    ...pageQuery,
    bowlerId: text("Id of the bowler").optional(),
    state: oneOf(["open", "closed"], "Whether something is still to be done or paid").optional(),
  },
  "Which page of which visits",
);

const share = z.strictObject({ name: z.string().nullable(), cents });
/** What changed hands in a span of days, and for what. */
export const takingsSchema = z.strictObject({
  currency: z.string(),
  payments: z.array(z.strictObject({ payment: paymentKept, day, bowlerName: z.string().nullable() })),
  byWork: z.array(share),
  /** By the id of the person. */
  byPerson: z.array(share),
  /** Tips less what was given back of them; in none of the others. */
  tipCents: cents,
});
export type Takings = z.output<typeof takingsSchema>;

/** Prices, payments and refunds, prepaid refreshes, stock. */
export const moneyRoutes = {
  listPrices: listRoute("counter", "/api/prices", "prices", priceKept, []),
  getPrice: getRoute("counter", "/api/prices/:id", "a price", priceKept),
  createPrice: takesPermille(createRoute("owner", "/api/prices", "a price", priceWritten, priceKept)),
  changePrice: takesPermille(changeRoute("owner", "/api/prices/:id", "a price", priceWritten, priceKept)),
  removePrice: removeRoute("owner", "/api/prices/:id", "a price"),

  account: route({
    least: "counter",
    method: "get",
    path: "/api/visits/:id/account",
    params: idParams,
    does: "What a visit costs, what was paid and what is owed",
    answer: answers(accountSchema),
  }),
  listAccounts: route({
    least: "counter",
    method: "get",
    path: "/api/accounts",
    query: accountsQuery,
    does: "Lists visits, newest first, with what each costs, what was paid and what is owed",
    answer: answers(pageOf(visitAccountSchema)),
  }),
  takings: route({
    least: "counter",
    method: "get",
    path: "/api/takings",
    query: mapping({ from: day, to: day }, "First and last day, where the shop is; at most 366 days"),
    does: "What was taken and given back from day to day, by what was charged for, and by who signed the work",
    answer: answers(takingsSchema),
  }),
  listPayments: listRoute("counter", "/api/payments", "payments and refunds", paymentKept, ["visitId"]),
  getPayment: getRoute("counter", "/api/payments/:id", "a payment or refund", paymentKept),
  createPayment: createOnceRoute("counter", "/api/payments", "a payment or a refund, once", paymentWritten, paymentKept),
  listPrepaid: listRoute("counter", "/api/prepaid", "prepaid refreshes", prepaidKept, ["bowlerId", "visitId"]),
  getPrepaid: getRoute("counter", "/api/prepaid/:id", "an entry of prepaid refreshes", prepaidKept),
  createPrepaid: createOnceRoute("counter", "/api/prepaid", "refreshes bought ahead or used up, once", prepaidWritten, prepaidKept),

  listStockItems: listRoute("reader", "/api/stock-items", "the stock", stockItemKept, ["kind", "state"]),
  getStockItem: getRoute("reader", "/api/stock-items/:id", "an item of the stock", stockItemKept),
  createStockItem: createRoute("technician", "/api/stock-items", "an item of the stock", stockItemWritten, stockItemKept),
  changeStockItem: changeRoute("technician", "/api/stock-items/:id", "an item of the stock", stockItemWritten, stockItemKept),
  listStockMovements: listRoute("reader", "/api/stock-movements", "movements of the stock", stockMovementKept, [
    "stockItemId",
    "stageDoneId",
  ]),
  getStockMovement: getRoute("reader", "/api/stock-movements/:id", "a movement of the stock", stockMovementKept),
  createStockMovement: createRoute(
    "technician",
    "/api/stock-movements",
    "a movement of the stock",
    stockMovementWritten,
    stockMovementKept,
  ),
};
