import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type { Role } from "#contract/records/roles";
import { PASSWORD_HEADER } from "#contract/routes/route";
import { onTheCounter } from "../records/shop.ts";
import { problemOf, type ShopServer, shopServer } from "./shopServer.ts";
import { again, cookieIn, cookieOf, PASSWORDS, peopleOfEveryRole, trySignIn } from "./signedIn.ts";

/* What a short PIN and an open session are good for, what stands in the trail of it, and who is kept out by others' guessing. */

let shop: ShopServer;
let ids: Readonly<Record<Role, string>>;
beforeEach(async () => {
  shop = await shopServer();
  ids = await peopleOfEveryRole(shop);
});
afterEach(() => shop.end());

async function trail(): Promise<string[]> {
  return (await shop.records.audit.list({ limit: 100 })).items.map(({ did, by, thingId, fields }) => `${did} ${by} ${thingId} ${fields}`);
}

describe("what takes everything out, or ends what is kept,", () => {
  test("asks for the own password once more, and stands in the trail", async () => {
    const cookie = await cookieOf(shop, "owner");
    const { bowler } = await onTheCounter(shop);
    const { name } = await shop.records.backups.make("asked");
    const asks = [
      ["exportAll", {}, 200],
      ["backupBytes", { name }, 200],
      ["erasePersonalData", { id: bowler.id }, 200],
      ["closeSignIn", { id: ids.reader }, 204],
    ] as const;
    for (const [route, params, status] of asks) {
      problemOf(await shop.ask(route, { params, headers: { cookie } }), "passwordWanted");
      problemOf(await shop.ask(route, { params, headers: { cookie, ...again("not it at all") } }), "wrongSecret");
      expect((await shop.ask(route, { params, headers: { cookie, ...again(PASSWORDS.owner) } })).status, route).toBe(status);
    }
    const written = await trail();
    const settings = (await shop.records.settings.get()).id;
    expect(written).toEqual(
      expect.arrayContaining([
        `export ${ids.owner} ${settings} `,
        `take backup ${ids.owner} ${settings} `,
        `erase ${ids.owner} ${bowler.id} ${written.find((one) => one.startsWith("erase") && one.includes(bowler.id))?.split(" ")[3] ?? ""}`,
        `fail to sign in ${ids.owner} ${ids.owner} password`,
      ]),
    );
  });

  test("asks for nothing where the shop has no passwords", async () => {
    const open = await shopServer();
    expect((await open.ask("exportAll")).status).toBe(200);
    await open.end();
  });

  test("a password of any letters goes into the header", async () => {
    const password = "Möwen über dem Steg → €5";
    await shop.records.accounts.change(ids.owner, { password }, ids.owner);
    const cookie = cookieIn(await trySignIn(shop, "owner", password));
    expect((await shop.ask("exportAll", { headers: { cookie, ...again(password) } })).status).toBe(200);
    problemOf(await shop.ask("exportAll", { headers: { cookie, [PASSWORD_HEADER]: "%E0%A4%A" } }), "notRead");
  });
});

describe("a PIN", () => {
  test("gives no more than a technician may, whoever comes in by it, and however often", async () => {
    for (const who of ["owner", "technician", "reader"] as const) await shop.records.accounts.change(ids[who], { pin: "7302" }, ids.owner);
    const byPin = async (cookie: string, who: Role) => {
      const reply = await shop.raw("/api/session/person", {
        method: "POST",
        headers: { "content-type": "application/json", cookie },
        body: JSON.stringify({ personId: ids[who], pin: "7302" }),
      });
      expect(reply.status).toBe(200);
      return { cookie: cookieIn(reply), role: ((await reply.json()) as { role: Role }).role };
    };
    const first = await byPin(await cookieOf(shop, "technician"), "owner");
    expect(first.role).toBe("technician");
    expect((await shop.ask("whoAmI", { headers: { cookie: first.cookie } })).body.role).toBe("technician");
    problemOf(await shop.ask("listAudit", { headers: { cookie: first.cookie } }), "notForRole");
    problemOf(await shop.ask("exportAll", { headers: { cookie: first.cookie, ...again(PASSWORDS.owner) } }), "notForRole");
    // The owner's own session, handed on by PIN and back again, is no more than a PIN's either.
    const back = await byPin((await byPin(await cookieOf(shop, "owner"), "technician")).cookie, "owner");
    expect(back.role).toBe("technician");
    expect((await byPin(back.cookie, "reader")).role).toBe("reader");
    expect((await shop.ask("listAudit", { headers: { cookie: await cookieOf(shop, "owner") } })).status).toBe(200);
  });

  test.each([
    ["on a list", ["2580", "1379", "147258", "159753", "14725836"]],
    [
      "mirrored, of two runs, counted, or a way over the keys",
      ["1331", "123321", "123654", "789456", "43211234", "246810", "1478", "5896321"],
    ],
    ["a year", ["1984", "2026"]],
    ["a day and a month", ["0602", "3112", "1231"]],
    ["a whole date", ["020684", "840602", "19840602", "02061984", "12311999"]],
    ["repeated", ["1111", "1212", "123123", "12341234", "1122", "223344"]],
    ["a run", ["1234", "9876", "2468", "8901", "987654"]],
  ])("that is %s is refused, in a sentence that does not quote it", async (_, pins) => {
    const cookie = await cookieOf(shop, "owner");
    for (const pin of pins) {
      const reply = await shop.ask("setOwnPin", { body: { ownPassword: PASSWORDS.owner, pin }, headers: { cookie } });
      const [problem] = problemOf(reply, "invalid").problems ?? [];
      expect(problem.message).toContain("not among the first to be guessed");
      expect(JSON.stringify(reply.body)).not.toContain(pin);
    }
    for (const pin of ["7302", "4937", "840366", "58260374"])
      expect((await shop.ask("setOwnPin", { body: { ownPassword: PASSWORDS.owner, pin }, headers: { cookie } })).status, pin).toBe(200);
  });
});

