import { Hono } from "hono";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import type { Role } from "#contract/records/roles";
import { problemType } from "#contract/routes/problemKinds";
import { networkOf } from "#server/http/address";
import { ended, eventStreams } from "#server/http/events";
import { PERSON_HEADER } from "#server/http/visitor";
import { firstLine, setPasswordHere } from "#server/setPassword";
import { type Reply, type ShopServer, shopServer } from "./shopServer.ts";
import { again, cookieIn, cookieOf, PASSWORDS, peopleOfEveryRole, trySignIn } from "./signedIn.ts";

let shop: ShopServer;
let ids: Readonly<Record<Role, string>>;
beforeEach(async () => {
  shop = await shopServer();
});
afterEach(() => shop.end());

const withPeople = async (): Promise<void> => {
  ids = await peopleOfEveryRole(shop);
};
const kind = (reply: Reply): string =>
  `${reply.status} ${String(reply.body?.type ?? "")
    .split(":")
    .at(-1)}`;
const NEW = "an entirely new one";

describe("without any password", () => {
  test("everything is open, and who acts is who is named; with the first one nobody is in without it", async () => {
    expect((await shop.ask("whoAmI")).body).toEqual({ state: "no passwords", personId: null, role: null, sessionId: null });
    const events = await shop.raw("/api/queue/events");
    const reader = events.body?.getReader();
    await reader?.read();
    const first = { params: { id: shop.by }, body: { signInName: "Ansel", role: "owner", password: PASSWORDS.owner } };
    expect(kind(await shop.ask("openSignIn", { ...first, body: { ...first.body, role: "counter" } }))).toBe("422 invalid");
    expect((await shop.ask("openSignIn", first)).body).toMatchObject({ role: "owner", signInName: "ansel" });
    expect(kind(await shop.ask("listBalls", { headers: { [PERSON_HEADER]: shop.by } }))).toBe("401 notSignedIn");
    expect((await shop.ask("whoAmI")).body.state).toBe("signed out");
    // Whoever listened before the first password was set hears no more.
    for (let ended = false; !ended; ) ended = (await reader?.read())?.done ?? true;
    expect((await shop.raw("/plan")).status).toBe(404);
  });

  // As after a restore of a backup from before there were any: the server looked for an owner when it started.
  test("nothing is open where others reach the server", async () => {
    const secure = await shopServer({ config: { address: "192.0.2.10", cert: "c.pem", key: "k.pem", names: ["shop.example"] } });
    const headers = { host: "shop.example:4780" };
    expect(await (await secure.raw("/api/session", { headers })).json()).toMatchObject({ state: "signed out", role: null });
    expect((await secure.raw("/api/balls", { headers })).status).toBe(401);
    const body = JSON.stringify({ signInName: "Anybody", role: "owner", password: NEW });
    const json = { ...headers, "content-type": "application/json", origin: "https://shop.example:4780" };
    expect((await secure.raw(`/api/people/${secure.by}/sign-in`, { method: "POST", headers: json, body })).status).toBe(401);
    await secure.end();
  });

  test("what wants a session says that there is none", async () => {
    const body = { ownPassword: "x", password: NEW };
    expect(kind(await shop.ask("setOwnPassword", { body }))).toBe("409 notNow");
    expect(kind(await shop.ask("takeOver", { body: { personId: shop.by, pin: "7302" } }))).toBe("409 notNow");
    expect((await shop.ask("takers")).body.items).toEqual([]);
  });
});

