import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Billed, billOf } from "#contract/records/bill";

/*
 * Bills worked by hand; the arithmetic stands beside each. Amounts are in the smallest unit of the currency, rates in thousandths of a percent.
 */

type Line = Billed["charges"][number];
type Rules = Partial<Omit<Billed, "charges">>;

const line = (eachCents: number, taxMillipercent: number, quantity = 1, prepaid: Line["prepaid"] = "no"): Line => ({
  what: "Work",
  ticketId: null,
  quantity,
  eachCents,
  taxMillipercent,
  prepaid,
});

const bill = (charges: readonly Line[], rules: Rules = {}) =>
  billOf({ charges: [...charges], discountCents: 0, taxRounding: "bill", taxIncluded: "no", ...rules });

const WORKED: readonly (readonly [string, readonly Line[], Rules, { readonly taxCents: number; readonly totalCents: number }])[] = [
  ["8.25 %: 2000 × 0.0825 = 165", [line(2000, 8250)], {}, { taxCents: 165, totalCents: 2165 }],
  ["7.375 %: 2500 × 0.07375 = 184.375, so 184", [line(2500, 7375)], {}, { taxCents: 184, totalCents: 2684 }],
  ["a half goes up: 3 × 2000 × 0.07375 = 442.5, so 443", [line(2000, 7375, 3)], {}, { taxCents: 443, totalCents: 6443 }],
  [
    "two rates, each rounded: 2000 × 0.0825 = 165; 1250 × 0.04225 = 52.8125, so 53",
    [line(2000, 8250), line(1250, 4225)],
    {},
    { taxCents: 218, totalCents: 3468 },
  ],
  [
    "a discount of 500 of 2500 leaves 80 %: 1600 × 0.0825 = 132, and 400 without tax",
    [line(2000, 8250), line(500, 0)],
    { discountCents: 500 },
    { taxCents: 132, totalCents: 2132 },
  ],
  [
    "a third off is not a decimal fraction: 200 × 0.0725 = 14.5 exactly, so 15",
    [line(300, 7250)],
    { discountCents: 100 },
    { taxCents: 15, totalCents: 215 },
  ],
  ["more discount than work: nothing is owed", [line(300, 8250)], { discountCents: 400 }, { taxCents: 0, totalCents: 0 }],
  ["19 % in the price: 2380 × 19 / 119 = 380", [line(2380, 19_000)], { taxIncluded: "yes" }, { taxCents: 380, totalCents: 2380 }],
  ["7 % in the price: 1070 × 7 / 107 = 70", [line(1070, 7000)], { taxIncluded: "yes" }, { taxCents: 70, totalCents: 1070 }],
  [
    "both in the price: 1190 × 19 / 119 = 190; 535 × 7 / 107 = 35",
    [line(1190, 19_000), line(535, 7000)],
    { taxIncluded: "yes" },
    { taxCents: 225, totalCents: 1725 },
  ],
  [
    "in the price, with a discount: 2500 × 19 / 119 = 399.16, so 399",
    [line(3000, 19_000)],
    { taxIncluded: "yes", discountCents: 500 },
    { taxCents: 399, totalCents: 2500 },
  ],
  [
    "rounded over the bill: 3 lines of 999 are 2997 × 0.0825 = 247.2525, so 247",
    [line(999, 8250), line(999, 8250), line(999, 8250)],
    { taxRounding: "bill" },
    { taxCents: 247, totalCents: 3244 },
  ],
  [
    "rounded by line, a cent less: 999 × 0.0825 = 82.4175, so 3 × 82 = 246",
    [line(999, 8250), line(999, 8250), line(999, 8250)],
    { taxRounding: "line" },
    { taxCents: 246, totalCents: 3243 },
  ],
  [
    "in the price, over the bill: 1998 × 19 / 119 = 319.01, so 319",
    [line(999, 19_000), line(999, 19_000)],
    { taxIncluded: "yes", taxRounding: "bill" },
    { taxCents: 319, totalCents: 1998 },
  ],
  [
    "in the price, by line: 999 × 19 / 119 = 159.504, so 2 × 160 = 320; what is paid is the same",
    [line(999, 19_000), line(999, 19_000)],
    { taxIncluded: "yes", taxRounding: "line" },
    { taxCents: 320, totalCents: 1998 },
  ],
  [
    "a currency without a smaller unit (the yen, ISO 4217): 150 × 0.07 = 10.5, so 11 and never 10.5",
    [line(150, 7000)],
    {},
    { taxCents: 11, totalCents: 161 },
  ],
  [
    "what a prepaid refresh pays is on no bill: 500 × 0.0825 = 41.25, so 41",
    [line(2000, 8250, 1, "yes"), line(500, 8250)],
    {},
    { taxCents: 41, totalCents: 541 },
  ],
  [
    "a thousandth of a percent shows: 1 000 000 × 0.08251 = 82 510",
    [line(1_000_000, 8251)],
    {},
    { taxCents: 82_510, totalCents: 1_082_510 },
  ],
];

