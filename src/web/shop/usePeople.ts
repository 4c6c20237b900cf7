import { everyPage } from "./everyPage.ts";
import { actingPerson } from "./person.ts";
import { answered, shop } from "./shopClient.ts";
import { useRead } from "./useShop.ts";

/** Everybody who works here or did, the first to come first. */
export function usePeople() {
  return useRead(["people", "all"], () =>
    everyPage((after) => answered(shop.people.$get({ query: { limit: "200", order: "oldest first", ...after } }))),
  );
}

/** The person whose initials stand beside what is done at this machine; null until the shop's people have been read. */
export function useActing() {
  const people = useRead(["people"], () => answered(shop.people.$get({ query: { state: "works here", order: "oldest first" } }))).data
    ?.items;
  return people?.find(({ id }) => id === actingPerson()) ?? people?.[0] ?? null;
}
