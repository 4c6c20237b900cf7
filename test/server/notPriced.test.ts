import { afterAll, beforeAll, expect, test } from "vitest";
import { problemOf, type ShopServer, shopServer } from "./shopServer.ts";

/* Work that is handed over without a price is taken so, and stands in the open balances until it is charged or free for a reason. */

let shop: ShopServer;
let ballId: string;
beforeAll(async () => {
  shop = await shopServer();
  ballId = (await shop.ask("createBall", { body: { name: "Grey Heron", cover: "solid" } })).body.id;
});
afterAll(() => shop.end());

const AT = "2026-05-31T18:00:00.000Z";
const newVisit = async (body: object = {}) => (await shop.ask("createVisit", { body: { arrivedAt: AT, currency: "USD", ...body } })).body;
const newTicket = async (visitId: string, body: object = {}) =>
  (await shop.ask("createTicket", { body: { visitId, ballId, receivedAt: AT, ...body } })).body;
const changeVisit = async (id: string, body: object) => {
  const { version } = (await shop.ask("getVisit", { params: { id } })).body;
  return shop.ask("changeVisit", { params: { id }, body, headers: { "if-match": `"${version}"` } });
};
async function moved(id: string, ...states: readonly string[]) {
  for (const to of states) {
    const { version } = (await shop.ask("getTicket", { params: { id } })).body;
    const answer = await shop.ask("moveTicket", { params: { id }, body: { to }, headers: { "if-match": `"${version}"` } });
    expect([answer.status, answer.body.state]).toEqual([200, to]);
  }
}
const missed = async (id: string) => (await shop.ask("account", { params: { id } })).body.notPriced;
const open = async () =>
  (await shop.ask("listAccounts", { query: { state: "open" } })).body.items.map(
    ({ visit, account }: { visit: { id: string }; account: { owedCents: number; notPriced: { ticketId: string }[] } }) => [
      visit.id,
      account.owedCents,
      account.notPriced.map(({ ticketId }) => ticketId),
    ],
  );

test("a ball that is handed over without a price stands among the accounts, by its name, until it is charged", async () => {
  const visit = await newVisit();
  const ticket = await newTicket(visit.id);
  await moved(ticket.id, "in work");
  expect(await missed(visit.id)).toEqual([]);
  await moved(ticket.id, "ready", "collected");
  expect(await missed(visit.id)).toEqual([{ ticketId: ticket.id, ballName: "Grey Heron", state: "collected" }]);
  expect(await open()).toContainEqual([visit.id, 0, [ticket.id]]);
  await changeVisit(visit.id, { charges: [{ what: "Refresh", ticketId: ticket.id, eachCents: 2000 }] });
  expect(await open()).toContainEqual([visit.id, 2000, []]);
});

test("of two balls the one without a line is missed; free needs a reason, and then owes nothing", async () => {
  const visit = await newVisit();
  const charged = await newTicket(visit.id);
  const gift = await newTicket(visit.id);
  await changeVisit(visit.id, { charges: [{ what: "Refresh", ticketId: charged.id, eachCents: 2000 }] });
  for (const { id } of [charged, gift]) await moved(id, "in work", "ready");
  expect(await missed(visit.id)).toMatchObject([{ ticketId: gift.id, state: "ready" }]);
  expect(problemOf(await changeVisit(visit.id, { free: [{ ticketId: gift.id, why: " " }] }), "invalid").problems).toMatchObject([
    { path: "free[0].why" },
  ]);
  expect((await changeVisit(visit.id, { free: [{ ticketId: gift.id, why: "Won at the open day" }] })).status).toBe(200);
  expect(await missed(visit.id)).toEqual([]);
});

test("work done again is free by itself; so is what a line for the whole visit covers", async () => {
  const visit = await newVisit({ charges: [{ what: "Both balls", eachCents: 3000 }] });
  const first = await newTicket(visit.id);
  await moved(first.id, "in work", "ready", "collected");
  const again = await newVisit();
  const rework = await newTicket(again.id, { reworkOf: first.id });
  await moved(rework.id, "in work", "ready", "collected");
  expect([await missed(visit.id), await missed(again.id)]).toEqual([[], []]);
});

test("work beside the lane: charged it is owed, free with a reason it is closed, with neither it stays open and is missed", async () => {
  const told = { ballId, finish: "2000", what: "Sand", way: "hand, dry", doneAt: AT, whereTo: "handed back" };
  const tell = async (key: string, body: object) => {
    const { visitId } = (await shop.ask("keepLaneSide", { body: { ...told, ...body }, headers: { "idempotency-key": key } })).body;
    return (await shop.ask("getVisit", { params: { id: visitId } })).body;
  };
  const charged = await tell("a", { charge: { what: "By hand", eachCents: 500 } });
  const free = await tell("b", { freeWhy: "A league of ours" });
  const later = await tell("c", {});
  expect([charged.state, free.state, later.state]).toEqual(["open", "closed", "open"]);
  expect(free.free).toMatchObject([{ why: "A league of ours" }]);
  expect(await missed(charged.id)).toEqual([]);
  expect(await missed(free.id)).toEqual([]);
  expect(await missed(later.id)).toMatchObject([{ ballName: "Grey Heron", state: "collected" }]);
});

test("a tip is kept beside what is paid: the balance and the takings do not have it", async () => {
  const visit = await newVisit({ charges: [{ what: "Refresh", eachCents: 2000 }] });
  const payment = { visitId: visit.id, at: AT, kind: "payment", cents: 2000, currency: "USD", method: "card" };
  const pay = (key: string, body: object) =>
    shop.ask("createPayment", { body: { ...payment, ...body }, headers: { "idempotency-key": key } });
  const paid = (await pay("tip", { tipCents: 300 })).body;
  expect(paid).toMatchObject({ cents: 2000, tipCents: 300 });
  expect((await shop.ask("account", { params: { id: visit.id } })).body).toMatchObject({ paidCents: 2000, owedCents: 0 });
  const takings = async () => (await shop.ask("takings", { query: { from: "2026-05-31", to: "2026-05-31" } })).body;
  expect(await takings()).toMatchObject({ byWork: [{ name: "Refresh", cents: 2000 }], tipCents: 300 });
  const back = { kind: "refund", refundOf: paid.id, cents: 500 };
  expect(problemOf(await pay("too-much", { ...back, tipCents: 301 }), "invalid").problems).toMatchObject([
    { path: "tipCents", value: 301, allowed: "0 ≤ x ≤ 300 cents, what is left of the tip" },
  ]);
  await pay("back", { ...back, tipCents: 100 });
  expect(await takings()).toMatchObject({ byWork: [{ name: "Refresh", cents: 1500 }], tipCents: 200 });
});