describe("signing in", () => {
  beforeEach(withPeople);

  test("gives a cookie that no script and no other site has, on this machine without encryption", async () => {
    const [cookie] = (await trySignIn(shop, " Owner ", PASSWORDS.owner)).headers.getSetCookie();
    expect(cookie).toMatch(/^gritwright-session=[A-Za-z0-9_-]{43}; /);
    expect(cookie.split("; ").slice(1).sort()).toEqual([
      "HttpOnly",
      expect.stringMatching(/^Max-Age=6047[89]\d$/),
      "Path=/",
      "SameSite=Strict",
    ]);
  });

  test("a wrong name and a wrong password are told alike, a 401 says what is wanted", async () => {
    const [name, word] = [await trySignIn(shop, "nobody", PASSWORDS.owner), await trySignIn(shop, "owner", "wrong all the way")];
    expect([name.status, await name.text()]).toEqual([word.status, await word.text()]);
    expect(name.status).toBe(403);
    expect((await shop.raw("/api/balls")).headers.get("www-authenticate")).toContain("Session");
  });

  test("after too many vain tries says how long to wait", async () => {
    for (let i = 0; i < 12; i++) await trySignIn(shop, "owner", "wrong all the way");
    const waits = await trySignIn(shop, "owner", PASSWORDS.owner);
    expect([waits.status, ((await waits.json()) as { type: string }).type]).toEqual([429, problemType("waitFirst")]);
    expect(Number(waits.headers.get("retry-after"))).toBeGreaterThan(0);
  });

  test("ends the session that the browser had; signing out ends this one and takes the cookie away", async () => {
    const before = await cookieOf(shop, "counter");
    const response = await shop.raw("/api/session", {
      method: "POST",
      headers: { "content-type": "application/json", cookie: before },
      body: JSON.stringify({ signInName: "reader", password: PASSWORDS.reader }),
    });
    const cookie = cookieIn(response);
    expect(kind(await shop.ask("listBalls", { headers: { cookie: before } }))).toBe("401 notSignedIn");
    const out = await shop.ask("signOut", { headers: { cookie } });
    expect(out.headers.getSetCookie()[0]).toMatch(/^gritwright-session=; Max-Age=0; /);
    expect(kind(await shop.ask("listBalls", { headers: { cookie } }))).toBe("401 notSignedIn");
  });

  test("nothing of what opens a door is in any answer or in the log", async () => {
    const cookie = await cookieOf(shop, "owner");
    await trySignIn(shop, "owner", "wrong all the way");
    for (const path of ["sign-ins", "sessions", "session", "people", "audit", "export", "openapi.json", "metrics", "session/people"]) {
      const response = await shop.raw(`/api/${path}`, { headers: { cookie, ...again(PASSWORDS.owner) } });
      expect(response.status, path).toBe(200);
      const text = Buffer.from(await response.arrayBuffer()).toString("latin1");
      expect(text, path).not.toMatch(/argon2id\$|"(password|pin|token)Hash"/);
      for (const secret of [PASSWORDS.owner, cookie.split("=")[1]]) expect(text.includes(secret), path).toBe(false);
    }
    expect(shop.logged.length).toBeGreaterThan(9);
    expect(shop.logged.join("")).not.toMatch(/herons|wrong all|owner|gritwright-session/);
  });

  test("a password that is refused is not sent back", async () => {
    const cookie = await cookieOf(shop, "owner");
    const body = { ownPassword: PASSWORDS.owner, password: "Password123" };
    const refused = await shop.ask("setOwnPassword", { headers: { cookie }, body });
    expect(kind(refused)).toBe("422 invalid");
    expect(JSON.stringify(refused.body)).not.toMatch(/Password123|herons/);
  });
});

