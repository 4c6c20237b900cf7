import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { dayIn } from "#contract/records/dayIn";
import { type TakenFor, takingsByPerson, takingsByWork } from "#contract/records/takings";
import { problemOf, type ShopServer, shopServer } from "./shopServer.ts";

const RULES = { discountCents: 0, taxRounding: "bill", taxIncluded: "no" } as const;

const charge = (what: string, eachCents: number, taxMillipercent = 0, prepaid: "no" | "yes" = "no") => ({
  what,
  ticketId: null,
  quantity: 1,
  eachCents,
  taxMillipercent,
  prepaid,
});

describe("takings parted", () => {
  it("by work in proportion to the lines, to the cent, also where they do not divide", () => {
    const visit = { charges: [charge("a", 1000), charge("b", 1000), charge("c", 1000)], ...RULES };
    const shares = takingsByWork([{ payment: { kind: "payment", cents: 1000 }, visit, signed: [] }]);
    expect(shares.reduce((sum, { cents }) => sum + cents, 0)).toBe(1000);
    expect(shares.map(({ cents }) => cents).toSorted()).toEqual([333, 333, 334]);
  });

  it("with each line's own tax, without what was prepaid, and refunds taken off", () => {
    const visit = { charges: [charge("Refresh", 2000, 10_000), charge("Gift", 2200), charge("Ahead", 5000, 0, "yes")], ...RULES };
    const taken = { visit, signed: ["p", "p", "q"] };
    const both = [
      { payment: { kind: "payment", cents: 4400 }, ...taken },
      { payment: { kind: "refund", cents: 400 }, ...taken },
    ] as const;
    expect(Object.fromEntries(takingsByWork(both).map(({ name, cents }) => [name, cents]))).toEqual({ Refresh: 2000, Gift: 2000 });
    expect(takingsByPerson(both).map(({ name }) => name)).toEqual(["p", "q"]);
    expect(takingsByPerson(both).reduce((sum, { cents }) => sum + cents, 0)).toBe(4000);
  });

  it("money that nothing was charged for has no name", () => {
    const taken = [{ payment: { kind: "payment", cents: 700 }, visit: { charges: [], ...RULES }, signed: [] }] satisfies TakenFor[];
    expect([takingsByWork(taken), takingsByPerson(taken)]).toEqual([[{ name: null, cents: 700 }], [{ name: null, cents: 700 }]]);
  });
});

it("a day is the day where the shop is: Chicago is six hours behind in winter (IANA time zone database)", () => {
  expect(dayIn("America/Chicago", "2026-01-02T05:59:59.000Z")).toBe("2026-01-01");
  expect(dayIn("America/Chicago", "2026-01-02T06:00:00.000Z")).toBe("2026-01-02");
});

describe("over the wire", () => {
  let server: ShopServer;
  let visitId: string;
  beforeAll(async () => {
    server = await shopServer();
    const settings = (await server.ask("getSettings")).body;
    await server.ask("changeSettings", { body: { zone: "America/Chicago" }, headers: { "if-match": `"${settings.version}"` } });
    const bowler = (await server.ask("createBowler", { body: { name: "Invented Bowler" } })).body;
    const body = {
      bowlerId: bowler.id,
      arrivedAt: "2026-05-01T15:00:00.000Z",
      currency: "USD",
      charges: [{ what: "Refresh", eachCents: 2000, taxMillipercent: 8000 }],
    };
    visitId = (await server.ask("createVisit", { body })).body.id;
    await pay("evening", 1000, "2026-05-02T04:30:00.000Z");
    await pay("day-after", 500, "2026-05-02T15:00:00.000Z");
  });
  afterAll(() => server.end());

  const pay = (key: string, cents: number, at: string) =>
    server.ask("createPayment", {
      body: { visitId, at, kind: "payment", cents, currency: "USD", method: "cash" },
      headers: { "idempotency-key": key },
    });

  it("a payment late in the evening belongs to the shop's day, not to that of Greenwich", async () => {
    const { body } = await server.ask("takings", { query: { from: "2026-05-01", to: "2026-05-01" } });
    expect(body.payments.map((one: { payment: { cents: number }; day: string }) => [one.payment.cents, one.day])).toEqual([
      [1000, "2026-05-01"],
    ]);
    expect(body.byWork).toEqual([{ name: "Refresh", cents: 1000 }]);
    expect(body.payments[0].bowlerName).toBe("Invented Bowler");
  });

  it("accounts tell what is owed: 2000 and 8 % tax, less 1500 paid", async () => {
    const { body } = await server.ask("listAccounts", { query: { state: "open" } });
    expect(body.items.map(({ account }: { account: unknown }) => account)).toMatchObject([
      { totalCents: 2160, paidCents: 1500, owedCents: 660 },
    ]);
  });

  it.each([
    ["the wrong way round", "2026-05-02", "2026-05-01"],
    ["too long", "2025-01-01", "2026-05-01"],
  ])("a span %s is refused, with what is allowed", async (_what, from, to) => {
    const problem = problemOf(await server.ask("takings", { query: { from, to } }), "invalid");
    expect(problem.problems?.[0]).toMatchObject({ path: "to", value: to, allowed: `${from} or up to 365 days later` });
  });
});
