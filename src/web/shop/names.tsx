import { answered, shop } from "./shopClient.ts";
import { useRead } from "./useShop.ts";

const BEING_READ = "…";

/** A ball by its name, as soon as it has been read. */
export function NameOfBall({ id }: { readonly id: string }) {
  return useRead(["balls", id], () => answered(shop.balls[":id"].$get({ param: { id } }))).data?.name ?? BEING_READ;
}

/** A bowler by name, as soon as it has been read. */
export function NameOfBowler({ id }: { readonly id: string }) {
  return useRead(["bowlers", id], () => answered(shop.bowlers[":id"].$get({ param: { id } }))).data?.name ?? BEING_READ;
}
