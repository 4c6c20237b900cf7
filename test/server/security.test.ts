import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { HOST, type ShopServer, shopServer } from "./shopServer.ts";

let shop: ShopServer;
beforeAll(async () => {
  shop = await shopServer({ limits: { bodyKb: 1, fileMb: 0.001 } });
});
afterAll(() => shop.end());

async function kind(path: string, init: RequestInit = {}): Promise<string> {
  const response = await shop.raw(path, init);
  const { type } = (await response.json()) as { type?: string };
  return `${response.status} ${type?.split(":").at(-1)}`;
}

const house = (headers: Record<string, string>): RequestInit => ({
  method: "POST",
  headers: { "content-type": "application/json", ...headers },
  body: '{"name":"Nowhere Lanes"}',
});

describe("who may ask", () => {
  test.each(["shop.example", "shop.example:4780", "127.0.0.1.nip.example", "localhost.example", "192.168.0.7:4780", "0.0.0.0"])(
    "nobody through the name %s",
    async (host) => expect(await kind("/api/health", { headers: { host } })).toBe("421 misdirected"),
  );

  test.each(["localhost:4780", "127.0.0.1:1", "[::1]:4780", "LOCALHOST"])("this machine through its own name %s", async (host) => {
    expect((await shop.raw("/api/health", { headers: { host } })).status).toBe(200);
  });

  test.each(["forwarded", "x-forwarded-for", "x-forwarded-host", "x-forwarded-proto", "x-real-ip", "via"])(
    "nobody through a proxy: %s",
    async (header) => expect(await kind("/api/health", { headers: { [header]: "127.0.0.1" } })).toBe("400 forwarded"),
  );

  test.each(["https://shop.example", "http://localhost:9999", `https://${HOST}`, "null"])("no page of %s may write", async (origin) => {
    expect(await kind("/api/houses", house({ origin }))).toBe("403 notFromHere");
  });

  test.each(["cross-site", "same-site"])("no %s request, be it to write or to read", async (site) => {
    expect(await kind("/api/houses", house({ "sec-fetch-site": site }))).toBe("403 notFromHere");
    expect(await kind("/api/bowlers", { headers: { "sec-fetch-site": site } })).toBe("403 notFromHere");
  });

  test("this server's own page may, and a program that is no browser", async () => {
    const own = house({ origin: `http://${HOST}`, "sec-fetch-site": "same-origin" });
    expect((await shop.raw("/api/houses", own)).status).toBe(201);
    expect((await shop.raw("/api/houses", house({}))).status).toBe(201);
  });

  test("a form of another page cannot write: its types of content are not taken", async () => {
    for (const type of ["text/plain", "application/x-www-form-urlencoded", "multipart/form-data"])
      expect(await kind("/api/houses", house({ "content-type": type }))).toBe("415 wrongType");
  });
});

describe("who acts", () => {
  test("is the shop's first person, or the one that is named; nobody else", async () => {
    const { body: person } = await shop.ask("createPerson", { body: { name: "Ansel Quillfeather", initials: "AQ" } });
    const made = await shop.ask("createHouse", { body: { name: "By Ansel" }, headers: { "x-gritwright-person": person.id } });
    const trail = (await shop.ask("listAudit", { query: { kind: "houses", thingId: made.body.id } })).body.items;
    expect(trail).toMatchObject([{ by: person.id, did: "create" }]);
    expect(await kind("/api/houses", house({ "x-gritwright-person": "somebody" }))).toBe("422 invalid");
    await shop.ask("changePerson", { params: { id: person.id }, body: { state: "has left" }, headers: { "if-match": '"1"' } });
    expect(await kind("/api/houses", house({ "x-gritwright-person": person.id }))).toBe("422 invalid");
    // Who has left must still be able to read who works here, and be another one.
    const { status, body } = await shop.ask("listPeople", { headers: { "x-gritwright-person": person.id } });
    expect([status, body.items.length]).toEqual([200, 2]);
  });

  test("is the first of all where everybody has left, so that nobody is locked out", async () => {
    const params = { id: shop.by };
    const left = await shop.ask("changePerson", { params, body: { state: "has left" }, headers: { "if-match": '"1"' } });
    expect((await shop.ask("createHouse", { body: { name: "Nowhere Lanes" } })).status).toBe(201);
    await shop.ask("changePerson", { params, body: { state: "works here" }, headers: { "if-match": left.headers.get("etag") ?? "" } });
  });
});

