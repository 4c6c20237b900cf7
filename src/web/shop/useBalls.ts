import { everyPage } from "./everyPage.ts";
import { answered, shop } from "./shopClient.ts";
import { useRead } from "./useShop.ts";

/** Whose balls are due by their games: customers to call, and likely to come. */
export function useDueByGames() {
  return useRead(["balls", "due"], () => answered(shop["balls-due"].$get()));
}

/** Every ball that the bowler has today. */
export function useBag(bowlerId: string) {
  return useRead(["balls", "all of", bowlerId], () =>
    everyPage((after) => answered(shop.balls.$get({ query: { bowlerId, limit: "200", order: "oldest first", ...after } }))),
  );
}
