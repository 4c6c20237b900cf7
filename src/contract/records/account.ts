import { z } from "zod";
import { oneOf, text } from "../job/fields.ts";
import { id, instant } from "./fields.ts";
import { ROLES } from "./roles.ts";

export const role = oneOf(ROLES, "What the person may do");

/** The name that somebody signs in with; case, width and accents' spelling do not matter. */
export const signInName = text("Name to sign in with");

/** Lengths of a password in letters (NIST SP 800-63B, 5.1.1.2: 8 or more, at least 64 permitted, no rules of composition). */
export const PASSWORD_LETTERS = { from: 10, to: 128 } as const;
/**
 * A password or a PIN on its way in. What is allowed is checked by the records and not here: a schema's refusal quotes what stood there.
 */
export const secret = z.string({ error: "text" });

/** A person's way in, as it is read: nothing of what opens it. */
export const accountKept = z.strictObject({
  personId: id,
  signInName: z.string(),
  role,
  hasPin: z.boolean(),
  /** After too many wrong PINs, until the person signs in with the password. */
  pinIsOff: z.boolean(),
  createdAt: instant,
  changedAt: instant,
});
export type Account = z.output<typeof accountKept>;

/** Somebody who is signed in at one browser. */
export const signedInKept = z.strictObject({
  id,
  personId: id,
  madeAt: instant,
  /** To the minute. */
  seenAt: instant,
  /** When it ends at the latest. */
  endsAt: instant,
  /** Network address that it began from. */
  address: z.string(),
});
export type SignedInSession = z.output<typeof signedInKept>;
