import type { Records } from "#records/records";
import type { WhoActs } from "./http/mount.ts";
import { fieldRefusal, Refusal } from "./http/refusal.ts";

/** Names which person of the shop does it, by id. It is no proof: on this machine whoever sits at it may act for anybody of the shop. */
export const PERSON_HEADER = "X-Gritwright-Person";

/**
 * Who acts on a machine without accounts: the person that the page names, else the shop's first.
 *
 * @throws {Refusal} where somebody is named who does not work here
 */
export function personAtThisMachine({ people }: Pick<Records, "people">): WhoActs {
  return async (context) => {
    const { items } = await people.list({ where: { state: "works here" }, order: "oldest first", limit: 500 });
    const named = context.req.header(PERSON_HEADER);
    if (named === undefined) {
      if (items.length === 0) throw new Refusal("notNow", { detail: "Nobody works in this shop yet." });
      return items[0].id;
    }
    const person = items.find(({ id }) => id === named);
    if (person !== undefined) return person.id;
    throw fieldRefusal("invalid", PERSON_HEADER, named, "the id of a person who works here", "Nobody of that id works here.");
  };
}
