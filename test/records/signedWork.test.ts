import fc from "fast-check";
import { afterAll, describe, expect, test } from "vitest";
import type { Ticket } from "#contract/records/ticket";
import { workOfTicket } from "#contract/records/ticketWork";
import { NO_FINDINGS } from "#engine/rules/stops";
import { finishText, parseFinish } from "#engine/surface/finish";
import { planStages } from "#engine/surface/stages";
import type { Records } from "#records/records";
import { testPostgres } from "./postgres.ts";
import { onTheCounter, refusal, type TestShop, testShop } from "./shop.ts";

/* Where a ticket stands, what its ball is and what has left the stock follow from what was signed, on every database. */

const postgres = await testPostgres();
afterAll(() => postgres?.stop());
const ENGINES = [["SQLite", null] as const, ...(postgres === null ? [] : [["PostgreSQL", postgres] as const])];

/** The stages that the program plans, as the page sends them. */
function stagesTo(wanted: string, oil: "clean" | "soaked" = "clean") {
  const ball = { cover: "solid", hardnessD: null, diameterIn: 8.55, finish: parseFinish("3000"), history: [], gamesSince: 60 } as const;
  const whole = { ...ball, raMicroinch: null, compared: null, trackWear: "none", plug: "none", oil } as const;
  return planStages(whole, parseFinish(wanted), NO_FINDINGS).stages.map(({ kind, abrasive, sideIds }) => ({
    kind,
    abrasive,
    sideIds: [...sideIds],
  }));
}

/** One stage that cuts, and a check of it. */
const SHORT = [{ kind: "cut" as const, abrasive: "pad-2000" }, { kind: "check" as const }];

interface Bench {
  readonly shop: TestShop;
  readonly ticket: Ticket;
  readonly padId: string;
}

async function onTheBench(shop: TestShop, stages: Parameters<Records["tickets"]["change"]>[1]["stages"]): Promise<Bench> {
  const { records, by } = shop;
  const { ticket } = await onTheCounter(shop);
  const pad = await records.stockItems.create({ name: "Invented pad", kind: "pad", unit: "uses" }, { by });
  return { shop, padId: pad.id, ticket: await records.tickets.change(ticket.id, { stages }, { by, expectedVersion: ticket.version }) };
}

const ofTicket = ({ shop: { records }, ticket }: Bench) => records.tickets.get(ticket.id);
const signedFor = async ({ shop: { records }, ticket }: Bench) =>
  (await records.stagesDone.list({ where: { ticketId: ticket.id }, order: "oldest first", limit: 500 })).items;

/** Signs what is next, with another pad where it is a cut, or says that a side of it is done. Gives what was written down; null where nothing is left. */
async function work(bench: Bench, { sidesDone, pad }: { readonly sidesDone?: readonly "grip"[]; readonly pad?: string } = {}) {
  const { shop, padId } = bench;
  const ticket = await ofTicket(bench);
  const { next } = workOfTicket(ticket, await signedFor(bench));
  if (next === null) return null;
  const { id: stageId, kind, sideIds } = next.stage;
  const abrasive = kind === "cut" ? (pad ?? next.stage.abrasive) : next.stage.abrasive;
  const used = sidesDone === undefined && kind === "cut" ? [{ stockItemId: padId, quantity: 1 }] : [];
  const what = { stageId, revision: ticket.revision, kind, abrasive, used, signs: sidesDone === undefined };
  return shop.records.stagesDone.create(
    { ...what, sidesDone: [...(sidesDone ?? sideIds)], ticketId: ticket.id, personId: shop.by, initials: "T", doneAt: timeOf(shop) },
    { by: shop.by },
  );
}

const timeOf = ({ parts }: TestShop) => new Date(parts.now()).toISOString();

function takeBack({ shop: { records, by, ...rest }, ticket }: Bench, takesBack: string) {
  const doneAt = timeOf({ records, by, ...rest });
  const entry = { ticketId: ticket.id, personId: by, initials: "T", doneAt, takesBack, signs: false, note: "not this ball" };
  return records.stagesDone.create(entry, { by });
}

const statesOf = ({ been }: Ticket) => been.map(({ state }) => state);

