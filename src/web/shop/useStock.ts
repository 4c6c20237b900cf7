import { answered, shop } from "./shopClient.ts";
import { useRead } from "./useShop.ts";

const IN_USE = { state: "in use", limit: "200" } as const;

/** The stock that the shop keeps; none before it has been read. */
export function useStock() {
  return useRead(["stock-items", "in use"], () => answered(shop["stock-items"].$get({ query: IN_USE }))).data?.items ?? [];
}
