import { useCallback, useEffect, useRef, useState } from "react";
import { recall, remember } from "../client/memory.ts";

/**
 * A state that survives a reload of this browser at any moment: drafts are not lost when the tab goes. What cannot be read back is begun anew.
 * It is kept when it is set, not when it is next drawn: a room that empties its form and leaves in one breath is never drawn again.
 */
export function useKept<T>(key: string, begin: () => T): [T, (next: T | ((old: T) => T)) => void] {
  const [state, setState] = useState<T>(() => keptOr(key, begin));
  const newest = useRef(state);
  useEffect(() => {
    remember(key, JSON.stringify(newest.current));
  }, [key]);
  const set = useCallback(
    (next: T | ((old: T) => T)) => {
      newest.current = typeof next === "function" ? (next as (old: T) => T)(newest.current) : next;
      remember(key, JSON.stringify(newest.current));
      setState(newest.current);
    },
    [key],
  );
  return [state, set];
}

function keptOr<T>(key: string, begin: () => T): T {
  const kept = recall(key);
  if (kept === null) return begin();
  try {
    return JSON.parse(kept) as T;
  } catch {
    return begin();
  }
}
