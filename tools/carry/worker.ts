/** A process that plays blocks of runs; started by runDesign.ts. */
import { type Description, type Design, designOf } from "./design.ts";
import { hitPins, type Outcome } from "./hit.ts";
import { BLOCK } from "./outcomes.ts";
import { loadEngine } from "./scene.ts";

export type Order = { readonly design: Description } | { readonly block: number };
export type Reply = { readonly ready: true } | { readonly block: number; readonly outcomes: readonly Outcome[] };

await loadEngine();
let design: Design | null = null;
process.on("message", (order: Order) => {
  if ("design" in order) {
    design = designOf(order.design);
    reply({ ready: true });
  } else if (design !== null) reply({ block: order.block, outcomes: playBlock(design, order.block) });
});

function playBlock(design: Design, block: number): Outcome[] {
  const from = block * BLOCK;
  return Array.from({ length: Math.min(BLOCK, design.count - from) }, (_, i) => {
    const { hit, coefficients, chance } = design.run(from + i);
    return hitPins(hit, coefficients, chance);
  });
}

function reply(message: Reply): void {
  process.send?.(message);
}
