import type { moneyRoutes } from "#contract/routes/money";
import type { Records } from "#records/records";
import type { Handlers } from "../http/mount.ts";
import { stated } from "../stated.ts";
import { accountOf, takingsBetween, visitAccount } from "../takings.ts";
import { changed, created, got, listed, removed } from "./keptHandlers.ts";

export function moneyHandlers(records: Records): Handlers<typeof moneyRoutes> {
  const { prices, payments, prepaid, stockItems, stockMovements, visits } = records;
  return {
    listPrices: listed(prices),
    getPrice: got(prices),
    createPrice: created(prices),
    changePrice: changed(prices),
    removePrice: removed(prices),

    account: async ({ params }) => accountOf(records, await visits.get(params.id)),
    async listAccounts({ query: { limit, after, bowlerId, state } }) {
      const page = await visits.list({ ...stated({ limit, after }), where: stated({ bowlerId, state }) });
      const items = [];
      for (const visit of page.items) items.push(await visitAccount(records, visit));
      return { items, next: page.next };
    },
    takings: ({ query }) => takingsBetween(records, query.from, query.to),
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
