import { answered, shop } from "./shopClient.ts";
import { useRead } from "./useShop.ts";

/** How often it is asked again, ms. */
const ASK_AGAIN_MS = 60_000;

/** How it stands with the server and its records. */
export function useHealth() {
  return useRead(["backups", "health"], () => answered(shop.health.$get()), { everyMs: ASK_AGAIN_MS });
}
