import type { Assumed } from "#engine/assumptions";
import { SITUATIONS } from "#engine/planning/situations";
import { AskedWorld } from "./model.ts";
import { TARGETS } from "./targets.ts";

/** What is asked of a world: what it is weighed by, or everything. */
export interface Asked {
  readonly id: number;
  readonly assumed: Partial<Assumed>;
  readonly what: "fitted" | "all";
}

/** What a world says of each target (null: nothing, or not asked), and of each situation's ladder through the session. */
export interface Said {
  readonly id: number;
  readonly said: readonly (number | null)[];
  readonly ladders: readonly (readonly number[])[];
}

function ask({ id, assumed, what }: Asked): Said {
  const world = new AskedWorld(assumed);
  return {
    id,
    said: TARGETS.map((target) => (what === "all" || !target.leftOut ? target.predict(world) : null)),
    ladders: what === "all" ? SITUATIONS.map((situation) => world.ladder(situation, "session")) : [],
  };
}

process.on("message", (asked: Asked) => process.send?.(ask(asked)));
