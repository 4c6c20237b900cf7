import { unzipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { PNG } from "../records/pictures.ts";
import { onTheCounter } from "../records/shop.ts";
import { problemOf, type ShopServer, shopServer } from "./shopServer.ts";

let shop: ShopServer;
let counter: Awaited<ReturnType<typeof onTheCounter>>;
beforeAll(async () => {
  shop = await shopServer();
  counter = await onTheCounter(shop);
});
afterAll(() => shop.end());

const AT = "2026-05-31T18:00:00.000Z";
const key = (value: string) => ({ "idempotency-key": value });

describe("a ticket", () => {
  test("moves on as its states allow, by the version that was seen; what is not allowed is told with what is", async () => {
    const params = { id: counter.ticket.id };
    const move = (to: string, version: number) => shop.ask("moveTicket", { params, body: { to }, headers: { "if-match": `"${version}"` } });
    expect((await move("in work", 1)).body.state).toBe("in work");
    const [problem] = problemOf(await move("collected", 2), "notNow").problems ?? [];
    expect(problem).toMatchObject({ path: "state", value: "collected" });
    expect(problem.allowed).toContain("drying");
    expect(problemOf(await move("ready", 1), "changedMeanwhile").current).toMatchObject({ state: "in work", version: 2 });
    const stages = [{ kind: "cut", abrasive: "pad-1000" }];
    const planned = await shop.ask("changeTicket", { params, body: { finishAfter: "1000", stages }, headers: { "if-match": '"2"' } });
    const [{ id: stageId }] = planned.body.stages;
    await shop.ask("createStageDone", {
      body: { ticketId: counter.ticket.id, personId: shop.by, initials: "T", doneAt: AT, stageId, revision: 1, ...stages[0] },
    });
    const ready = await move("ready", 3);
    expect(ready.body.been.map(({ state }: { state: string }) => state)).toEqual(["received", "in work", "ready"]);
    problemOf(await move("shining", 4), "invalid");
  });

  test("its ball remembers the finish, and what was done last time is found in one question", async () => {
    const params = { id: counter.ball.id };
    expect((await shop.ask("getBall", { params })).body.surface.at(-1)).toMatchObject({ finish: "1000", who: "shop" });
    const { last } = (await shop.ask("lastTime", { params })).body;
    expect([last.ticket.id, last.stagesDone.map(({ abrasive }: { abrasive: string }) => abrasive)]).toEqual([
      counter.ticket.id,
      ["pad-1000"],
    ]);
    const fresh = await shop.ask("createBall", { body: { name: "Amber Curlew", cover: "pearl" } });
    expect((await shop.ask("lastTime", { params: { id: fresh.body.id } })).body).toEqual({ last: null });
    problemOf(await shop.ask("lastTime", { params: { id: counter.visit.id } }), "notFound");
  });

  test("is in the queue with the names that people look for, the soonest promise first", async () => {
    const promised = { visitId: counter.visit.id, ballId: counter.ball.id, receivedAt: AT, promisedFor: "2026-06-01T18:00:00.000Z" };
    const { body: soon } = await shop.ask("createTicket", { body: promised });
    const { items } = (await shop.ask("queue")).body;
    expect(items.map(({ ticket }: { ticket: { id: string } }) => ticket.id)).toEqual([soon.id, counter.ticket.id]);
    expect(items[0]).toMatchObject({ ballName: "Grey Heron", bowlerName: "Ottilie Sandgrouse" });
  });
});

describe("money", () => {
  test("what is owed follows from the bill, payments and refunds; a retry pays once; more is not given back than was paid", async () => {
    const { body: visit } = await shop.ask("createVisit", {
      body: { arrivedAt: AT, currency: "USD", charges: [{ what: "Refresh", eachCents: 2000, taxMillipercent: 8000 }], discountCents: 500 },
    });
    const params = { id: visit.id };
    // (2000 − 500) · 1.080 = 1620
    expect((await shop.ask("account", { params })).body).toMatchObject({
      totalCents: 1620,
      paidCents: 0,
      owedCents: 1620,
      currency: "USD",
    });
    const paid = { visitId: visit.id, at: AT, kind: "payment", cents: 1620, currency: "USD", method: "card" };
    const first = await shop.ask("createPayment", { body: paid, headers: key("pay-1") });
    await Promise.all([1, 2, 3].map(() => shop.ask("createPayment", { body: paid, headers: key('"pay-1"') })));
    expect((await shop.ask("account", { params })).body.owedCents).toBe(0);
    const refund = { ...paid, kind: "refund", refundOf: first.body.id, cents: 620 };
    await shop.ask("createPayment", { body: refund, headers: key("back-1") });
    expect((await shop.ask("account", { params })).body).toMatchObject({ paidCents: 1000, owedCents: 620 });
    problemOf(await shop.ask("createPayment", { body: { ...refund, cents: 1001 }, headers: key("back-2") }), "invalid");
    problemOf(await shop.ask("account", { params: { id: counter.ball.id } }), "notFound");
  });
});

describe("the shop", () => {
  test("settings are changed over the version that was seen, the others stay", async () => {
    const before = await shop.ask("getSettings");
    const changed = await shop.ask("changeSettings", {
      body: { shopName: "Paper Shop", taxMillipercent: 8000 },
      headers: { "if-match": before.headers.get("etag") ?? "" },
    });
    expect(changed.body).toMatchObject({
      ...before.body,
      shopName: "Paper Shop",
      taxMillipercent: 8000,
      version: 2,
      changedAt: changed.body.changedAt,
    });
    expect(
      problemOf(await shop.ask("changeSettings", { body: { zone: "Moon/Base" }, headers: { "if-match": '"2"' } }), "invalid").problems?.[0]
        .path,
    ).toBe("zone");
    problemOf(await shop.ask("changeSettings", { body: {}, headers: { "if-match": '"1"' } }), "changedMeanwhile");
  });

  test("bowlers and balls are found by name, serial and telephone", async () => {
    for (const words of ["sandgr", "0101234"]) expect((await shop.ask("search", { query: { words } })).body.bowlers).toHaveLength(1);
    expect((await shop.ask("search", { query: { words: "qx7731" } })).body.balls).toHaveLength(1);
    expect(problemOf(await shop.ask("search", { query: { words: " " } }), "invalid").problems?.[0].path).toBe("words");
  });

  test("the trail says who did what, and no more", async () => {
    const { items } = (await shop.ask("listAudit", { query: { kind: "tickets", thingId: counter.ticket.id, order: "oldest first" } })).body;
    expect(items.map(({ did }: { did: string }) => did)).toEqual(["create", "move", "change", "move"]);
    expect(JSON.stringify(items)).not.toMatch(/hooks early/i);
  });

  test("health says how it is; the description is OpenAPI", async () => {
    expect((await shop.ask("health")).body).toEqual({
      state: "well",
      version: "0.0.0-test",
      invented: false,
      lastBackup: "none",
      lostFiles: 0,
      unreadable: 0,
      mayWrite: true,
    });
    expect((await shop.ask("describe")).body.openapi).toMatch(/^3\.1\./);
  });
});

describe("copies", () => {
  test("a backup is made, listed, read through, and taken away; one that is not there is not found", async () => {
    const { body: made } = await shop.ask("makeBackup");
    expect((await shop.ask("listBackups")).body.items).toEqual([made]);
    const params = { name: made.name };
    expect((await shop.ask("verifyBackup", { params })).body.counts).toMatchObject({ bowlers: 1 });
    const file = await shop.ask("backupBytes", { params });
    expect(file.bytes.length).toBe(made.bytes);
    for (const name of ["verifyBackup", "backupBytes"] as const)
      problemOf(await shop.ask(name, { params: { name: "none.zip" } }), "notFound");
  });

  test("everything comes out as JSON and as tables", async () => {
    const files = unzipSync((await shop.ask("exportAll")).bytes);
    expect(Object.keys(files)).toEqual(expect.arrayContaining(["everything.json", "bowlers.csv", "payments.csv"]));
    expect(new TextDecoder().decode(files["bowlers.csv"])).toContain("Ottilie Sandgrouse");
  });

  test("a list is looked at, taken in, and taken out again; a retry takes it in once", async () => {
    const body = { kind: "bowlers", csv: "Name,Phone\nEdda Mossgrove,555-0110\nDov Inkpenny,555-0111\n" };
    expect((await shop.ask("previewImport", { body })).body).toMatchObject({ rows: 2, problems: [] });
    const done = await shop.ask("applyImport", { body, headers: key("list-1") });
    expect((await shop.ask("applyImport", { body, headers: key("list-1") })).body).toEqual(done.body);
    expect((await shop.ask("search", { query: { words: "Mossgrove" } })).body.bowlers).toHaveLength(1);
    expect((await shop.ask("undoImport", { params: { id: done.body.importId } })).body).toEqual({ takenOut: 2 });
    problemOf(await shop.ask("undoImport", { params: { id: counter.ball.id } }), "notFound");
    problemOf(await shop.ask("previewImport", { body: { ...body, kind: "shoes" } }), "invalid");
  });
});

describe("a bowler's own data", () => {
  test("come out with the photos, are erased everywhere, and the work stays", async () => {
    const params = { id: counter.bowler.id };
    await shop.ask("createPhoto", {
      query: { of: "condition", ballId: counter.ball.id },
      body: new Uint8Array(PNG),
      headers: { "content-type": "image/png" },
    });
    const out = await shop.ask("exportPersonalData", { params });
    const files = unzipSync(out.bytes);
    expect(new TextDecoder().decode(files["bowler.json"])).toContain("Ottilie Sandgrouse");
    expect(Object.keys(files).filter((name) => name.startsWith("photos/"))).toHaveLength(1);
    expect((await shop.ask("erasePersonalData", { params })).body.stillIn).toMatchObject([{ kind: "backup", goneBy: null }]);
    expect((await shop.ask("getBowler", { params })).body).toMatchObject({ phone: null, notes: "" });
    expect((await shop.ask("getTicket", { params: { id: counter.ticket.id } })).body.state).toBe("ready");
    for (const name of ["exportPersonalData", "erasePersonalData"] as const)
      problemOf(await shop.ask(name, { params: { id: counter.ball.id } }), "notFound");
  });
});

test("every stage signed on a ball is told in the order of the work, whichever ticket it was for", async () => {
  const { visit, ball, ticket } = counter;
  const sign = (ticketId: string, what: string, doneAt: string) =>
    shop.ask("createStageDone", { body: { ticketId, personId: shop.by, initials: "T", doneAt, what } });
  const other = (await shop.ask("createTicket", { body: { visitId: visit.id, ballId: ball.id, receivedAt: AT } })).body;
  await sign(other.id, "Later", "2026-06-02T10:00:00.000Z");
  await sign(ticket.id, "Earlier", "2026-05-30T10:00:00.000Z");
  const { items } = (await shop.ask("ballStagesDone", { params: { id: ball.id } })).body;
  const told = items.map(({ what }: { what: string }) => what);
  expect([told[0], told.at(-1)]).toEqual(["Earlier", "Later"]);
  problemOf(await shop.ask("ballStagesDone", { params: { id: visit.id } }), "notFound");
});

test("what is signed on the queue's tickets comes in one answer, and as each ticket's own list has it", async () => {
  const { items: queued } = (await shop.ask("queue")).body;
  const { items } = (await shop.ask("queueStagesDone")).body;
  const ids = (entries: readonly { id: string }[]) => entries.map(({ id }) => id).toSorted();
  const own = [];
  for (const { ticket } of queued)
    own.push(...(await shop.ask("listStagesDone", { query: { ticketId: ticket.id, limit: "200" } })).body.items);
  expect(items.length).toBeGreaterThan(1);
  expect(ids(items)).toEqual(ids(own));
  const times = items.map(({ doneAt }: { doneAt: string }) => doneAt);
  expect(times).toEqual(times.toSorted());
});

test("whose balls are due by their games is told with name and number, the balls on the counter left out", async () => {
  const bowler = (await shop.ask("createBowler", { body: { name: "Wilma Sandpiper", phone: "555 0144" } })).body;
  const used = { cover: "solid", surface: [{ at: "2026-01-01T00:00:00.000Z", who: "shop", finish: "1000" }], bowlerId: bowler.id };
  const games = (count: number) => [{ at: "2026-02-01T00:00:00.000Z", games: count }];
  const [due, , here] = [
    (await shop.ask("createBall", { body: { ...used, name: "Old Gull", games: games(90) } })).body,
    (await shop.ask("createBall", { body: { ...used, name: "Young Gull", games: games(1) } })).body,
    (await shop.ask("createBall", { body: { ...used, name: "Gull Here", games: games(95) } })).body,
  ];
  await shop.ask("createTicket", { body: { visitId: counter.visit.id, ballId: here.id, receivedAt: AT } });
  const { items, of } = (await shop.ask("dueBalls")).body;
  expect(of).toBe(1);
  expect(items).toMatchObject([{ bowlerId: bowler.id, bowlerName: "Wilma Sandpiper", phone: "555 0144" }]);
  expect(items[0].balls).toMatchObject([{ ball: { id: due.id }, games: 90 }]);
});
