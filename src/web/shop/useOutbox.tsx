import { type QueryClient, useQueryClient } from "@tanstack/react-query";
import { createContext, type ReactNode, useContext, useEffect, useState, useSyncExternalStore } from "react";
import { type OnTheBench, signedHere } from "../benchWork/onTheBench.ts";
import { OUTBOX_MEMORY, Outbox, type Waiting } from "./outbox.ts";
import { type ReadingHere, readingHere, readingsKey } from "./readingsHere.ts";
import { useSession } from "./useSession.tsx";

const Here = createContext<Outbox | null>(null);

/** What else a write changes beside its own kind. */
const ALSO_TOUCHES: Readonly<Record<string, readonly string[]>> = {
  "stages-done": ["stock", "stock-items", "tickets"],
  tickets: ["balls"],
  "lane-side": ["balls", "search", "stages-done", "stock", "stock-items", "tickets", "visits"],
};

/** One outbox for the whole page; what it has sent, or the shop has refused, is read again where it is shown. */
export function OutboxHere({ children }: { readonly children: ReactNode }) {
  const memory = useQueryClient();
  const [outbox] = useState(
    () =>
      new Outbox((write) => {
        const kind = write.path.split("/")[2];
        if (write.refused === null) {
          seenAsSigned(memory, write);
          seenAsRead(memory, write);
        }
        for (const touched of [kind, "queue", ...(ALSO_TOUCHES[kind] ?? [])]) void memory.invalidateQueries({ queryKey: [touched] });
      }),
  );
  const { sessionId } = useSession();
  // Whoever has come in now may be the one who wrote what waits.
  useEffect(() => {
    if (sessionId !== null) void outbox.flush();
  }, [outbox, sessionId]);
  useEffect(() => {
    const hear = ({ key }: StorageEvent): void => {
      if (key === OUTBOX_MEMORY) outbox.hear();
    };
    addEventListener("storage", hear);
    return () => removeEventListener("storage", hear);
  }, [outbox]);
  return <Here.Provider value={outbox}>{children}</Here.Provider>;
}

/** Between being taken and being read again a stage must not look as if nobody had signed it. */
function seenAsSigned(memory: QueryClient, write: Waiting): void {
  const stage = signedHere(write);
  if (stage === null) return;
  memory.setQueryData<OnTheBench>(["tickets", stage.ticketId, "bench"], (seen) =>
    seen === undefined ? seen : { ...seen, done: [...seen.done, stage] },
  );
}

/** The same of a reading. */
function seenAsRead(memory: QueryClient, write: Waiting): void {
  const one = readingHere(write);
  if (one === null) return;
  memory.setQueryData<readonly ReadingHere[]>(readingsKey(one.ballId), (seen) => (seen === undefined ? seen : [...seen, one]));
}

/** @throws outside of {@link OutboxHere}, which is a fault of ours */
export function useOutbox(): { readonly outbox: Outbox; readonly waiting: readonly Waiting[] } {
  const outbox = useContext(Here);
  if (outbox === null) throw new Error("There is no outbox around this part of the page.");
  return { outbox, waiting: useSyncExternalStore(outbox.subscribe, outbox.snapshot) };
}