describe("vain tries", () => {
  test("stand in the trail: whose name it was, and never what was typed", async () => {
    await trySignIn(shop, "owner", "a guess of somebody");
    await trySignIn(shop, "nobody of that name", "another guess");
    const cookie = await cookieOf(shop, "counter");
    await shop.records.accounts.change(ids.technician, { pin: "7302" }, ids.owner);
    await shop.ask("takeOver", { body: { personId: ids.technician, pin: "7303" }, headers: { cookie } });
    const settings = (await shop.records.settings.get()).id;
    const written = await trail();
    expect(written).toEqual(
      expect.arrayContaining([
        `fail to sign in ${ids.owner} ${ids.owner} password`,
        `fail to sign in ${settings} ${settings} password`,
        `fail to sign in ${ids.technician} ${ids.technician} pin`,
        `change ${ids.owner} ${ids.technician} pin`,
      ]),
    );
    expect(written.join()).not.toMatch(/guess|7303|nobody of/);
  });

  test("of others keep nobody out who comes with a device that was known before", async () => {
    const came = await trySignIn(shop, "owner", PASSWORDS.owner);
    const device = came.headers.getSetCookie().find((cookie) => cookie.startsWith("gritwright-device=")) ?? "";
    expect(device).toMatch(/; HttpOnly/);
    expect(device).toMatch(/; SameSite=Strict/);
    const [known] = device.split(";");
    const from = (cookie: string, name: string, password: string) =>
      shop.raw("/api/session", {
        method: "POST",
        headers: { "content-type": "application/json", cookie },
        body: JSON.stringify({ signInName: name, password }),
      });
    // Until the name waits, and the address that all of them come from.
    for (let i = 0; i < 60; i += 1) await from("", i % 8 === 0 ? "owner" : `name ${i}`, "a guess of somebody");
    expect((await from("", "owner", PASSWORDS.owner)).status).toBe(429);
    expect((await from("", "technician", PASSWORDS.technician)).status).toBe(429);
    expect((await from(known, "owner", PASSWORDS.owner)).status).toBe(201);
    // It is known for its own person alone, as it was signed, and by its own tries it waits as well.
    expect((await from(known, "technician", PASSWORDS.technician)).status).toBe(429);
    expect((await from(`${known}x`, "owner", PASSWORDS.owner)).status).toBe(429);
    const own = [];
    for (let i = 0; i < 8; i += 1) own.push((await from(known, "owner", "a guess of somebody")).status);
    expect(own).toContain(429);
    // A new password makes it unknown.
    await shop.records.accounts.change(ids.owner, { password: "eight herons under the jetty" }, ids.owner);
    expect((await from(known, "owner", "eight herons under the jetty")).status).toBe(429);
  });

  test("of somebody outside do not keep an owner from confirming with the password", async () => {
    const cookie = await cookieOf(shop, "owner");
    for (let i = 0; i < 40; i += 1) await trySignIn(shop, "owner", "a guess of somebody");
    expect((await shop.ask("exportAll", { headers: { cookie, ...again(PASSWORDS.owner) } })).status).toBe(200);
  });
});
