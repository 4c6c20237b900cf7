import { afterAll, beforeAll, expect, test } from "vitest";
import { onTheCounter } from "../records/shop.ts";
import { problemOf, type ShopServer, shopServer } from "./shopServer.ts";

let shop: ShopServer;
let counter: Awaited<ReturnType<typeof onTheCounter>>;
beforeAll(async () => {
  shop = await shopServer();
  counter = await onTheCounter(shop);
});
afterAll(() => shop.end());

const AT = "2026-05-31T17:40:00.000Z";
const told = { finish: "2000", what: "Sand", abrasive: "pad-2000", way: "hand, dry", doneAt: AT, whereTo: "handed back" };
const tell = (key: string, body: object) => shop.ask("keepLaneSide", { body: { ...told, ...body }, headers: { "idempotency-key": key } });

test("one request keeps visit, ticket, signed stage, stock and history; sent again it keeps nothing more", async () => {
  const { body: pad } = await shop.ask("createStockItem", { body: { name: "Pad 2000", kind: "pad", number: 2000, unit: "uses" } });
  const body = { ballId: counter.ball.id, used: [{ stockItemId: pad.id, quantity: 1 }], charge: { what: "By hand", eachCents: 500 } };
  const first = await tell("lane-1", body);
  expect([first.status, first.body.state, first.body.finishAfter]).toEqual([201, "collected", "2000"]);
  expect(first.headers.get("location")).toBe(`/api/tickets/${first.body.id}`);
  expect((await tell("lane-1", body)).body).toEqual(first.body);

  const ofBall = await shop.ask("listTickets", { query: { ballId: counter.ball.id, state: "collected" } });
  expect(ofBall.body.items).toHaveLength(1);
  const { items: signed } = (await shop.ask("listStagesDone", { query: { ticketId: first.body.id } })).body;
  expect(signed).toMatchObject([{ what: "Sand", way: "hand, dry", personId: shop.by, doneAt: AT }]);
  expect((await shop.ask("getStockItem", { params: { id: pad.id } })).body.quantity).toBe(-1);
  const { body: ball } = await shop.ask("getBall", { params: { id: counter.ball.id } });
  expect(ball.surface.at(-1)).toMatchObject({ finish: "2000", way: "hand, dry", at: AT, ticketId: first.body.id });
  const { body: account } = await shop.ask("account", { params: { id: first.body.visitId } });
  expect(account.owedCents).toBe(500);
});

test("a ball that was not found is made; one whose whole serial number is known is that ball", async () => {
  const fresh = (await tell("lane-2", { ballName: "Chalk Plover", serial: "LS-77001", whereTo: "stays in the shop" })).body;
  expect(fresh.state).toBe("ready");
  const again = (await tell("lane-3", { ballName: "chalk", serial: "ls-77001" })).body;
  expect(again.ballId).toBe(fresh.ballId);
  const other = (await tell("lane-4", { ballName: "Chalk Plover", serial: "77001" })).body;
  expect(other.ballId).not.toBe(fresh.ballId);
});

test("without a ball, a key or a known ball nothing is kept", async () => {
  const before = (await shop.ask("listVisits")).body.items.length;
  expect(problemOf(await tell("lane-5", {}), "invalid").problems).toMatchObject([{ path: "ballId" }]);
  problemOf(await shop.ask("keepLaneSide", { body: { ...told, ballId: counter.ball.id } }), "keyMissing");
  problemOf(await tell("lane-6", { ballId: counter.visit.id }), "notFound");
  expect(problemOf(await tell("lane-7", { ballId: counter.ball.id, way: "spinner, wet" }), "invalid").problems).toMatchObject([
    { path: "way" },
  ]);
  expect((await shop.ask("listVisits")).body.items).toHaveLength(before);
});
