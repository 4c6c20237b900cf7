import { useEffect, useState } from "react";

/** What a request learnt of the shop's server: it answered, or it is away and what is given was read before (null: nothing was). */
export type ServerHeard = { readonly isAway: false } | { readonly isAway: true; readonly readAt: string | null };

const HEARD = "gritwright-server";

/** Tells the page's frame what a request learnt. */
export function tellHeard(heard: ServerHeard): void {
  dispatchEvent(new CustomEvent<ServerHeard>(HEARD, { detail: heard }));
}

/** Whether the server answers, and when the oldest of what is in view was read. */
export function useHeard(): ServerHeard {
  const [state, setState] = useState<ServerHeard>({ isAway: false });
  useEffect(() => {
    const hear = (event: Event): void => {
      const heard = (event as CustomEvent<ServerHeard>).detail;
      setState((old) => (heard.isAway && old.isAway ? { isAway: true, readAt: older(old.readAt, heard.readAt) } : heard));
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