describe("a bill worked by hand", () => {
  it.each(WORKED)("%s", (_, charges, rules, worked) => {
    expect(bill(charges, rules)).toMatchObject(worked);
  });

  it("tells the tax of each rate, the highest first, and not of what bears none", () => {
    const { taxes, taxCents } = bill([line(535, 7000), line(400, 0), line(1190, 19_000)], { taxIncluded: "yes" });
    expect(taxes).toEqual([
      { taxMillipercent: 19_000, cents: 190 },
      { taxMillipercent: 7000, cents: 35 },
    ]);
    expect(taxCents).toBe(225);
  });
});

const rate = fc.integer({ min: 0, max: 100_000 });
const lines = fc.array(fc.record({ cents: fc.integer({ min: 0, max: 100_000 }), rate, quantity: fc.integer({ min: 1, max: 9 }) }), {
  maxLength: 12,
});
const rules = fc.record({
  discountCents: fc.integer({ min: 0, max: 200_000 }),
  taxRounding: fc.constantFrom("line" as const, "bill" as const),
  taxIncluded: fc.constantFrom("no" as const, "yes" as const),
});

describe("whatever is billed", () => {
  it("adds up: lines less discount and tax, no part below nought, roundings no further apart than half a cent a line", () => {
    fc.assert(
      fc.property(lines, rules, (drawn, given) => {
        const charges = drawn.map(({ cents, rate: of, quantity }) => line(cents, of, quantity));
        const made = bill(charges, given);
        expect(made.linesCents).toBe(charges.reduce((sum, { quantity, eachCents }) => sum + quantity * eachCents, 0));
        expect(made.discountCents).toBe(Math.min(given.discountCents, made.linesCents));
        expect(made.totalCents).toBe(made.linesCents - made.discountCents + (given.taxIncluded === "yes" ? 0 : made.taxCents));
        expect(made.taxes.reduce((sum, { cents }) => sum + cents, 0)).toBe(made.taxCents);
        expect(Math.min(made.taxCents, made.totalCents, ...made.taxes.map(({ cents }) => cents))).toBeGreaterThanOrEqual(0);
        const other = bill(charges, { ...given, taxRounding: given.taxRounding === "line" ? "bill" : "line" });
        expect(Math.abs(other.taxCents - made.taxCents)).toBeLessThanOrEqual(charges.length);
      }),
      { seed: 11, numRuns: 2000 },
    );
  });

  it("bears the same tax, to a cent, whether the price holds it or not", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10_000_000 }), rate, (cents, of) => {
        const before = bill([line(cents, of)]);
        const held = bill([line(before.totalCents, of)], { taxIncluded: "yes" });
        expect(held.totalCents).toBe(before.totalCents);
        expect(Math.abs(held.taxCents - before.taxCents)).toBeLessThanOrEqual(1);
      }),
      { seed: 12, numRuns: 2000 },
    );
  });
});
