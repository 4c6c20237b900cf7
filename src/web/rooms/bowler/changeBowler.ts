import type { Bowler } from "#contract/records/bowler";
import { answered, madeOn, shop } from "../../shop/shopClient.ts";

export type BowlerChange = Parameters<(typeof shop.bowlers)[":id"]["$patch"]>[0]["json"];

/** Changes some fields of a bowler, over the version that was in view. */
export function changeBowler(id: string, made: { readonly version: number }, json: BowlerChange): Promise<Bowler> {
  return answered(shop.bowlers[":id"].$patch({ param: { id }, json, header: madeOn(made) }));
}

/** The bowler as another counter left it; null where that cannot be read. */
export async function readBowler(current: unknown): Promise<Bowler | null> {
  const { bowlerKept } = await import("#contract/records/bowler");
  return bowlerKept.safeParse(current).data ?? null;
}

/** What reads a bowler again after a change: searches show names. */
export const BOWLER_TOUCHES = ["bowlers", "search", "queue"] as const;
