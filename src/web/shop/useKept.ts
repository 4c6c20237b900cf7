import { useEffect, useState } from "react";
import { recall, remember } from "../client/memory.ts";

/** A state that survives a reload of this browser at any moment: drafts are not lost when the tab goes. What cannot be read back is begun anew. */
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
    remember(key, JSON.stringify(state));
  }, [key, state]);
  return [state, setState];
}
