import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { RecordsFault } from "#contract/records/fault";
import { STEPS } from "#records/database/migrations/steps";
import { openRecords } from "#records/openRecords";
import { addShop } from "#records/shop";
import { uuid7Source } from "#records/uuid7";
import { HOW_TO_GET_ONE, type TestPostgres, testPostgres } from "./postgres.ts";
import { databaseOf, onTheCounter, refusal, type TestShop, testShop } from "./shop.ts";

const postgres = await testPostgres();
afterAll(() => postgres?.stop());

it(postgres === null ? `PostgreSQL was left out: ${HOW_TO_GET_ONE}` : "PostgreSQL is there", () => {
  // On a build machine the second database may not be left out.
  expect(postgres !== null || process.env.CI !== "true").toBe(true);
});

const ENGINES: readonly [string, TestPostgres | null][] = [
  ["SQLite", null],
  ...(postgres === null ? [] : ([["PostgreSQL", postgres]] as [string, TestPostgres][])),
];

describe.each(ENGINES)("on %s", (_, server) => {
  let shop: TestShop;
  beforeAll(async () => {
    shop = await testShop(server === null ? {} : { postgres: await server.newDatabase() });
  });
  afterAll(() => shop.end());

  it("a new shop has settings and one person, and they are the same after a restart", async () => {
    const { records } = shop;
    const before = await records.settings.get();
    expect(before).toMatchObject({ version: 1, shopName: "My shop", data: "real" });
    expect(await records.health()).toMatchObject({ schema: STEPS.at(-1)?.name });
    expect(before.id).toBe(before.shopId);
  });

  it("what is written is read again; what is not known is null", async () => {
    const { records } = shop;
    const { bowler, ball, ticket } = await onTheCounter(shop);
    expect(await records.bowlers.get(bowler.id)).toEqual(bowler);
    expect(bowler).toMatchObject({ version: 1, email: null, deliveries: [] });
    expect((await records.balls.list({ where: { bowlerId: bowler.id } })).items).toEqual([ball]);
    expect(ticket).toMatchObject({ state: "received", bowlerId: bowler.id });
  });

  it("what nobody knows of a ball stays so, and what was said in words is kept as the words", async () => {
    const { records } = shop;
    const by = { by: shop.by };
    const at = "2026-05-04T10:00:00.000Z";
    const ball = await records.balls.create({ name: "Marl Fox", games: [{ at, games: 0, word: "a season" }] }, by);
    expect(await records.balls.get(ball.id)).toMatchObject({
      cover: null,
      boxFinish: null,
      surface: [],
      games: [{ games: 0, word: "a season" }],
    });
    const told = { at, how: "word only" as const, speed: "slow" as const, plays: "farther in" as const };
    const bowler = await records.bowlers.create({ name: "Ossian Reedmace", deliveries: [told] }, by);
    expect((await records.bowlers.get(bowler.id)).deliveries).toMatchObject([{ ...told, hook: null, speedMph: null }]);
    const visit = await records.visits.create({ bowlerId: bowler.id, arrivedAt: at, currency: "USD" }, by);
    const playedOn = { houseId: null, patternId: null, pattern: "the usual" as const, night: "thursday" as const };
    const ticket = await records.tickets.create({ visitId: visit.id, ballId: ball.id, receivedAt: at, scratches: "deep", playedOn }, by);
    expect(await records.tickets.get(ticket.id)).toMatchObject({ scratches: "deep", playedOn });
  });

  it("bad fields are refused, each with its path, value and what is allowed, and nothing is kept", async () => {
    const { records, by } = shop;
    const fault = await refusal<RecordsFault>(records.balls.create({ name: "", cover: "rubber" as "solid", core: { massLb: -3 } }, { by }));
    expect(fault.kind).toBe("refused");
    expect(fault.problems.map(({ path }) => path).sort()).toEqual(["core.massLb", "cover", "name"]);
    expect(fault.problems.find(({ path }) => path === "core.massLb")).toMatchObject({ value: -3, allowed: "0 < x ≤ 50 lb" });
  });

  it("references lead to things that are kept", async () => {
    const { records, by } = shop;
    const nowhere = "01a212ff-0dbb-7019-8194-f8c36330a1c2";
    const fault = await refusal<RecordsFault>(records.balls.create({ name: "Stray", cover: "pearl", bowlerId: nowhere }, { by }));
    expect(fault.problems).toMatchObject([{ path: "bowlerId", value: nowhere }]);
    expect((await refusal<RecordsFault>(records.people.create({ name: "X", initials: "X" }, { by: nowhere }))).problems[0].path).toBe("by");
  });

  it("of two people who change one ticket, the second is told, with the ticket as it stands", async () => {
    const { records, by } = shop;
    const { ticket } = await onTheCounter(shop);
    const first = await records.tickets.change(ticket.id, { findings: "Track is worn" }, { by, expectedVersion: 1 });
    const fault = await refusal<RecordsFault>(records.tickets.change(ticket.id, { findings: "Oil" }, { by, expectedVersion: 1 }));
    expect(fault).toMatchObject({ kind: "changedMeanwhile", current: first });
    expect((await records.tickets.get(ticket.id)).findings).toBe("Track is worn");
  });

  it("twenty changes at once on one version: one is kept", async () => {
    const { records, by } = shop;
    const { ball } = await onTheCounter(shop);
    const all = await Promise.allSettled(
      Array.from({ length: 20 }, (_, i) => records.balls.change(ball.id, { notes: `note ${i}` }, { by, expectedVersion: 1 })),
    );
    expect(all.filter(({ status }) => status === "fulfilled")).toHaveLength(1);
    expect((await records.balls.get(ball.id)).version).toBe(2);
  });

  it("sixty stock movements at once all count", { timeout: 60_000 }, async () => {
    const { records, by } = shop;
    const item = await records.stockItems.create({ name: "Pad 1000", kind: "pad", unit: "uses" }, { by });
    const at = "2026-05-31T18:00:00.000Z";
    const movements = Array.from({ length: 60 }, async (_, i) => {
      // In six rows, as six people would.
      await new Promise((resolve) => setTimeout(resolve, (i % 10) * 40));
      return records.stockMovements.create({ stockItemId: item.id, at, change: 0.1, why: "delivered" }, { by });
    });
    await Promise.all(movements);
    expect((await records.stockItems.get(item.id)).quantity).toBe(6);
  });

  it("a stage that is done takes what it used from the stock, or nothing of it is kept", async () => {
    const { records, by } = shop;
    const { ticket } = await onTheCounter(shop);
    const item = await records.stockItems.create({ name: "Pad 2000", kind: "pad", unit: "uses" }, { by });
    const doneAt = "2026-05-31T19:00:00.000Z";
    const stage = { ticketId: ticket.id, personId: by, initials: "T", doneAt, what: "2000, wet" };
    const done = await records.stagesDone.create({ ...stage, used: [{ stockItemId: item.id, quantity: 1 }] }, { by });
    expect((await records.stockItems.get(item.id)).quantity).toBe(-1);
    expect((await records.stockMovements.list({ where: { stageDoneId: done.id } })).items).toMatchObject([{ change: -1, why: "used" }]);
    const before = await records.stagesDone.list({ where: { ticketId: ticket.id } });
    const nowhere = "01a212ff-0dbb-7019-8194-f8c36330a1c2";
    const used = [
      { stockItemId: item.id, quantity: 1 },
      { stockItemId: nowhere, quantity: 1 },
    ];
    await refusal(records.stagesDone.create({ ...stage, used }, { by }));
    expect((await records.stockItems.get(item.id)).quantity).toBe(-1);
    expect(await records.stagesDone.list({ where: { ticketId: ticket.id } })).toEqual(before);
  });

  it("a ticket moves as work does, remembers where it has been, and what was signed becomes the ball's finish", async () => {
    const { records, by } = shop;
    const { ticket, ball } = await onTheCounter(shop);
    expect((await refusal<RecordsFault>(records.tickets.move(ticket.id, "ready", { by, expectedVersion: 1 }))).problems[0]).toMatchObject({
      path: "state",
      value: "ready",
      allowed: "waiting for approval, in work, warranty hold, cancelled",
    });
    await records.tickets.move(ticket.id, "in work", { by, expectedVersion: 1 });
    const cut = { kind: "cut", abrasive: "pad-1000" } as const;
    const planned = await records.tickets.change(ticket.id, { finishAfter: "2000", stages: [cut] }, { by, expectedVersion: 2 });
    const signed = { ticketId: ticket.id, personId: by, initials: "T", doneAt: "2026-05-31T18:30:00.000Z", ...cut };
    await records.stagesDone.create({ ...signed, stageId: planned.stages[0].id, revision: planned.revision }, { by });
    const ready = await records.tickets.move(ticket.id, "ready", { by, expectedVersion: 3 });
    expect(ready.been.map(({ state }) => state)).toEqual(["received", "in work", "ready"]);
    // The wish was 2000; 1000 is what was signed.
    expect((await records.balls.get(ball.id)).surface).toMatchObject([{ who: "shop", finish: "1000", ticketId: ticket.id }]);
  });

  it("a ticket that is made ready with nothing signed says nothing of the ball's finish", async () => {
    const { records, by } = shop;
    const { ticket, ball } = await onTheCounter(shop);
    await records.tickets.change(
      ticket.id,
      { finishAfter: "2000", stages: [{ kind: "cut", abrasive: "pad-2000" }] },
      { by, expectedVersion: 1 },
    );
    await records.tickets.move(ticket.id, "in work", { by, expectedVersion: 2 });
    await records.tickets.move(ticket.id, "ready", { by, expectedVersion: 3 }, "Sanded elsewhere");
    expect((await records.balls.get(ball.id)).surface).toEqual([]);
  });

  it("each plan of a ticket names its stages anew, whatever is sent; the same plan sent again keeps its names", async () => {
    const { records, by } = shop;
    const { ticket } = await onTheCounter(shop);
    const plan = (number: number) => [
      { id: "0-0", kind: "clean" as const },
      { id: "0-1", kind: "cut" as const, abrasive: `pad-${number}` },
    ];
    const ids = async (number: number, expectedVersion: number) => {
      const { stages, revision } = await records.tickets.change(ticket.id, { stages: plan(number) }, { by, expectedVersion });
      return [revision, ...stages.map(({ id }) => id)];
    };
    expect(await ids(1000, 1)).toEqual([1, "1-0", "1-1"]);
    expect(await ids(1000, 2)).toEqual([1, "1-0", "1-1"]);
    expect(await ids(2000, 3)).toEqual([2, "2-0", "2-1"]);
    await records.tickets.change(ticket.id, { complaint: "Hooks early" }, { by, expectedVersion: 4 });
    expect((await records.tickets.get(ticket.id)).revision).toBe(2);
  });

  it("a signature is taken back once, by an entry of its own, and what it used comes back into the stock", async () => {
    const { records, by } = shop;
    const { ticket } = await onTheCounter(shop);
    const other = await records.tickets.create({ visitId: ticket.visitId, ballId: ticket.ballId, receivedAt: ticket.receivedAt }, { by });
    const item = await records.stockItems.create({ name: "Pads 1000", kind: "pad", number: 1000, unit: "uses" }, { by });
    const entry = { personId: by, initials: "T", doneAt: "2026-05-31T18:30:00.000Z" };
    const used = [{ stockItemId: item.id, quantity: 1 }];
    const signed = await records.stagesDone.create({ ...entry, ticketId: ticket.id, kind: "cut", abrasive: "pad-1000", used }, { by });
    expect((await records.stockItems.get(item.id)).quantity).toBe(-1);
    const back = { ...entry, takesBack: signed.id, signs: false, note: "wrong ball" };
    expect((await refusal<RecordsFault>(records.stagesDone.create({ ...back, ticketId: other.id }, { by }))).problems).toMatchObject([
      { path: "takesBack" },
    ]);
    await records.stagesDone.create({ ...back, ticketId: ticket.id }, { by });
    expect((await records.stockItems.get(item.id)).quantity).toBe(0);
    expect((await refusal<RecordsFault>(records.stagesDone.create({ ...back, ticketId: ticket.id }, { by }))).problems).toMatchObject([
      { path: "takesBack" },
    ]);
  });

  it("no work on a ball that is stopped", async () => {
    const { records, by } = shop;
    const { ticket } = await onTheCounter(shop);
    const stop = { at: "2026-05-31T18:05:00.000Z", why: "Crack at the thumb hole" };
    await records.tickets.change(ticket.id, { stops: [stop] }, { by, expectedVersion: 1 });
    const fault = await refusal<RecordsFault>(records.tickets.move(ticket.id, "in work", { by, expectedVersion: 2 }));
    expect(fault.problems[0].allowed).toBe("waiting for approval, warranty hold, cancelled");
    await records.tickets.move(ticket.id, "warranty hold", { by, expectedVersion: 2 });
  });

  it("a retry with its key gets the first answer and never pays twice", async () => {
    const { records, by } = shop;
    const { visit } = await onTheCounter(shop);
    const once = { key: "till-7", route: "POST /payments", bodyHash: "a".repeat(64) };
    const payment = {
      visitId: visit.id,
      at: "2026-05-31T20:00:00.000Z",
      kind: "payment",
      cents: 2500,
      currency: "USD",
      method: "cash",
    } as const;
    const answers = await Promise.all([1, 2, 3, 4].map(() => records.payments.create(payment, { by, once })));
    expect(new Set(answers.map(({ id }) => id)).size).toBe(1);
    expect((await records.payments.list({ where: { visitId: visit.id } })).items).toHaveLength(1);
    const other = records.payments.create({ ...payment, cents: 1 }, { by, once: { ...once, bodyHash: "b".repeat(64) } });
    expect((await refusal<RecordsFault>(other)).kind).toBe("keyReused");
  });

  it("no more is given back than was paid", async () => {
    const { records, by } = shop;
    const { visit } = await onTheCounter(shop);
    const at = "2026-05-31T20:00:00.000Z";
    const money = { visitId: visit.id, at, currency: "USD", method: "card" } as const;
    const paid = await records.payments.create({ ...money, kind: "payment", cents: 2000 }, { by });
    const back = { ...money, kind: "refund", refundOf: paid.id } as const;
    await records.payments.create({ ...back, cents: 1500 }, { by });
    const fault = await refusal<RecordsFault>(records.payments.create({ ...back, cents: 501 }, { by }));
    expect(fault.problems).toMatchObject([{ path: "cents", value: 501, allowed: "1 ≤ x ≤ 500 cents, what is left of the payment" }]);
  });

  it("several writes as one: all or none", async () => {
    const { records, by } = shop;
    const before = (await records.bowlers.list({ limit: 500 })).items.length;
    const failing = records.together({ by }, async (within) => {
      await within.bowlers.create({ name: "Nobody Stays" }, { by });
      throw new Error("the counter fell over");
    });
    await expect(failing).rejects.toThrow("the counter fell over");
    expect((await records.bowlers.list({ limit: 500 })).items).toHaveLength(before);
  });

  it("lists go on from page to page, and only by what is indexed", async () => {
    const { records, by } = shop;
    const house = await records.houses.create({ name: "Invented Lanes" }, { by });
    for (let number = 1; number <= 5; number += 1) await records.lanes.create({ houseId: house.id, number }, { by });
    const seen: number[] = [];
    for (let after: string | null | undefined; after !== null; ) {
      const page: Awaited<ReturnType<typeof records.lanes.list>> = await records.lanes.list({
        where: { houseId: house.id },
        limit: 2,
        after: after ?? null,
      });
      seen.push(...page.items.map(({ number }) => number));
      after = page.next;
    }
    expect(seen).toEqual([5, 4, 3, 2, 1]);
    expect((await refusal<RecordsFault>(records.lanes.list({ where: { number: 1 } as never }))).kind).toBe("refused");
    for (const limit of [0, 501, 2.5]) {
      expect((await refusal<RecordsFault>(records.lanes.list({ limit }))).problems[0]).toMatchObject({ path: "limit", value: limit });
      expect((await refusal<RecordsFault>(records.audit.list({ limit }))).kind).toBe("refused");
    }
  });

  it("a house with lanes stays, one without goes", async () => {
    const { records, by } = shop;
    const house = await records.houses.create({ name: "Invented Bowl" }, { by });
    const lane = await records.lanes.create({ houseId: house.id, number: 1 }, { by });
    const asMade = { by, expectedVersion: 1 };
    expect((await refusal<RecordsFault>(records.houses.remove(house.id, asMade))).problems[0].allowed).toBe(
      "a thing that nothing else refers to",
    );
    await records.lanes.remove(lane.id, asMade);
    await records.houses.remove(house.id, asMade);
    expect((await refusal<RecordsFault>(records.houses.get(house.id))).kind).toBe("notFound");
  });

  it("the audit trail says who, when, what, and nothing that was written", async () => {
    const { records, by } = shop;
    const { bowler } = await onTheCounter(shop);
    await records.bowlers.change(bowler.id, { notes: "Moved to Thursdays" }, { by, expectedVersion: 1 });
    const { items } = await records.audit.list({ where: { thingId: bowler.id } });
    expect(items).toMatchObject([
      { by, did: "change", kind: "bowlers", fields: ["notes"] },
      { by, did: "create", kind: "bowlers" },
    ]);
    expect(JSON.stringify(items)).not.toMatch(/Thursdays|Sandgrouse|\(555\)/);
  });

  it("finds by the beginning of a name, by a serial or its end, by a number or its end", async () => {
    const { records, by } = shop;
    const bowler = await records.bowlers.create({ name: "Žofie von Mühlbach", phone: "0555 01 77 42" }, { by });
    const ball = await records.balls.create({ name: "Kestrel", serial: "ZK 90-1188/7", cover: "hybrid", bowlerId: bowler.id }, { by });
    for (const words of ["zof", "mühl", "muhlbach ž", "von zofie", "555 017742", "7742"])
      expect(
        (await records.search.find(words)).bowlers.map(({ id }) => id),
        words,
      ).toContain(bowler.id);
    for (const words of ["zk9011887", "ZK-90", "1887", "kestr"])
      expect(
        (await records.search.find(words)).balls.map(({ id }) => id),
        words,
      ).toContain(ball.id);
    expect(await records.search.find("nobody of that name")).toEqual({ bowlers: [], balls: [] });
  });

  it("same as last time: the last finished work on the ball, with its stages in order", async () => {
    const { records, by } = shop;
    const { ticket, ball } = await onTheCounter(shop);
    expect(await records.search.lastTime(ball.id)).toBeNull();
    for (const what of ["500, wet", "1000, wet"])
      await records.stagesDone.create(
        { ticketId: ticket.id, personId: by, initials: "T", doneAt: "2026-05-31T19:00:00.000Z", what },
        { by },
      );
    await records.tickets.move(ticket.id, "in work", { by, expectedVersion: 1 });
    const ready = await records.tickets.move(ticket.id, "ready", { by, expectedVersion: 2 });
    const last = await records.search.lastTime(ball.id);
    expect(last?.ticket).toEqual(ready);
    expect(last?.stagesDone.map(({ what }) => what)).toEqual(["500, wet", "1000, wet"]);
  });

  it("two shops in one database share bowlers and balls, and see nothing else of each other", async () => {
    const { records, by, parts } = shop;
    const { bowler, ball, ticket, visit } = await onTheCounter(shop);
    const mine = bowler.shopId;
    const db = databaseOf(parts);
    const newId = uuid7Source(parts.now, parts.randomBytes);
    const theirs = await addShop({ db, engine: server === null ? "sqlite" : "postgres", chance: () => 0.5 }, "Theirs", {
      newId,
      now: parts.now,
    });
    await db.destroy();
    const other = await openRecords({ ...parts, shop: "Theirs" });
    const person = (await other.people.list()).items[0].id;
    expect((await other.settings.get()).id).toBe(theirs.id);
    expect(await other.bowlers.get(bowler.id)).toEqual(bowler);
    expect((await other.search.find("grey heron")).balls.map(({ id }) => id)).toContain(ball.id);
    expect((await refusal<RecordsFault>(other.tickets.get(ticket.id))).kind).toBe("notFound");
    expect((await other.visits.list()).items).toEqual([]);
    const strange = other.tickets.create({ visitId: visit.id, ballId: ball.id, receivedAt: "2026-05-31T18:00:00.000Z" }, { by: person });
    expect((await refusal<RecordsFault>(strange)).kind).toMatch(/refused|notFound/);
    // Each changes the ball, over the version it has seen; who made it does not change.
    const changed = await other.balls.change(ball.id, { notes: "Seen next door" }, { by: person, expectedVersion: 1 });
    expect(await records.balls.get(ball.id)).toEqual(changed);
    expect(changed.shopId).toBe(mine);
    expect((await refusal<RecordsFault>(other.houses.create({ name: "X" }, { by }))).problems[0].path).toBe("by");
    expect((await other.audit.list()).items.map(({ thingId }) => thingId)).toEqual([ball.id]);
    expect((await refusal<RecordsFault>(other.backups.path((await other.backups.make("asked")).name))).kind).toBe("refused");
    await other.close();
    // Which of the two is opened must be said from now on.
    expect((await refusal<RecordsFault>(openRecords(parts))).problems[0].path).toBe("shop");
    expect((await refusal<RecordsFault>(openRecords({ ...parts, shop: "Nobody's" }))).kind).toBe("notFound");
    const again = await openRecords({ ...parts, shop: mine });
    expect(await again.settings.get()).toEqual(await records.settings.get());
    await again.close();
  });

  it("those who watch are told of what has been kept, not of what has failed", async () => {
    const { records, by } = shop;
    const told: string[] = [];
    const stop = records.watch(({ kind }) => told.push(kind));
    await records.houses.create({ name: "Watched" }, { by });
    await refusal(
      records.together({ by }, async (within) => {
        await within.houses.create({ name: "Unseen" }, { by });
        throw new Error("no");
      }),
    );
    stop();
    expect(told).toEqual(["houses"]);
  });
});
