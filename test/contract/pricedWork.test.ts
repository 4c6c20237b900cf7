import { describe, expect, it } from "vitest";
import type { Price } from "#contract/records/money";
import { isPriced, namedWork, notPriced, type PricedWork, pricesOn, usualPrices, workIn } from "#contract/records/pricedWork";

const cut = (abrasive: string) => ({ kind: "cut" as const, abrasive });
const step = (kind: "clean" | "open" | "extract" | "plug" | "polish" | "check") => ({ kind, abrasive: null });
const price = (id: string, work: PricedWork | null, change: Partial<Price> = {}): Price => ({
  id,
  shopId: id,
  version: 1,
  createdAt: "2026-01-01T00:00:00.000Z",
  changedAt: "2026-01-01T00:00:00.000Z",
  name: `Price ${id}`,
  work,
  eachCents: 2000,
  currency: "USD",
  taxMillipercent: 0,
  from: "2026-01-01",
  until: null,
  note: "",
  ...change,
});
const ids = (prices: readonly Price[] | null) => prices?.map(({ id }) => id) ?? null;

describe("a bill's line", () => {
  it("is of a kind of work where it has the list's first name for it, and of the shop's own words else", () => {
    expect(["Refresh: Tideline", "Oil extraction", "Refreshments: Tideline", "Big refresh: Refresh", ""].map(namedWork)).toEqual([
      "refresh",
      "extraction",
      null,
      null,
      null,
    ]);
  });
});

describe("what there is to charge for", () => {
  it.each([
    ["nothing is chosen", [], []],
    ["one number put on anew", [step("clean"), cut("pad-2000"), step("check")], ["refresh"]],
    ["one dull number alone", [cut("pad-500")], ["refresh"]],
    ["from 500 up through others", [cut("pad-500"), cut("pad-1000"), cut("pad-2000")], ["resurface"]],
    ["from wet paper up", [cut("paper-P400"), cut("pad-1000")], ["resurface"]],
    ["a cut and polish", [cut("pad-1000"), step("polish")], ["refresh", "polish"]],
    ["polish alone", [step("clean"), step("polish")], ["polish"]],
    ["oil taken out first", [step("extract"), cut("pad-2000")], ["refresh", "extraction"]],
    ["a plug filled", [step("plug"), cut("pad-360"), cut("pad-1000"), step("polish")], ["resurface", "polish", "plug"]],
    ["an abrasive of the shop's own", [cut("green thing"), cut("pad-2000")], ["refresh"]],
  ] as const)("%s", (_, stages, work) => {
    expect(workIn(stages)).toEqual(work);
  });
});

describe("what it usually costs", () => {
  const list = [price("refresh", "refresh"), price("polish", "polish"), price("any", null)];
  it("is the one price for each kind of work; polish without a price of its own is in that of the cut", () => {
    expect(ids(usualPrices(["refresh"], list))).toEqual(["refresh"]);
    expect(ids(usualPrices(["refresh", "polish"], list))).toEqual(["refresh", "polish"]);
    expect(ids(usualPrices(["refresh", "polish"], list.slice(0, 1)))).toEqual(["refresh"]);
  });

  it("is to be said by somebody where there is no price for the work, or where two could be meant", () => {
    expect(usualPrices([], list)).toBeNull();
    expect(usualPrices(["resurface", "polish"], list)).toBeNull();
    expect(usualPrices(["refresh"], [...list, price("second", "refresh")])).toBeNull();
    expect(usualPrices(["refresh", "polish"], [...list, price("second", "polish")])).toBeNull();
  });

  it("is of the prices that hold today, in the shop's currency", () => {
    const all = [
      price("old", "refresh", { until: "2026-05-30" }),
      price("now", "refresh", { from: "2026-05-31", until: "2026-05-31" }),
      price("next", "refresh", { from: "2026-06-01" }),
      price("euro", "refresh", { currency: "EUR" }),
    ];
    expect(ids(pricesOn(all, "2026-05-31", "USD"))).toEqual(["now"]);
  });
});

describe("work that nobody priced", () => {
  const line = (ticketId: string | null) => ({
    what: "Refresh",
    ticketId,
    quantity: 1,
    eachCents: 0,
    taxMillipercent: 0,
    prepaid: "no" as const,
  });
  const ticket = (id: string, state: "in work" | "ready" | "uncollected" | "collected" | "cancelled", reworkOf: string | null = null) => ({
    id,
    state,
    reworkOf,
  });
  it("is what has neither a line, nor a reason, nor was done again; a line without a ticket is for the whole visit", () => {
    const none = { charges: [], free: [] };
    expect(isPriced(ticket("a", "ready"), none)).toBe(false);
    expect(isPriced(ticket("a", "ready", "before"), none)).toBe(true);
    expect(isPriced(ticket("a", "ready"), { ...none, charges: [line("a")] })).toBe(true);
    expect(isPriced(ticket("a", "ready"), { ...none, charges: [line("b")] })).toBe(false);
    expect(isPriced(ticket("a", "ready"), { ...none, charges: [line(null)] })).toBe(true);
    expect(isPriced(ticket("a", "ready"), { ...none, free: [{ ticketId: "a", why: "a friend of the house" }] })).toBe(true);
    expect(isPriced(ticket("a", "ready"), { ...none, free: [{ ticketId: "b", why: "a friend of the house" }] })).toBe(false);
  });

  it("is missed from when it is done", () => {
    const all = (["in work", "ready", "uncollected", "collected", "cancelled"] as const).map((state) => ticket(state, state));
    expect(notPriced({ charges: [], free: [] }, all).map(({ id }) => id)).toEqual(["ready", "uncollected", "collected"]);
  });
});
