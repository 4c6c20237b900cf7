import { SHOP_FRAME } from "#words/en/rooms/frame";
import { useHealth } from "../shop/useHealth.ts";
import { useSettings } from "../shop/zone.ts";

/** Says wherever it is shown that the shop is made up. */
export function Invented() {
  return useSettings().data?.data === "invented" ? (
    <section className="invented" aria-label={SHOP_FRAME.inventedName}>
      {SHOP_FRAME.invented}
    </section>
  ) : null;
}

/** That nothing can be written, since a newer version of the program has been at these records. */
export function OnlyReading() {
  const { data } = useHealth();
  if (data === undefined || data.mayWrite) return null;
  return (
    <p className="server-away no-print" role="status">
      {SHOP_FRAME.onlyReading}
    </p>
  );
}
