import type { accessRoutes, WhoAmI } from "#contract/routes/access";
import type { Records } from "#records/records";
import type { Handlers } from "../http/mount.ts";
import { refusalOfTry } from "../http/passwordAgain.ts";
import { Refusal } from "../http/refusal.ts";
import type { Visitor } from "../http/visitor.ts";

/** Who may come in, and who is in. */
export function accessHandlers({ accounts, people }: Pick<Records, "accounts" | "people">): Handlers<typeof accessRoutes> {
  /** Whoever sits at an open session for a moment must not be able to keep it: what opens doors wants the password once more. */
  const mustKnowPassword = async ({ session }: Visitor, ownPassword: string | undefined): Promise<void> => {
    if (session === null) return;
    const doubt = await accounts.doubt(session.personId, ownPassword ?? "");
    if (doubt !== null) throw refusalOfTry(doubt);
  };
  return {
    whoAmI: async ({ visitor }) => whoIs(visitor),
    async signIn({ body, visitor }) {
      const outcome = await accounts.signIn({ ...body, address: visitor.address, device: visitor.device });
      if (outcome.kind !== "in") throw refusalOfTry(outcome);
      // What this browser had before is over: it would be a second way in that nobody looks after.
      if (visitor.session !== null) await accounts.endSession(visitor.session.id);
      visitor.give(outcome);
      visitor.know(outcome.device);
      return whoIs({ state: "signed in", session: outcome.session });
    },
    async signOut({ visitor }) {
      if (visitor.session !== null) await accounts.endSession(visitor.session.id);
      visitor.give(null);
      return undefined;
    },
    async takeOver({ body, visitor }) {
      if (visitor.session === null) throw new Refusal("notNow", { detail: "A PIN changes the person of a session; nobody is signed in." });
      const outcome = await accounts.changePerson(visitor.session, { ...body, address: visitor.address });
      if (outcome.kind === "off") throw new Refusal("pinOff");
      if (outcome.kind === "wrong") throw new Refusal("wrongSecret", { detail: "This is not the PIN." });
      visitor.give(outcome);
      return whoIs({ state: "signed in", session: outcome.session });
    },
    async takers() {
      const items = [];
      for (const { personId, pinIsOff, hasPin } of await accounts.list())
        if (hasPin && (await people.get(personId)).state === "works here") items.push({ personId, pinIsOff });
      return { items };
    },
    async setOwnPassword({ body, by, visitor }) {
      const { id } = sessionOf(visitor);
      await mustKnowPassword(visitor, body.ownPassword);
      return accounts.change(by, { password: body.password }, by, id);
    },
    async setOwnPin({ body, by, visitor }) {
      const { id } = sessionOf(visitor);
      await mustKnowPassword(visitor, body.ownPassword);
      return accounts.change(by, { pin: body.pin }, by, id);
    },
    listSessions: async ({ by, visitor }) => ({ items: [...(await accounts.sessions(visitor.role === "owner" ? null : by))] }),
    async endSession({ params, by, visitor }) {
      const seen = await accounts.sessions(visitor.role === "owner" ? null : by);
      if (!seen.some(({ id }) => id === params.id)) throw new Refusal("notFound", { detail: "There is no such session." });
      await accounts.endSession(params.id);
      if (params.id === visitor.session?.id) visitor.give(null);
      return undefined;
    },

    listSignIns: async () => ({ items: [...(await accounts.list())] }),
    async openSignIn({ params, body, by, visitor }) {
      const { ownPassword, ...written } = body;
      await mustKnowPassword(visitor, ownPassword);
      return accounts.open(params.id, written, by);
    },
    async changeSignIn({ params, body, by, visitor }) {
      const { ownPassword, ...change } = body;
      await mustKnowPassword(visitor, ownPassword);
      return accounts.change(params.id, change, by, visitor.session?.id);
    },
    async closeSignIn({ params, by }) {
      await accounts.close(params.id, by);
      return undefined;
    },
  };
}

function whoIs({ state, session }: Pick<Visitor, "state" | "session">): WhoAmI {
  return { state, personId: session?.personId ?? null, role: session?.role ?? null, sessionId: session?.id ?? null };
}

/** @throws {Refusal} where the shop has no passwords yet */
function sessionOf({ session }: Visitor) {
  if (session === null) throw new Refusal("notNow", { detail: "Nobody is signed in: the shop has no passwords yet." });
  return session;
}
