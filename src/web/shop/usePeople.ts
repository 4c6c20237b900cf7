import { everyPage } from "./everyPage.ts";
import { answered, shop } from "./shopClient.ts";
import { useRead } from "./useShop.ts";

/** Everybody who works here or did, the first to come first. */
export function usePeople() {
  return useRead(["people", "all"], () =>
    everyPage((after) => answered(shop.people.$get({ query: { limit: "200", order: "oldest first", ...after } }))),
  );
}
