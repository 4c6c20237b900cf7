import { answered, shop } from "./shopClient.ts";
import { useRead } from "./useShop.ts";

/** The houses that are kept. */
export function useHouses() {
  return useRead(["houses"], () => answered(shop.houses.$get({ query: { limit: "200", order: "oldest first" } })));
}

export function useHouse(id: string | undefined) {
  return useRead(["houses", id ?? ""], () => answered(shop.houses[":id"].$get({ param: { id: id ?? "" } })), { enabled: id !== undefined });
}

export function useLanes(houseId: string) {
  return useRead(["lanes", "of", houseId], () => answered(shop.lanes.$get({ query: { houseId, limit: "200", order: "oldest first" } })));
}

export function usePatterns(houseId: string | undefined) {
  return useRead(
    ["patterns", "of", houseId ?? ""],
    () => answered(shop.patterns.$get({ query: { houseId: houseId ?? "", limit: "200", order: "oldest first" } })),
    { enabled: houseId !== undefined },
  );
}

/** The last two hundred shots that were noted on a lane, newest first. */
export function useNotesOf(laneId: string) {
  return useRead(["shot-notes", laneId], () => answered(shop["shot-notes"].$get({ query: { laneId, limit: "200" } })));
}

/** The last two hundred shots that were noted in a house, newest first. */
export function useNotesOfHouse(houseId: string) {
  return useRead(["shot-notes", "of-house", houseId], () => answered(shop["shot-notes"].$get({ query: { houseId, limit: "200" } })));
}