describe("a session", () => {
  beforeEach(withPeople);

  test("says who acts; a page that writes for somebody else is refused, since another tab has changed the person", async () => {
    const cookie = await cookieOf(shop, "technician");
    const house = (headers: Record<string, string>) =>
      shop.ask("createHouse", { body: { name: "Nowhere Lanes" }, headers: { cookie, ...headers } });
    const made = await house({});
    expect((await shop.records.audit.list({ where: { thingId: made.body.id } })).items).toMatchObject([{ by: ids.technician }]);
    expect((await house({ [PERSON_HEADER]: ids.technician })).status).toBe(201);
    expect(kind(await house({ [PERSON_HEADER]: ids.owner }))).toBe("409 otherPerson");
    expect((await shop.ask("listHouses", { headers: { cookie, [PERSON_HEADER]: ids.owner } })).status).toBe(200);
  });

  test("is seen and ended by its person, anybody's by an owner; its event stream ends with it", async () => {
    const [owner, counter] = [await cookieOf(shop, "owner"), await cookieOf(shop, "counter")];
    const { items } = (await shop.ask("listSessions", { headers: { cookie: counter } })).body;
    expect(items).toMatchObject([{ personId: ids.counter, address: "this process" }]);
    const all = (await shop.ask("listSessions", { headers: { cookie: owner } })).body.items;
    expect(all.length).toBe(2);
    const owners = all.find(({ personId }: { personId: string }) => personId === ids.owner);
    expect(kind(await shop.ask("endSession", { params: { id: owners.id }, headers: { cookie: counter } }))).toBe("404 notFound");
    const stream = (await shop.raw("/api/queue/events", { headers: { cookie: counter } })).body?.getReader();
    await stream?.read();
    expect((await shop.ask("endSession", { params: { id: items[0].id }, headers: { cookie: owner } })).status).toBe(204);
    for (let ended = false; !ended; ) ended = (await stream?.read())?.done ?? true;
    expect(kind(await shop.ask("queue", { headers: { cookie: counter } }))).toBe("401 notSignedIn");
    expect((await shop.ask("queue", { headers: { cookie: owner } })).status).toBe(200);
  });

  test("one's own password wants the old one, ends one's other sessions, and this one goes on", async () => {
    const [here, there] = [await cookieOf(shop, "reader"), await cookieOf(shop, "reader")];
    const set = (ownPassword: string) => shop.ask("setOwnPassword", { headers: { cookie: here }, body: { ownPassword, password: NEW } });
    expect(kind(await set("not the old one"))).toBe("403 wrongSecret");
    expect((await set(PASSWORDS.reader)).status).toBe(200);
    expect(kind(await shop.ask("listBalls", { headers: { cookie: there } }))).toBe("401 notSignedIn");
    expect((await shop.ask("listBalls", { headers: { cookie: here } })).status).toBe(200);
    expect((await trySignIn(shop, "reader", NEW)).status).toBe(201);
  });

  test("an owner resets a password with the own one, and the person's sessions end", async () => {
    const [owner, counter] = [await cookieOf(shop, "owner"), await cookieOf(shop, "counter")];
    const reset = (ownPassword?: string) =>
      shop.ask("changeSignIn", {
        params: { id: ids.counter },
        headers: { cookie: owner },
        body: { password: NEW, ...(ownPassword === undefined ? {} : { ownPassword }) },
      });
    expect(kind(await reset())).toBe("403 wrongSecret");
    expect((await reset(PASSWORDS.owner)).status).toBe(200);
    expect(kind(await shop.ask("listBalls", { headers: { cookie: counter } }))).toBe("401 notSignedIn");
    expect(
      (await shop.ask("closeSignIn", { params: { id: ids.counter }, headers: { cookie: owner, ...again(PASSWORDS.owner) } })).status,
    ).toBe(204);
    expect((await trySignIn(shop, "counter", NEW)).status).toBe(403);
    expect(kind(await shop.ask("closeSignIn", { params: { id: ids.owner }, headers: { cookie: owner, ...again(PASSWORDS.owner) } }))).toBe(
      "422 invalid",
    );
  });

  test("a PIN changes the person at the counter; five wrong ones, and the password is needed", async () => {
    const technician = await cookieOf(shop, "technician");
    const own = { ownPassword: PASSWORDS.technician, pin: "7302" };
    expect((await shop.ask("setOwnPin", { headers: { cookie: technician }, body: own })).body.hasPin).toBe(true);
    let cookie = await cookieOf(shop, "counter");
    expect((await shop.ask("takers", { headers: { cookie } })).body.items).toEqual([{ personId: ids.technician, pinIsOff: false }]);
    const take = (pin: string) => shop.ask("takeOver", { headers: { cookie }, body: { personId: ids.technician, pin } });
    const taken = await take("7302");
    expect(taken.body).toMatchObject({ state: "signed in", personId: ids.technician, role: "technician" });
    expect(kind(await shop.ask("queue", { headers: { cookie } }))).toBe("401 notSignedIn");
    cookie = await cookieOf(shop, "counter");
    for (let i = 0; i < 5; i++) expect(kind(await take("0937"))).toBe("403 wrongSecret");
    expect(kind(await take("7302"))).toBe("403 pinOff");
    const nobody = await shop.ask("takeOver", { body: { personId: ids.technician, pin: "7302" } });
    expect(kind(nobody)).toBe("401 notSignedIn");
  });

  test("is renewed in use, also with an answer that is a refusal", async () => {
    const { recognise } = shop.records.accounts;
    const cookie = await cookieOf(shop, "reader");
    const token = "x".repeat(43);
    Object.assign(shop.records.accounts, {
      recognise: async (given: string) => {
        const known = await recognise(given);
        return known === null ? null : { ...known, renewed: token };
      },
    });
    for (const [path, status] of [
      ["/api/balls", 200],
      ["/api/balls/none", 404],
      ["/api/settings", 200],
      ["/api/payments", 403],
    ] as const) {
      const response = await shop.raw(path, { headers: { cookie } });
      expect([response.status, cookieIn(response)]).toEqual([status, `gritwright-session=${token}`]);
    }
  });
});

