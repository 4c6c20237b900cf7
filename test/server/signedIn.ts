import type { Role } from "#contract/records/roles";
import { ROLES } from "#contract/records/roles";
import { PASSWORD_HEADER } from "#contract/routes/route";
import type { Records } from "#records/records";
import { HOST } from "./shopServer.ts";

/** Invented; long enough, and about nobody. */
export const PASSWORDS: Readonly<Record<Role, string>> = {
  owner: "seven herons on a jetty",
  technician: "grey grit under the lamp",
  counter: "two tickets and a ladder",
  reader: "only ever looked at it",
};

interface Asking {
  readonly records: Records;
  readonly by: string;
  raw(path: string, init?: RequestInit): Promise<Response>;
}

/** Gives the first person of a shop an owner's way in, and makes one person more for every other role. @returns whose id is whose */
export async function peopleOfEveryRole({ records, by }: Pick<Asking, "records" | "by">): Promise<Readonly<Record<Role, string>>> {
  const ids: Partial<Record<Role, string>> = { owner: by };
  await records.accounts.open(by, { signInName: "owner", role: "owner", password: PASSWORDS.owner }, by);
  for (const role of ROLES) {
    if (role === "owner") continue;
    const { id } = await records.people.create({ name: `Invented ${role}`, initials: role.slice(0, 2) }, { by });
    await records.accounts.open(id, { signInName: role, role, password: PASSWORDS[role] }, by);
    ids[role] = id;
  }
  return ids as Record<Role, string>;
}

/** Header of the own password once more, as a browser sends it. */
export function again(password: string): Record<string, string> {
  return { [PASSWORD_HEADER]: encodeURIComponent(password) };
}

/** Asks the session's route. */
export function trySignIn(shop: Pick<Asking, "raw">, signInName: string, password: string): Promise<Response> {
  return shop.raw("/api/session", {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify({ signInName, password }),
  });
}

/** What the browser would send from then on: `name=value` of the cookie in an answer. */
export function cookieIn(response: Response): string {
  const [given] = response.headers.getSetCookie();
  if (given === undefined) throw new Error(`No cookie came with status ${response.status}.`);
  return given.split(";")[0];
}

/** Signs somebody in and gives the cookie. */
export async function cookieOf(shop: Pick<Asking, "raw">, role: Role): Promise<string> {
  const response = await trySignIn(shop, role, PASSWORDS[role]);
  if (response.status !== 201) throw new Error(`${role} did not come in: ${response.status} at ${HOST}`);
  return cookieIn(response);
}
