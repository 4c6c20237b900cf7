import type { Payment } from "#contract/records/money";
import { billOf, paidOf } from "#contract/records/money";
import type { moneyRoutes } from "#contract/routes/money";
import type { Records } from "#records/records";
import { everything } from "../everything.ts";
import type { Handlers } from "../http/mount.ts";
import { changed, created, got, listed, removed } from "./keptHandlers.ts";

export function moneyHandlers(records: Records): Handlers<typeof moneyRoutes> {
  const { prices, payments, prepaid, stockItems, stockMovements, visits } = records;
  return {
    listPrices: listed(prices),
    getPrice: got(prices),
    createPrice: created(prices),
    changePrice: changed(prices),
    removePrice: removed(prices),

    async account({ params }) {
      const visit = await visits.get(params.id);
      const bill = billOf(visit);
      const paidCents = paidOf(await everything<Payment>((after) => payments.list({ after, where: { visitId: visit.id } })));
      return { ...bill, paidCents, owedCents: bill.totalCents - paidCents, currency: visit.currency };
    },
    listPayments: listed(payments),
    getPayment: got(payments),
    createPayment: created(payments),
    listPrepaid: listed(prepaid),
    getPrepaid: got(prepaid),
    createPrepaid: created(prepaid),

    listStockItems: listed(stockItems),
    getStockItem: got(stockItems),
    createStockItem: created(stockItems),
    changeStockItem: changed(stockItems),
    listStockMovements: listed(stockMovements),
    getStockMovement: got(stockMovements),
    createStockMovement: created(stockMovements),
  };
}