describe("an event stream", () => {
  // Another server of the same shop may have ended the session: nothing tells this one.
  test("looks with every beat whether its listener may still be here", async () => {
    vi.useFakeTimers({ toFake: ["setInterval", "clearInterval"] });
    const streams = eventStreams(2, 2, () => {});
    let isIn = true;
    const server = new Hono().get("/", (context) =>
      streams.open(context, { session: null, isStillIn: async () => isIn }, (_send, signal) => ended(signal)),
    );
    const stream = (await server.request("/")).body?.getReader();
    vi.advanceTimersByTime(15_000);
    expect((await stream?.read())?.done).toBe(false);
    expect(streams.count()).toBe(1);
    isIn = false;
    vi.advanceTimersByTime(15_000);
    for (let over = false; !over; ) over = (await stream?.read())?.done ?? true;
    vi.useRealTimers();
    expect(streams.count()).toBe(0);
  });
});

describe("encrypted", () => {
  test("the cookie belongs to this host alone and browsers are told to come encrypted only; other names and plain pages are refused", async () => {
    const config = { address: "192.0.2.10", cert: "c.pem", key: "k.pem", names: ["shop.example"] };
    const secure = await shopServer({ config });
    await peopleOfEveryRole(secure);
    const headers = { "content-type": "application/json", host: "shop.example:4780", origin: "https://shop.example:4780" };
    const body = JSON.stringify({ signInName: "owner", password: PASSWORDS.owner });
    const response = await secure.raw("/api/session", { method: "POST", headers, body });
    const [cookie] = response.headers.getSetCookie();
    expect(cookie).toMatch(/^__Host-gritwright-session=/);
    expect(cookie.split("; ").slice(1).sort()).toEqual([
      "HttpOnly",
      expect.stringMatching(/^Max-Age=6047[89]\d$/),
      "Path=/",
      "SameSite=Strict",
      "Secure",
    ]);
    expect(response.headers.get("strict-transport-security")).toBe("max-age=31536000");
    const asked = async (change: Record<string, string>) =>
      (await secure.raw("/api/session", { method: "POST", headers: { ...headers, ...change }, body })).status;
    expect(await asked({ origin: "http://shop.example:4780" })).toBe(403);
    expect(await asked({ host: "other.example:4780" })).toBe(421);
    expect(await asked({ host: "192.0.2.10:4780", origin: "https://192.0.2.10:4780" })).toBe(201);
    // The name without the prefix is no session where the connection is encrypted.
    const plain = cookieIn(response).replace("__Host-", "");
    expect((await secure.raw("/api/balls", { headers: { host: "shop.example", cookie: plain } })).status).toBe(401);
    await secure.end();
  });
});

describe("the metrics", () => {
  test("count requests by route and status, and end as OpenMetrics does", async () => {
    await withPeople();
    const cookie = await cookieOf(shop, "owner");
    await shop.raw("/api/balls/one", { headers: { cookie } });
    await shop.raw("/api/balls/two", { headers: { cookie } });
    await shop.raw("/api/balls/two", { method: "BREW", headers: { cookie } });
    const response = await shop.raw("/api/metrics", { headers: { cookie } });
    expect(response.headers.get("content-type")).toBe("application/openmetrics-text; version=1.0.0; charset=utf-8");
    const text = await response.text();
    expect(text).toContain('gritwright_requests_total{method="GET",route="/api/balls/:id",status="404"} 2\n');
    expect(text).toContain('gritwright_request_duration_seconds_bucket{method="GET",route="/api/balls/:id",le="+Inf"} 2\n');
    expect(text).toContain('method="other"');
    expect(text).not.toMatch(/one|two|BREW/);
    expect(text).toMatch(/\ngritwright_event_streams 0\n/);
    expect(text).toMatch(/\n# EOF\n$/);
    for (const line of text.split("\n").filter((one) => one !== "" && !one.startsWith("#")))
      expect(line).toMatch(/^[a-z_]+(\{[a-z]+="[^"]*"(,[a-z]+="[^"]*")*\})? [0-9.e+-]+$/);
  });
});

describe("from the machine itself", () => {
  test("a password is set from the first line of what is given", async () => {
    await withPeople();
    const pieces = async function* () {
      yield "an entirely ";
      yield Buffer.from("new one\r\nand more\n");
    };
    const said = await setPasswordHere(shop.records, "counter", await firstLine(pieces()));
    expect(said).toContain("Invented counter signs in as counter");
    expect((await trySignIn(shop, "counter", NEW)).status).toBe(201);
  });
});

test.each([
  ["::ffff:192.0.2.7", "192.0.2.7"],
  ["192.0.2.7", "192.0.2.7"],
  ["fe80::1%eth0", "fe80:0:0:0::/64"],
  ["2001:db8:1:2:3:4:5:6", "2001:db8:1:2::/64"],
  ["::1", "0:0:0:0::/64"],
])("of the address %s %s is counted", (address, counted) => expect(networkOf(address)).toBe(counted));
