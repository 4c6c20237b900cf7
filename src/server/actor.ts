import type { Records } from "#records/records";
import { fieldRefusal } from "./http/refusal.ts";
import { PERSON_HEADER, type PersonHere } from "./http/visitor.ts";

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
