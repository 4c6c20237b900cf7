import { randomBytes } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { ROLES, type Role } from "#contract/records/roles";
import { addShopTo } from "#records/shopsOf";
import { isAsTheTableSays, kindOf, ROUTES } from "../../../test/server/routeWalk.ts";
import { cookieOf, PASSWORDS } from "../../../test/server/signedIn.ts";
import { childServer } from "../../../tools/childServer.ts";
import type { Drill, Outcome } from "../drill.ts";

/** Every route asked as each role, as nobody, with a made-up session, and with the sessions of another shop of the same database. */
export const routesByRole: Drill = {
  name: "Every route × every role × another shop",
  async run({ postgres }) {
    const onFile = await walked(null);
    return postgres === null ? [onFile] : [onFile, await walked(await postgres.newDatabase())];
  },
};

async function walked(database: string | null): Promise<Outcome> {
  const data = mkdtempSync(join(tmpdir(), "gritwright-walk-"));
  const start = (shop: string) => {
    const folder = database === null ? data : join(data, shop);
    const at = database === null ? {} : { GRITWRIGHT_DATABASE: database };
    return childServer(["--own", "--data", folder], { ...at, GRITWRIGHT_SHOP_NAME: shop });
  };
  const west = await start("West");
  await addShopTo({ place: database ?? join(data, "shop"), now: Date.now, randomBytes }, "East");
  const east = await start("East");
  const servers = [west, east].map(({ address }) => ({ raw: (path: string, init: RequestInit = {}) => fetch(address + path, init) }));
  const [own, others] = [await waysIn(servers[0]), await waysIn(servers[1])];
  const askers: [string, Role | null, string | null][] = [
    ["nobody", null, null],
    ["a made-up session", null, `${own.owner}x`],
    ...ROLES.map((role): [string, null, string] => [`the other shop's ${role}`, null, others[role]]),
    ...ROLES.map((role): [string, Role, string] => [role, role, own[role]]),
  ];
  const broken: string[] = [];
  for (const [asker, role, cookie] of askers)
    for (const [name, route] of ROUTES) {
      const kind = await kindOf(servers[0].raw, route, cookie);
      if (!isAsTheTableSays(route, role, kind)) broken.push(`${name} as ${asker}: ${kind}`);
    }
  await Promise.all([west.stop(), east.stop()]);
  rmSync(data, { recursive: true, force: true });
  return {
    on: database === null ? "SQLite" : "PostgreSQL",
    rounds: askers.length * ROUTES.length,
    acknowledged: null,
    lost: null,
    doubled: null,
    longestFreezeMs: null,
    memoryMb: null,
    note: `${ROUTES.length} routes, ${askers.length} askers; let in against the table: ${broken.length}`,
    broken,
  };
}

/** Cookies of people of every role, made as an owner makes them. */
async function waysIn(shop: { raw(path: string, init?: RequestInit): Promise<Response> }): Promise<Readonly<Record<Role, string>>> {
  const post = async (path: string, body: unknown, cookie = ""): Promise<{ readonly id: string }> => {
    const init = { method: "POST", headers: { "content-type": "application/json", cookie }, body: JSON.stringify(body) };
    const response = await shop.raw(path, init);
    if (!response.ok) throw new Error(`${path}: ${response.status} ${await response.text()}`);
    return (await response.json()) as { readonly id: string };
  };
  const [first] = ((await (await shop.raw("/api/people")).json()) as { items: { readonly id: string }[] }).items;
  await post(`/api/people/${first.id}/sign-in`, { signInName: "owner", role: "owner", password: PASSWORDS.owner });
  const owner = await cookieOf(shop, "owner");
  const cookies: Partial<Record<Role, string>> = { owner };
  for (const role of ROLES.filter((one) => one !== "owner")) {
    const person = await post("/api/people", { name: `Invented ${role}`, initials: role.slice(0, 2) }, owner);
    const wayIn = { signInName: role, role, password: PASSWORDS[role], ownPassword: PASSWORDS.owner };
    await post(`/api/people/${person.id}/sign-in`, wayIn, owner);
    cookies[role] = await cookieOf(shop, role);
  }
  return cookies as Record<Role, string>;
}
