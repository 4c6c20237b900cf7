import { answered, shop } from "./shopClient.ts";
import { useRead } from "./useShop.ts";

/** Whose balls are due by their games: customers to call, and likely to come. */
export function useDueByGames() {
  return useRead(["balls", "due"], () => answered(shop["balls-due"].$get()));
}
