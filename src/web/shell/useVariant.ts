import { useEffect, useState } from "react";
import { FRAME } from "#words/en/screens";
import { recall, remember } from "../client/memory.ts";

export const VARIANTS = { paper: FRAME.paper, bench: FRAME.bench } as const;
export type Variant = keyof typeof VARIANTS;

const MEMORY = "gritwright.look";

/** Paper for the counter, dark for the bench; at first as the machine prefers. */
export function useVariant(): [Variant, (variant: Variant) => void] {
  const [variant, setVariant] = useState<Variant>(() => {
    const kept = recall(MEMORY);
    if (kept === "paper" || kept === "bench") return kept;
    return matchMedia("(prefers-color-scheme: dark)").matches ? "bench" : "paper";
  });
  useEffect(() => {
    document.documentElement.dataset.variant = variant;
  }, [variant]);
  return [
    variant,
    (chosen) => {
      remember(MEMORY, chosen);
      setVariant(chosen);
    },
  ];
}
