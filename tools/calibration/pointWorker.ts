import type { Assumed } from "#engine/assumptions";
import type { Line } from "#engine/delivery/bowler";
import { SITUATIONS } from "#engine/planning/situations";
import { bringVectorKernel } from "#tasks/kernel/vectorKernel";
import { AskedWorld } from "./model.ts";
import { isLadder, missOf, TARGETS } from "./targets.ts";

/** What is asked of a world: what it is weighed by, or everything. */
export interface Asked {
  readonly id: number;
  readonly assumed: Partial<Assumed>;
  readonly what: "fitted" | "all";
  /** Of each situation, on which a mean shot is thrown; none: not asked. */
  readonly lines: readonly Line[];
}

/** What a world says of each target (null: nothing, or not asked), how badly it misses those that are fitted, and each situation's ladder through the session. */
export interface Said {
  readonly id: number;
  readonly said: readonly (number | null)[];
  /** Σ (miss/unit)² over the fitted targets; infinite for a hopeless world, which is not asked on. */
  readonly loss: number;
  readonly ladders: readonly (readonly number[])[];
  /** Situation by situation: board at the pins, entry angle, degrees, and hook start, feet. */
  readonly shots: readonly (readonly number[])[];
}

/** A world that misses by so much already is left out, and not asked the rest: against the best it would weigh less than one in five hundred. */
const HOPELESS = 16;

/** Single shots before whole ladders: a hopeless world is soon known. */
const CHEAP_FIRST = [...TARGETS.keys()].sort((a, b) => Number(isLadder(TARGETS[a])) - Number(isLadder(TARGETS[b])));

function ask({ id, assumed, what, lines }: Asked): Said {
  const world = new AskedWorld(assumed);
  // Whole sessions first: what is asked of the lane as found is their beginning.
  const ladders = what === "all" ? SITUATIONS.map((situation) => world.ladder(situation, "session")) : [];
  const said: (number | null)[] = TARGETS.map(() => null);
  let loss = 0;
  for (const k of CHEAP_FIRST) {
    const target = TARGETS[k];
    if (what === "fitted" && (target.leftOut || loss > HOPELESS)) continue;
    said[k] = target.predict(world);
    if (!target.leftOut) loss += missOf(target, said[k]) ** 2;
    if (what === "fitted" && loss > HOPELESS) loss = Number.POSITIVE_INFINITY;
  }
  return { id, said, loss, ladders, shots: lines.map((line, k) => world.shotOn(SITUATIONS[k], line)) };
}

bringVectorKernel();
process.on("message", (asked: Asked) => process.send?.(ask(asked)));
