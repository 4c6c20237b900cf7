import { z } from "zod";
import { mapping } from "../job/fields.ts";
import { accountKept, role, secret, signedInKept, signInName } from "../records/account.ts";
import { id } from "../records/fields.ts";
import { idParams } from "./parts.ts";
import { answers, json, NOTHING, route } from "./route.ts";

/*
 * Routes that carry a password take no Idempotency-Key: what is kept for a retry holds a plain digest of the body, from which a password could be guessed.
 */

/** Who asks: without any password in the shop whoever sits at the machine; else who is signed in, if anybody. */
export const whoAmISchema = z.strictObject({
  state: z.enum(["no passwords", "signed out", "signed in"]),
  personId: id.nullable(),
  role: role.nullable(),
  /** Of this session. */
  sessionId: id.nullable(),
});
export type WhoAmI = z.output<typeof whoAmISchema>;

const ownPassword = secret.optional();
const session = { path: "/api/session" } as const;
const signInOf = { path: "/api/people/:id/sign-in", params: idParams, least: "owner" } as const;

/** Who may come in, and who is in. */
export const accessRoutes = {
  whoAmI: route({ ...session, least: "anybody", method: "get", does: "Who asks, and in which role", answer: answers(whoAmISchema) }),
  signIn: route({
    ...session,
    least: "anybody",
    method: "post",
    does: "Signs a person in; the session's cookie comes with the answer",
    body: json(mapping({ signInName, password: secret }, "Name and password")),
    answer: answers(whoAmISchema, 201),
  }),
  signOut: route({ ...session, least: "anybody", method: "delete", does: "Ends the session that asks", answer: NOTHING }),
  takeOver: route({
    least: "reader",
    method: "post",
    path: "/api/session/person",
    does: "Changes the person of the session by a PIN, as at a shared counter",
    body: json(mapping({ personId: id, pin: secret }, "Who, and the PIN")),
    answer: answers(whoAmISchema),
  }),
  takers: route({
    least: "reader",
    method: "get",
    path: "/api/session/people",
    does: "Who may take over by a PIN",
    answer: answers(z.strictObject({ items: z.array(z.strictObject({ personId: id, pinIsOff: z.boolean() })) })),
  }),
  setOwnPassword: route({
    least: "reader",
    method: "post",
    path: "/api/session/password",
    does: "Changes one's own password, and ends one's other sessions",
    body: json(mapping({ ownPassword: secret, password: secret }, "The password so far, and the new one")),
    answer: answers(accountKept),
  }),
  setOwnPin: route({
    least: "reader",
    method: "post",
    path: "/api/session/pin",
    does: "Sets one's own PIN, or takes it away",
    body: json(mapping({ ownPassword: secret, pin: secret.nullable() }, "The password, and the PIN")),
    answer: answers(accountKept),
  }),
  listSessions: route({
    least: "reader",
    method: "get",
    path: "/api/sessions",
    does: "Lists one's own sessions, newest first; an owner's list has everybody's",
    answer: answers(z.strictObject({ items: z.array(signedInKept) })),
  }),
  endSession: route({
    least: "reader",
    method: "delete",
    path: "/api/sessions/:id",
    params: idParams,
    does: "Ends a session of one's own; an owner may end anybody's",
    answer: NOTHING,
  }),

  listSignIns: route({
    least: "owner",
    method: "get",
    path: "/api/sign-ins",
    does: "Lists who may come in, and in which role",
    answer: answers(z.strictObject({ items: z.array(accountKept) })),
  }),
  openSignIn: route({
    ...signInOf,
    method: "post",
    does: "Gives a person a way in; the first in a shop must be an owner's",
    body: json(mapping({ signInName, role, password: secret, ownPassword }, "Name, role, password; the asking owner's own password")),
    answer: answers(accountKept, 201),
  }),
  changeSignIn: route({
    ...signInOf,
    method: "patch",
    does: "Sets a person's sign-in name, role, password or PIN; a new password ends the person's sessions",
    body: json(
      mapping(
        {
          signInName: signInName.optional(),
          role: role.optional(),
          password: secret.optional(),
          pin: secret.nullable().optional(),
          ownPassword,
        },
        "What changes; the asking owner's own password",
      ),
    ),
    answer: answers(accountKept),
  }),
  closeSignIn: route({
    ...signInOf,
    method: "delete",
    does: "Takes a person's way in away, and ends the person's sessions",
    again: true,
    answer: NOTHING,
  }),
};
