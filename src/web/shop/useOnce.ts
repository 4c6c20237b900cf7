import { useState } from "react";
import { newKey } from "./shopClient.ts";

/** What makes a write the same write when it is sent again: its key and the moment it says it was made at. */
export interface Once {
  readonly at: string;
  readonly headers: { readonly "Idempotency-Key": string };
}

/** One write, however often it is pressed. The second renews it, for the next one. */
export function useOnce(): readonly [Once, () => void] {
  const [once, setOnce] = useState(begin);
  return [once, () => setOnce(begin())];
}

function begin(): Once {
  return { at: new Date().toISOString(), headers: { "Idempotency-Key": newKey() } };
}
