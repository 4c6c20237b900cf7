import { useQueryClient } from "@tanstack/react-query";
import { useEffect, useRef, useState } from "react";
import { SHOP_FRAME } from "#words/en/rooms/frame";
import { recall, remember } from "../client/memory.ts";
import { canGoOffline } from "../offline/install.ts";
import { reportConnection, useConnection } from "../shop/connection.ts";
import { useShopTimes } from "../shop/zone.ts";

/** How often a page that is looked at asks whether the server is there, and how long it waits for an answer, ms: most rooms ask for nothing by themselves. */
const LOOK_MS = 10_000;
const ASK_AGAIN_MS = 5000;
/** How long it is said that the server is back, ms. */
const BACK_MS = 15_000;

/** Asks now and then whether the server is there. Says that it is away, and from when what is in view is; when it is back reads everything in view anew, and says that. */
export function ConnectionNotice() {
  const client = useQueryClient();
  const heard = useConnection();
  const times = useShopTimes();
  const isBack = useIsBack(heard.isOffline);
  useEffect(() => {
    const ask = async (): Promise<void> => {
      if (document.hidden) return;
      const response = await fetch("/api/health", { signal: AbortSignal.timeout(LOOK_MS) }).catch(() => null);
      if (heard.isOffline && response?.ok === true) reportConnection({ isOffline: false });
      if (heard.isOffline || response !== null) return;
      reportConnection({ isOffline: true, readAt: null });
      // Asked for again, what is in view comes from this browser, with its age.
      void client.invalidateQueries();
    };
    const timer = setInterval(() => void ask(), heard.isOffline ? ASK_AGAIN_MS : LOOK_MS);
    return () => clearInterval(timer);
  }, [client, heard.isOffline]);
  if (!heard.isOffline)
    return isBack ? (
      <p className="server-back no-print" role="status">
        {SHOP_FRAME.serverBack}
      </p>
    ) : null;
  return (
    <p className="server-away no-print" role="status">
      {SHOP_FRAME.serverAway} {heard.readAt !== null && SHOP_FRAME.readAt(times.at(heard.readAt))}
    </p>
  );
}

/** Whether the server has just come back. What was read before is read again then. */
function useIsBack(isOffline: boolean): boolean {
  const client = useQueryClient();
  const wasOffline = useRef(false);
  const [isBack, setBack] = useState(false);
  useEffect(() => {
    const hasReturned = wasOffline.current && !isOffline;
    wasOffline.current = isOffline;
    setBack(hasReturned);
    if (!hasReturned) return;
    void client.invalidateQueries();
    const timer = setTimeout(() => setBack(false), BACK_MS);
    return () => clearTimeout(timer);
  }, [client, isOffline]);
  return isBack;
}

const MEMORY = "gritwright.plainAddressSeen";

/** On an address that the browser does not trust, what is missing there and why, until it has been read. */
export function PlainAddress() {
  const [isSeen, setSeen] = useState(() => recall(MEMORY) !== null);
  if (canGoOffline() || isSeen) return null;
  return (
    <section className="server-away no-print" aria-label={SHOP_FRAME.plainAddressName}>
      <p>{SHOP_FRAME.plainAddress}</p>
      <button
        type="button"
        className="button"
        onClick={() => {
          remember(MEMORY, "yes");
          setSeen(true);
        }}
      >
        {SHOP_FRAME.understood}
      </button>
    </section>
  );
}
