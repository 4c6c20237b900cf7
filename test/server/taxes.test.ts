import { afterAll, beforeAll, expect, test } from "vitest";
import { problemOf, type ShopServer, shopServer } from "./shopServer.ts";

/* Rates and rules of taxes over the wire: what was charged once is charged so for ever, and requests of 0.1.0 are understood. */

let shop: ShopServer;
beforeAll(async () => {
  shop = await shopServer();
});
afterAll(() => shop.end());

const AT = "2026-05-31T18:00:00.000Z";
const visit = async (body: object) => (await shop.ask("createVisit", { body: { arrivedAt: AT, currency: "EUR", ...body } })).body;
const account = async (id: string) => (await shop.ask("account", { params: { id } })).body;
async function settle(body: object) {
  const { version } = (await shop.ask("getSettings")).body;
  return shop.ask("changeSettings", { body, headers: { "if-match": `"${version}"` } });
}

test("a visit keeps the rules that it was made under: settings that change later change no bill", async () => {
  const charges = [999, 999, 999].map((eachCents) => ({ what: "Refresh", eachCents, taxMillipercent: 8250 }));
  const before = await visit({ charges });
  // 2997 × 0.0825 = 247.25
  const asMade = {
    taxCents: 247,
    totalCents: 3244,
    taxRounding: "bill",
    taxIncluded: "no",
    taxes: [{ taxMillipercent: 8250, cents: 247 }],
  };
  expect(await account(before.id)).toMatchObject(asMade);
  expect((await settle({ taxRounding: "line" })).body).toMatchObject({ taxRounding: "line", taxIncluded: "no" });
  // 999 × 0.0825 = 82.42, three times 82
  expect(await account((await visit({ charges })).id)).toMatchObject({ taxCents: 246, totalCents: 3243, taxRounding: "line" });
  await settle({ taxRounding: "bill", taxIncluded: "yes" });
  const held = await visit({ charges: [{ what: "Refresh", eachCents: 2380, taxMillipercent: 19_000 }] });
  // 2380 × 19 / 119 = 380
  expect(await account(held.id)).toMatchObject({ linesCents: 2380, taxCents: 380, totalCents: 2380, taxIncluded: "yes" });
  expect(await account(before.id)).toMatchObject(asMade);
  const note = { params: { id: before.id }, body: { note: "In a hurry" }, headers: { "if-match": `"${before.version}"` } };
  expect((await shop.ask("changeVisit", note)).body).toMatchObject({ taxRounding: "bill", taxIncluded: "no" });
  await settle({ taxIncluded: "no" });
});

test("a request may still say taxPermille, in thousandths of the price; answers say taxMillipercent", async () => {
  const price = (
    await shop.ask("createPrice", { body: { name: "Refresh", eachCents: 2000, currency: "EUR", taxPermille: 80, from: "2026-01-01" } })
  ).body;
  expect(price.taxMillipercent).toBe(8000);
  expect(price).not.toHaveProperty("taxPermille");
  const made = await visit({ charges: [{ what: "Refresh", eachCents: 2000, taxPermille: 80 }] });
  expect(made.charges[0].taxMillipercent).toBe(8000);
  expect((await account(made.id)).totalCents).toBe(2160);
  const change = { params: { id: made.id }, headers: { "if-match": `"${made.version}"` } };
  const changed = await shop.ask("changeVisit", { ...change, body: { charges: [{ what: "Polish", eachCents: 500, taxPermille: 190 }] } });
  expect(changed.body.charges[0].taxMillipercent).toBe(19_000);
  expect((await settle({ taxPermille: 70 })).body.taxMillipercent).toBe(7000);
  const ball = (await shop.ask("createBall", { body: { name: "Grey Heron", cover: "solid" } })).body;
  const told = { ballId: ball.id, finish: "2000", what: "Sand", way: "hand, dry", doneAt: AT, whereTo: "handed back" };
  const beside = await shop.ask("keepLaneSide", {
    body: { ...told, charge: { what: "By hand", eachCents: 500, taxPermille: 80 } },
    headers: { "idempotency-key": "beside" },
  });
  expect((await account(beside.body.visitId)).totalCents).toBe(540);
});

test("a tax that is not allowed is refused, and so are both keys at once", async () => {
  const price = { name: "Refresh", eachCents: 2000, currency: "EUR", from: "2026-01-01" };
  const refused = async (body: object) => problemOf(await shop.ask("createPrice", { body: { ...price, ...body } }), "invalid").problems;
  expect(await refused({ taxMillipercent: 8250.5 })).toMatchObject([
    { path: "taxMillipercent", value: 8250.5, allowed: "a whole number, 0 ≤ x ≤ 100000 thousandths of a percent" },
  ]);
  expect(await refused({ taxPermille: "8" })).toMatchObject([{ path: "taxMillipercent", value: "8" }]);
  expect(await refused({ taxPermille: 80, taxMillipercent: 8000 })).toMatchObject([{ path: "taxPermille" }]);
});
