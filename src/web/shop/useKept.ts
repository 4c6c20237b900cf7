import { useEffect, useState } from "react";
import { recall, remember } from "../client/memory.ts";

const PATIENCE_MS = 250;

/**
 * A state that survives a reload of this browser: drafts are not lost when the tab goes. What cannot be read back is begun anew.
 *
 * @param patienceMs how long after a change it is kept; 0 for what must be there at once
 */
export function useKept<T>(key: string, begin: () => T, patienceMs = PATIENCE_MS): [T, (next: T | ((old: T) => T)) => void] {
  const [state, setState] = useState<T>(() => {
    const kept = recall(key);
    if (kept === null) return begin();
    try {
      return JSON.parse(kept) as T;
    } catch {
      return begin();
    }
  });
  useEffect(() => {
    const keep = () => remember(key, JSON.stringify(state));
    if (patienceMs === 0) return keep();
    const timer = setTimeout(keep, patienceMs);
    return () => clearTimeout(timer);
  }, [key, state, patienceMs]);
  return [state, setState];
}
