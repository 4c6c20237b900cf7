import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { ROLES, type Role } from "#contract/records/roles";
import { API } from "#contract/routes/api";
import type { Route } from "#contract/routes/route";
import { twoShops } from "../records/shop.ts";
import { isAsTheTableSays, kindOf as kindAsked, NOBODY, ROUTES } from "./routeWalk.ts";
import { type ShopServer, shopServer } from "./shopServer.ts";
import { cookieOf, peopleOfEveryRole } from "./signedIn.ts";

/* Every route of the router, asked as each role, as nobody, and with the session of another shop of the same database. */

let shop: ShopServer;
let other: ShopServer;
let cookies: Readonly<Record<Role, string>>;
let othersOwner = "";
beforeAll(async () => {
  const { west, east } = await twoShops();
  shop = await shopServer({ shop: west });
  await peopleOfEveryRole(shop);
  const signedIn: Partial<Record<Role, string>> = {};
  for (const role of ROLES) signedIn[role] = await cookieOf(shop, role);
  cookies = signedIn as Record<Role, string>;
  other = await shopServer({ shop: east });
  await peopleOfEveryRole(other);
  othersOwner = await cookieOf(other, "owner");
});
afterAll(async () => {
  await other.close();
  await other.records.close();
  await shop.end();
});

const kindOf = (route: Route, cookie: string | null) => kindAsked(shop.raw, route, cookie);

describe("every route of the router", () => {
  test("is one of the table, so that what follows leaves none out", () => {
    const mounted = shop.mounted.filter(({ path, method }) => path.startsWith("/api/") && !path.includes("*") && method !== "ALL");
    const known = new Set(ROUTES.map(([, route]) => `${route.method.toUpperCase()} ${route.path}`));
    expect(mounted.length).toBeGreaterThan(100);
    for (const { method, path } of mounted) expect(known, `${method} ${path}`).toContain(`${method} ${path}`);
  });

  test("is closed to nobody but health and the session itself", async () => {
    const open: string[] = [];
    for (const [name, route] of ROUTES) {
      const kind = await kindOf(route, null);
      if (kind !== NOBODY) open.push(name);
    }
    expect(open.sort()).toEqual(["health", "signIn", "signOut", "whoAmI"]);
  });

  test("is closed to the session of another shop, a made-up one and an empty one, as to nobody", async () => {
    const token = (cookie: string) => cookie.split("=")[1];
    expect((await other.raw("/api/settings", { headers: { cookie: othersOwner } })).status).toBe(200);
    for (const cookie of [othersOwner, `${othersOwner}x`, "gritwright-session=", `x=${token(cookies.owner)}`])
      for (const [name, route] of ROUTES)
        if (route.least !== "anybody") expect(await kindOf(route, cookie), `${name} with ${cookie.slice(0, 24)}`).toBe(NOBODY);
  });

  test.each(ROLES)("lets the role %s do what the table says, and nothing else", async (role) => {
    for (const [name, route] of ROUTES) {
      const kind = await kindOf(route, cookies[role]);
      expect(isAsTheTableSays(route, role, kind), `${name}: ${kind}`).toBe(true);
    }
    expect(await kindOf(API.whoAmI, cookies[role])).toBe("200");
    expect(await kindOf(API.listBalls, cookies[role]), "signed out at the end").toBe(NOBODY);
  });
});

describe("what the table says", () => {
  const of = (least: string) => ROUTES.filter(([, route]) => route.least === least);

  test("a reader changes nothing but what is the reader's own", () => {
    const writes = of("reader").filter(([, { method }]) => method !== "get");
    expect(writes.map(([, { path }]) => path).every((path) => /^\/api\/sessions?\b/.test(path))).toBe(true);
  });

  test("no money is a reader's to see", () => {
    for (const [name, { path, least }] of ROUTES)
      if (/price|payment|prepaid|account|takings|\/visits/.test(path)) expect(["counter", "owner"], name).toContain(least);
  });

  test("people, ways in, settings, backups and whatever takes everything out or away are the owner's", () => {
    for (const [name, { path, method, least }] of ROUTES)
      if (
        /sign-in|backup|export|import|audit|metrics|personal-data/.test(path) ||
        (/^\/api\/(people|settings|prices)/.test(path) && method !== "get")
      )
        expect(least, name).toBe("owner");
  });
});
