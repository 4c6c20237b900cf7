import { useQueryClient } from "@tanstack/react-query";
import { useEffect, useState } from "react";
import type { Queue } from "#contract/routes/work";
import { announceSession } from "./sessionNews.ts";
import { answered, shop } from "./shopClient.ts";
import { useSession } from "./useSession.tsx";
import { useRead } from "./useShop.ts";

const KEY = ["queue"];
/** How often the queue is asked for where the server tells of no changes, ms. */
const ASK_MS = 5000;

/**
 * The tickets that somebody has something to do about, kept up as other counters change them: the server tells, and where it does
 * not (more pages listen than may), the page asks.
 */
export function useQueue() {
  const client = useQueryClient();
  const [isTold, setTold] = useState(true);
  const { sessionId } = useSession();
  // Begun anew with each session: the stream of the one before was ended.
  // biome-ignore lint/correctness/useExhaustiveDependencies: see above
  useEffect(() => {
    const events = new EventSource("/api/queue/events");
    // As it was sent, like the answer to a question: it is the same server's, and schemas would be loaded for the shop's first room.
    events.addEventListener("queue", ({ data }) => client.setQueryData(KEY, JSON.parse(data) as Queue));
    events.addEventListener("open", () => setTold(true));
    // A stream that broke is opened again by the browser; one that was turned away is closed for good: nobody is signed in any more, or too many listen.
    events.addEventListener("error", () => {
      if (events.readyState !== EventSource.CLOSED) return;
      setTold(false);
      announceSession();
    });
    return () => events.close();
  }, [client, sessionId]);
  return useRead(KEY, () => answered(shop.queue.$get()), { everyMs: isTold ? null : ASK_MS });
}
