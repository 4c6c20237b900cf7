import type { Records } from "#records/records";
import type { PersonHere } from "./http/mount.ts";
import { fieldRefusal } from "./http/refusal.ts";

/** Names which person of the shop does it, by id. It is no proof: without passwords whoever sits at the machine may act for anybody of the shop. */
export const PERSON_HEADER = "X-Gritwright-Person";

/**
 * Who acts where the shop has no passwords: the person that the page names, else the shop's first who works here. Where everybody has left,
 * the first of all: somebody must be able to write that somebody works here again.
 *
 * @throws {Refusal} where somebody writes for one who does not work here
 */
export function personAtThisMachine({ people }: Pick<Records, "people">): PersonHere {
  return async (context) => {
    const { items } = await people.list({ order: "oldest first", limit: 500 });
    const working = items.filter(({ state }) => state === "works here");
    const named = context.req.header(PERSON_HEADER);
    if (named === undefined) return (working[0] ?? items[0]).id;
    const person = working.find(({ id }) => id === named);
    if (person !== undefined) return person.id;
    // Whoever has left meanwhile, or belongs to another shop that this browser looked at, must be able to read who works here.
    if (context.req.method === "GET" || context.req.method === "HEAD") return (working[0] ?? items[0]).id;
    throw fieldRefusal("invalid", PERSON_HEADER, named, "the id of a person who works here", "Nobody of that id works here.");
  };
}