describe.each(ENGINES)("on %s, signing", (_, server) => {
  const open = async () => testShop(server === null ? {} : { postgres: await server.newDatabase() });

  test("the first stage puts the ticket in work, extraction to dry, the last stage makes it ready", async () => {
    const bench = await onTheBench(await open(), stagesTo("1000", "soaked"));
    const seen: [string, string][] = [];
    for (let one = await work(bench); one !== null; one = await work(bench)) seen.push([one.kind ?? "", (await ofTicket(bench)).state]);
    expect(seen).toContainEqual(["clean", "in work"]);
    expect(seen).toContainEqual(["extract", "drying"]);
    expect(seen).toContainEqual(["dryOff", "in work"]);
    expect(seen.at(-1)).toEqual(["check", "ready"]);
    const ticket = await ofTicket(bench);
    expect(statesOf(ticket)).toEqual(["received", "in work", "drying", "in work", "ready"]);
    expect(ticket.readyAt).toBe(ticket.been.at(-1)?.at);
    const { surface } = await bench.shop.records.balls.get(ticket.ballId);
    expect(surface.at(-1)).toMatchObject({ ticketId: ticket.id, finish: "1000", at: ticket.readyAt });
    await bench.shop.end();
  });

  test("what is taken back puts it back, and the ball's log no longer has that finish", async () => {
    const bench = await onTheBench(await open(), SHORT);
    const cut = await work(bench);
    const check = await work(bench);
    expect((await ofTicket(bench)).state).toBe("ready");
    await takeBack(bench, check?.id ?? "");
    expect(await ofTicket(bench)).toMatchObject({ state: "in work", readyAt: null });
    expect((await bench.shop.records.balls.get(bench.ticket.ballId)).surface).toEqual([]);
    await takeBack(bench, cut?.id ?? "");
    expect((await ofTicket(bench)).state).toBe("received");
    expect((await bench.shop.records.stockItems.get(bench.padId)).quantity).toBe(0);
    await bench.shop.end();
  });

  test("work of one stage was in work before it was ready", async () => {
    const bench = await onTheBench(await open(), SHORT.slice(1));
    await work(bench);
    expect(statesOf(await ofTicket(bench))).toEqual(["received", "in work", "ready"]);
    await bench.shop.end();
  });

  test("leaves a change made before it standing, but not one made before somebody else's", async () => {
    const bench = await onTheBench(await open(), SHORT);
    const { records, by } = bench.shop;
    const { id, version } = await ofTicket(bench);
    await work(bench);
    const told = await records.tickets.change(id, { complaint: "Hits weak" }, { by, expectedVersion: version });
    expect(told).toMatchObject({ complaint: "Hits weak", state: "in work", version: version + 2 });
    await work(bench);
    // Ready by the signature; and somebody has told something since the version that this is made on.
    expect(await refusal(records.tickets.change(id, { complaint: "–" }, { by, expectedVersion: version }))).toMatchObject({
      kind: "changedMeanwhile",
    });
    // Who says what the signature said already is not refused, and says it once.
    const moved = await records.tickets.move(id, "ready", { by, expectedVersion: told.version });
    expect(statesOf(moved)).toEqual(["received", "in work", "ready"]);
    await bench.shop.end();
  });

  test("on a stopped ticket is kept and moves nothing; on one that came back it is in work again", async () => {
    const bench = await onTheBench(await open(), SHORT);
    const { records, by } = bench.shop;
    const stops = [{ at: timeOf(bench.shop), why: "A crack." }];
    const stopped = await records.tickets.change(bench.ticket.id, { stops }, { by, expectedVersion: bench.ticket.version });
    await work(bench);
    expect([(await ofTicket(bench)).state, (await signedFor(bench)).length]).toEqual(["received", 1]);
    const cleared = [{ ...stops[0], clearedAt: timeOf(bench.shop) }];
    await records.tickets.change(stopped.id, { stops: cleared }, { by, expectedVersion: stopped.version });
    await work(bench);
    const back = await records.tickets.move(stopped.id, "rework", { by, expectedVersion: (await ofTicket(bench)).version });
    expect(workOfTicket(back, await signedFor(bench)).signed).toEqual([]);
    await work(bench);
    expect(statesOf(await ofTicket(bench)).slice(-2)).toEqual(["rework", "in work"]);
    await bench.shop.end();
  });

  test("is refused for a stage that is not in the plan, for a cut without what was used, and for a part of its sides as if it were the whole", async () => {
    const shop = await open();
    const bench = await onTheBench(shop, [{ kind: "cut", abrasive: "pad-2000", sideIds: ["grip", "opposite"] }]);
    const { id: ticketId, stages, revision } = await ofTicket(bench);
    const entry = {
      ticketId,
      revision,
      personId: shop.by,
      initials: "T",
      doneAt: timeOf(shop),
      kind: "cut" as const,
      abrasive: "pad-2000",
    };
    const sign = (more: object) => shop.records.stagesDone.create({ ...entry, stageId: stages[0].id, ...more }, { by: shop.by });
    const paths = async (more: object) =>
      (await refusal<{ readonly problems: readonly { readonly path: string }[] }>(sign(more))).problems.map(({ path }) => path);
    expect(await paths({ stageId: "9-9" })).toEqual(["stageId"]);
    expect(await paths({ abrasive: null })).toEqual(["abrasive"]);
    expect(await paths({ sidesDone: ["grip"] })).toEqual(["sidesDone"]);
    await sign({ sidesDone: ["opposite"], signs: false });
    await sign({ sidesDone: ["grip"] });
    expect((await ofTicket(bench)).state).toBe("ready");
    await shop.end();
  });

  test("a stage is signed once: a second device is told who signed it, the same request sent again is the same signature", async () => {
    const shop = await open();
    const bench = await onTheBench(shop, SHORT);
    const { id: ticketId, stages, revision } = await ofTicket(bench);
    const [{ id: stageId, kind, abrasive }] = stages;
    const entry = { ticketId, stageId, revision, kind, abrasive, personId: shop.by, initials: "AB", doneAt: timeOf(shop) };
    const once = { key: "sent from the bench", route: "createStageDone", bodyHash: "b" };
    const first = await shop.records.stagesDone.create(entry, { by: shop.by, once });
    expect(await refusal(shop.records.stagesDone.create({ ...entry, initials: "CD" }, { by: shop.by }))).toMatchObject({
      problems: [{ path: "stageId", allowed: expect.stringContaining("AB signed it") }],
    });
    expect(await shop.records.stagesDone.create(entry, { by: shop.by, once })).toEqual(first);
    expect(await signedFor(bench)).toHaveLength(1);
    await takeBack(bench, first.id);
    expect((await shop.records.stagesDone.create({ ...entry, initials: "CD" }, { by: shop.by })).initials).toBe("CD");
    // With another pad it is another cut, whoever signed before.
    await shop.records.stagesDone.create({ ...entry, abrasive: "pad-360" }, { by: shop.by });
    expect((await ofTicket(bench)).state).toBe("in work");
    await shop.end();
  });

  test("with another pad than planned leaves the ticket in work; that a side is begun, or cautions read, moves nothing", async () => {
    const shop = await open();
    const bench = await onTheBench(shop, [{ kind: "cut", abrasive: "pad-2000", sideIds: ["grip", "opposite"] }]);
    const { id: ticketId, stages, revision } = await ofTicket(bench);
    const entry = {
      ticketId,
      personId: shop.by,
      initials: "T",
      doneAt: timeOf(shop),
      stageId: stages[0].id,
      revision,
      kind: "cut" as const,
    };
    const create = (more: object) => shop.records.stagesDone.create({ ...entry, ...more }, { by: shop.by });
    const began = await create({ signs: false, began: { side: "grip", device: "bench tablet" } });
    await create({ signs: false, stageId: null, cautionsRead: ["spinner"] });
    expect(workOfTicket(await ofTicket(bench), await signedFor(bench)).next?.running?.id).toBe(began.id);
    expect((await ofTicket(bench)).state).toBe("received");
    await create({ abrasive: "pad-800", sidesDone: ["grip", "opposite"] });
    expect((await ofTicket(bench)).state).toBe("in work");
    // The sides are to be worked again: two of two are asked for.
    expect(await refusal(create({ abrasive: "pad-2000", sidesDone: ["grip"] }))).toMatchObject({ problems: [{ path: "sidesDone" }] });
    await create({ abrasive: "pad-2000", sidesDone: ["grip", "opposite"] });
    expect((await ofTicket(bench)).state).toBe("ready");
    await shop.end();
  });

  test("none, a ticket is ready only with a reason, which stays; planned anew it is no more ready", async () => {
    const bench = await onTheBench(await open(), SHORT);
    const { records, by } = bench.shop;
    const inWork = await records.tickets.move(bench.ticket.id, "in work", { by, expectedVersion: bench.ticket.version });
    const ready = (why: string) => records.tickets.move(inWork.id, "ready", { by, expectedVersion: inWork.version }, why);
    expect(await refusal(ready(""))).toMatchObject({ problems: [{ path: "why" }] });
    const { been, version, state } = await ready("Goes out as it is");
    expect([state, been.at(-1)?.why]).toEqual(["ready", "Goes out as it is"]);
    const anew = await records.tickets.change(inWork.id, { stages: stagesTo("1000") }, { by, expectedVersion: version });
    expect([anew.state, anew.readyAt]).toEqual(["in work", null]);
    await bench.shop.end();
  });

  test("work that is planned is charged by the price list, once, and not where it is free", async () => {
    const shop = await open();
    const { records, by } = shop;
    const usual = { currency: "USD", taxMillipercent: 0, from: "2026-01-01" };
    await records.prices.create({ name: "Refresh", work: "refresh", eachCents: 2000, ...usual }, { by });
    const bench = await onTheBench(shop, SHORT);
    const chargesOf = async () => (await records.visits.get(bench.ticket.visitId)).charges;
    expect((await chargesOf()).map(({ ticketId, eachCents }) => [ticketId, eachCents])).toEqual([[bench.ticket.id, 2000]]);
    await records.tickets.change(bench.ticket.id, { stages: stagesTo("1000") }, { by, expectedVersion: bench.ticket.version });
    expect(await chargesOf()).toHaveLength(1);
    const { ticket, visit } = await onTheCounter(shop);
    const free = [{ ticketId: ticket.id, why: "A present." }];
    await records.visits.change(visit.id, { free }, { by, expectedVersion: visit.version });
    await records.tickets.change(ticket.id, { stages: SHORT }, { by, expectedVersion: ticket.version });
    expect((await records.visits.get(visit.id)).charges).toEqual([]);
    await shop.end();
  });

  test("a bill is paid once, from however many counters at one time; nothing is promised for before it came", async () => {
    const shop = await open();
    const { records, by } = shop;
    const { visit } = await onTheCounter(shop);
    await records.visits.change(visit.id, { charges: [{ what: "Refresh", eachCents: 2000 }] }, { by, expectedVersion: visit.version });
    const pay = (cents: number) =>
      records.payments.create({ visitId: visit.id, at: timeOf(shop), kind: "payment", cents, currency: "USD", method: "cash" }, { by });
    const outcomes = await Promise.allSettled([pay(2000), pay(2000)]);
    expect(outcomes.map(({ status }) => status).sort()).toEqual(["fulfilled", "rejected"]);
    expect(await refusal(pay(1))).toMatchObject({ problems: [{ path: "cents", allowed: "nothing more: the bill is paid" }] });
    const early = { promisedFor: "2025-01-01T12:00:00.000Z" };
    const { version } = await records.visits.get(visit.id);
    expect(await refusal(records.visits.change(visit.id, early, { by, expectedVersion: version }))).toMatchObject({
      problems: [{ path: "promisedFor" }],
    });
    await shop.end();
  });

  test("the last ball that is handed over, paid for, closes its visit; money owed again, or a ball that comes back, opens it", async () => {
    const shop = await open();
    const { records, by } = shop;
    const { visit, ticket } = await onTheCounter(shop);
    const stateOf = async () => (await records.visits.get(visit.id)).state;
    const move = async (...to: readonly ("in work" | "ready" | "collected" | "rework")[]) => {
      for (const one of to)
        await records.tickets.move(ticket.id, one, { by, expectedVersion: (await records.tickets.get(ticket.id)).version });
    };
    const pay = (kind: "payment" | "refund", refundOf: string | null = null) =>
      records.payments.create(
        { visitId: visit.id, at: timeOf(shop), kind, cents: 2000, currency: "USD", method: "cash", refundOf },
        { by },
      );
    await move("in work", "ready", "collected");
    // Nobody has said what it costs.
    expect(await stateOf()).toBe("open");
    const charges = [{ what: "Refresh", ticketId: ticket.id, eachCents: 2000 }];
    await records.visits.change(visit.id, { charges }, { by, expectedVersion: (await records.visits.get(visit.id)).version });
    expect(await stateOf()).toBe("open");
    const payment = await pay("payment");
    expect(await stateOf()).toBe("closed");
    await move("rework");
    expect(await stateOf()).toBe("open");
    await move("in work", "ready", "collected");
    expect(await stateOf()).toBe("closed");
    await pay("refund", payment.id);
    expect(await stateOf()).toBe("open");
    const free = [{ ticketId: ticket.id, why: "It did not hold" }];
    const { version } = await records.visits.get(visit.id);
    const once = { key: "let off", route: "changeVisit", bodyHash: "b" };
    expect(await records.visits.change(visit.id, { charges: [], free }, { by, once, expectedVersion: version })).toMatchObject({
      state: "closed",
    });
    await shop.end();
  });

  const act = fc.oneof(
    { weight: 6, arbitrary: fc.constant({ do: "sign" } as const) },
    { weight: 2, arbitrary: fc.record({ do: fc.constant("plan" as const), wish: fc.constantFrom("500", "2000", "1000 + polish") }) },
    { weight: 2, arbitrary: fc.constant({ do: "side" } as const) },
    { weight: 1, arbitrary: fc.constant({ do: "other pad" } as const) },
    { weight: 2, arbitrary: fc.record({ do: fc.constant("take back" as const), which: fc.nat(20) }) },
    { weight: 1, arbitrary: fc.constant({ do: "power cut" } as const) },
    { weight: 1, arbitrary: fc.constant({ do: "come back" } as const) },
  );

  test("whatever is planned, signed, taken back and cut off: state, log of the ball and stock are those of what was signed", async () => {
    let shop = await open();
    await fc.assert(
      fc.asyncProperty(fc.array(act, { minLength: 5, maxLength: 25 }), async (acts) => {
        let bench = await onTheBench(shop, stagesTo("2000"));
        const reopened = async () => {
          shop = { ...shop, records: await shop.reopen() };
          bench = { ...bench, shop };
        };
        let acknowledged = 0;
        for (const one of acts) {
          const { by } = shop;
          const ticket = await ofTicket(bench);
          if (one.do === "plan")
            await bench.shop.records.tickets.change(ticket.id, { stages: stagesTo(one.wish) }, { by, expectedVersion: ticket.version });
          else if (one.do === "power cut") await reopened();
          else if (one.do === "come back" && ticket.state === "ready")
            await bench.shop.records.tickets.move(ticket.id, "rework", { by, expectedVersion: ticket.version });
          else if (one.do === "take back") {
            const gone = new Set((await signedFor(bench)).map(({ takesBack }) => takesBack));
            const standing = (await signedFor(bench)).filter(({ id, takesBack }) => takesBack === null && !gone.has(id));
            if (standing.length > 0) acknowledged += (await takeBack(bench, standing[one.which % standing.length].id)) === null ? 0 : 1;
          } else if (one.do === "sign" || one.do === "side" || one.do === "other pad") {
            const more = one.do === "side" ? { sidesDone: ["grip"] as const } : one.do === "sign" ? {} : { pad: "pad-1500" };
            acknowledged += (await work(bench, more)) === null ? 0 : 1;
          }
        }
        await mustAgree(bench, acknowledged);
      }),
      { seed: 20261129, numRuns: server === null ? 25 : 12 },
    );
    await shop.end();
  }, 120_000);
});

