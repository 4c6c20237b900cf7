import { SHOP_FRAME } from "#words/en/rooms/frame";
import { useHealth } from "../shop/useHealth.ts";

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
