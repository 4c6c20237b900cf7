import { useEffect, useState } from "react";
import { recall, remember } from "../client/memory.ts";

const PATIENCE_MS = 250;

/** A state that survives a reload of this browser: drafts are not lost when the tab goes. What cannot be read back is begun anew. */
export function useKept<T>(key: string, begin: () => T): [T, (next: T | ((old: T) => T)) => void] {
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
    const timer = setTimeout(() => remember(key, JSON.stringify(state)), PATIENCE_MS);
    return () => clearTimeout(timer);
  }, [key, state]);
  return [state, setState];
}