async function mustAgree(bench: Bench, acknowledged: number): Promise<void> {
  const { records } = bench.shop;
  const entries = await signedFor(bench);
  expect(entries.length).toBe(acknowledged);
  const ticket = await ofTicket(bench);
  const { next, signed, sides, finish } = workOfTicket(ticket, entries);
  const isBegun = signed.length + sides.length > 0;
  // Nobody says ready here but the signatures.
  if (ticket.state === "ready") expect([next, isBegun]).toEqual([null, true]);
  else if (next !== null)
    expect(ticket.state).toBe(isBegun ? "in work" : ticket.been.some(({ state }) => state === "rework") ? "rework" : "received");
  const { surface } = await records.balls.get(ticket.ballId);
  const logged = surface.filter(({ ticketId }) => ticketId === ticket.id);
  expect(logged.length).toBeLessThanOrEqual(1);
  if (ticket.state === "ready") expect(logged.map((entry) => entry.finish)).toEqual(finish === null ? [] : [finishText(finish)]);
  const gone = new Set(entries.map(({ takesBack }) => takesBack));
  const used = entries
    .filter(({ id }) => !gone.has(id))
    .reduce((sum, one) => sum + one.used.reduce((n, { quantity }) => n + quantity, 0), 0);
  expect((await records.stockItems.get(bench.padId)).quantity + used).toBe(0);
}
