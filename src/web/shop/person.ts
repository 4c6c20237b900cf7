import { recall, remember } from "../client/memory.ts";

const MEMORY = "gritwright.person";
/** Names who acts. It opens no door; it says whose initials stand beside the work. */
export const PERSON_HEADER = "X-Gritwright-Person";

/** The person at this machine, by id; null before anybody was chosen: then the server takes the shop's first. */
export function actingPerson(): string | null {
  return recall(MEMORY);
}

export function actAs(personId: string): void {
  remember(MEMORY, personId);
}
