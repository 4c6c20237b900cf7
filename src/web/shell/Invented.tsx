import { SHOP_FRAME } from "#words/en/rooms/frame";
import { useSettings } from "../shop/zone.ts";

/** Says wherever it is shown that the shop is made up. */
export function Invented() {
  return useSettings().data?.data === "invented" ? (
    <section className="invented" aria-label={SHOP_FRAME.inventedName}>
      {SHOP_FRAME.invented}
    </section>
  ) : null;
}
