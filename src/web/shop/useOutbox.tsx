import { useQueryClient } from "@tanstack/react-query";
import { createContext, type ReactNode, useContext, useState, useSyncExternalStore } from "react";
import { Outbox, type Waiting } from "./outbox.ts";

const Here = createContext<Outbox | null>(null);

/** One outbox for the whole page; what it has sent is read again where it is shown. */
export function OutboxHere({ children }: { readonly children: ReactNode }) {
  const memory = useQueryClient();
  const [outbox] = useState(
    () =>
      new Outbox((path) => {
        void memory.invalidateQueries({ queryKey: [path.split("/")[2]] });
        void memory.invalidateQueries({ queryKey: ["queue"] });
      }),
  );
  return <Here.Provider value={outbox}>{children}</Here.Provider>;
}

/** @throws outside of {@link OutboxHere}, which is a fault of ours */
export function useOutbox(): { readonly outbox: Outbox; readonly waiting: readonly Waiting[] } {
  const outbox = useContext(Here);
  if (outbox === null) throw new Error("There is no outbox around this part of the page.");
  return { outbox, waiting: useSyncExternalStore(outbox.subscribe, outbox.snapshot) };
}
