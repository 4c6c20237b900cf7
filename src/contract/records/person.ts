import type { z } from "zod";
import { mapping, oneOf, text } from "../job/fields.ts";
import { initials, keptAs } from "./fields.ts";

/** Somebody who works in the shop. Not an account: it says who did something, and opens no door. */
export const personWritten = mapping(
  {
    name: text("Name"),
    initials,
    state: oneOf(["works here", "has left"], "Whether the person still works here").default("works here"),
  },
  "A person of the shop",
);
export const personKept = keptAs(personWritten);
export type PersonWritten = z.input<typeof personWritten>;
export type Person = z.output<typeof personKept>;