describe("what is sent", () => {
  test("no more than the limits", async () => {
    const body = JSON.stringify({ name: "Nowhere Lanes", notes: "x".repeat(1500) });
    expect(await kind("/api/houses", { ...house({}), body })).toBe("413 tooLarge");
    expect(await kind("/api/houses", { ...house({ "content-length": String(body.length) }), body })).toBe("413 tooLarge");
    const photo = { method: "POST", headers: { "content-type": "image/png" }, body: new Uint8Array(2000) };
    expect(await kind("/api/photos?of=other", photo)).toBe("413 tooLarge");
  });

  test.each(["{", "", "[1,2", "\ufeff{}x"])("no body that is no JSON: %j", async (body) => {
    expect(await kind("/api/houses", { ...house({}), body })).toBe("400 notRead");
  });

  test("no bytes that are no text", async () => {
    expect(await kind("/api/houses", { ...house({}), body: new Uint8Array([0x7b, 0xff, 0xfe]) })).toBe("400 notRead");
  });

  test.each(["7", '"seven"', 'W/"7"', "*", '"1", "2"'])("no If-Match but one of our ETags: %s", async (tag) => {
    const { body } = await shop.ask("createHouse", { body: { name: "Nowhere Lanes" } });
    const init = { ...house({ "if-match": tag }), method: "PATCH" };
    expect(await kind(`/api/houses/${body.id}`, init)).toBe("400 notRead");
  });

  test("keys that would reach into objects are refused like any unknown key", async () => {
    for (const body of ['{"name":"A","__proto__":{"polluted":1}}', '{"name":"A","constructor":{}}'])
      expect(await kind("/api/houses", { ...house({}), body })).toBe("422 invalid");
    expect(Reflect.get({}, "polluted")).toBeUndefined();
  });
});

describe("where it leads", () => {
  test.each(["../../etc/passwd", "..%2f..%2fetc%2fpasswd", "....//x", "%00", "shop.sqlite", "..\\..\\x"])(
    "no path out of its folder: %s",
    async (name) => {
      for (const [path, method] of [
        [`/api/backups/${encodeURIComponent(name)}`, "GET"],
        [`/api/backups/${encodeURIComponent(name)}/verify`, "POST"],
        [`/api/photos/${encodeURIComponent(name)}/bytes`, "GET"],
        [`/api/profile-files/${encodeURIComponent(name)}/bytes`, "GET"],
      ])
        expect(await kind(path, { method }), path).toMatch(/^(404 notFound|422 invalid)$/);
    },
  );

  test("an unknown route is told as a problem, a known one in a wrong way with what is allowed", async () => {
    expect(await kind("/api/nothing")).toBe("404 notFound");
    const wrong = await shop.raw("/api/houses", { method: "DELETE" });
    expect([wrong.status, wrong.headers.get("allow")]).toEqual([405, "GET, POST"]);
  });
});

describe("the log", () => {
  test("says which route, not what was looked for or written, nor by whom", async () => {
    const from = shop.logged.length;
    await shop.ask("createBowler", { body: { name: "Ottilie Sandgrouse", phone: "555-0101" } });
    await shop.ask("search", { query: { words: "Sandgrouse" } });
    await shop.raw("/api/Sandgrouse");
    await shop.ask("getBowler", { params: { id: "Sandgrouse" } });
    const lines = shop.logged.slice(from).map((line) => JSON.parse(line));
    expect(lines.map(({ method, route, status }) => `${method} ${route} ${status}`)).toEqual([
      "POST /api/bowlers 201",
      "GET /api/search 200",
      "GET * 404",
      "GET /api/bowlers/:id 404",
    ]);
    expect(shop.logged.join("")).not.toMatch(/sandgrouse|555-0101/i);
  });

  test("of what breaks its kind and place are logged, not its words; the asker is told nothing of it", async () => {
    const from = shop.logged.length;
    const { get } = shop.records.houses;
    Object.assign(shop.records.houses, { get: () => Promise.reject(new Error("Ottilie Sandgrouse, 555-0101")) });
    const response = await shop.raw("/api/houses/01890000-0000-7000-8000-000000000000");
    Object.assign(shop.records.houses, { get });
    expect([response.status, await response.text()]).toEqual([500, expect.not.stringContaining("Sandgrouse")]);
    const broken = JSON.parse(shop.logged[from]);
    expect(broken).toMatchObject({ level: "error", event: "broken", error: "Error" });
    expect(broken.at).toContain("security.test.ts");
    expect(shop.logged[from]).not.toContain("Sandgrouse");
  });
});
