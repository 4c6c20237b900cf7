import type { Things } from "../records.ts";
import type { Dice } from "./dice.ts";
import type { ShopClock } from "./shopClock.ts";

/** What every piece of the invented shop is made with. */
export interface Making {
  readonly things: Things;
  readonly clock: ShopClock;
  readonly dice: Dice;
  /** The first person of the shop, who keeps the books. */
  readonly by: string;
  /** Where the two years begin and end, ms. */
  readonly beginMs: number;
  readonly endMs: number;
}

/** A story that yields the times at which it goes on, ms; it is continued when the clock stands there. */
export type Times = AsyncGenerator<number, void, undefined>;
