import { useQueryClient } from "@tanstack/react-query";
import { useEffect } from "react";
import { queueSchema } from "#contract/routes/work";
import { tellDoor } from "./doorNews.ts";
import { answered, shop } from "./shopClient.ts";
import { useDoor } from "./useDoor.tsx";
import { useRead } from "./useShop.ts";

const KEY = ["queue"];

/** The tickets that somebody has something to do about, kept up as other counters change them. */
export function useQueue() {
  const client = useQueryClient();
  const { sessionId } = useDoor();
  // Begun anew with each session: the stream of the one before was ended.
  // biome-ignore lint/correctness/useExhaustiveDependencies: see above
  useEffect(() => {
    const events = new EventSource("/api/queue/events");
    events.addEventListener("queue", ({ data }) => {
      const queue = queueSchema.safeParse(JSON.parse(data));
      if (queue.success) client.setQueryData(KEY, queue.data);
    });
    // A browser asks again by itself, but where it was turned away: then nobody is signed in any more.
    events.addEventListener("error", () => {
      if (events.readyState === EventSource.CLOSED) tellDoor();
    });
    return () => events.close();
  }, [client, sessionId]);
  return useRead(KEY, () => answered(shop.queue.$get()));
}
