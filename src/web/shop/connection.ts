import { useEffect, useState } from "react";

/** What a request learnt of the shop's server: it answered, or it is away and what is given was read before (null: nothing was). */
export type ConnectionStatus = { readonly isOffline: false } | { readonly isOffline: true; readonly readAt: string | null };

const HEARD = "gritwright-server";

/** Tells the page's frame what a request learnt. */
export function reportConnection(heard: ConnectionStatus): void {
  dispatchEvent(new CustomEvent<ConnectionStatus>(HEARD, { detail: heard }));
}

/** Whether the server answers, and when the oldest of what is in view was read. */
export function useConnection(): ConnectionStatus {
  const [state, setState] = useState<ConnectionStatus>({ isOffline: false });
  useEffect(() => {
    const hear = (event: Event): void => {
      const heard = (event as CustomEvent<ConnectionStatus>).detail;
      setState((old) => (heard.isOffline && old.isOffline ? { isOffline: true, readAt: older(old.readAt, heard.readAt) } : heard));
    };
    addEventListener(HEARD, hear);
    return () => removeEventListener(HEARD, hear);
  }, []);
  return state;
}

function older(a: string | null, b: string | null): string | null {
  if (a === null || b === null) return a ?? b;
  return a < b ? a : b;
}
