import { describe, expect, it } from "vitest";
import { csvText } from "#contract/csv";
import { paymentKept } from "#contract/records/money";
import { stockItemKept } from "#contract/records/stock";
import type { PlannedStage, WorkEntry } from "#engine/signed/entries";
import { workOf } from "#engine/signed/work";
import { byDay, leftOf, spanOf } from "../../src/web/rooms/money/span.ts";
import { arranged, waitingUse } from "../../src/web/rooms/stock/waitingWork.ts";
import { centsOf } from "../../src/web/shop/typedValues.ts";

const KEPT = {
  version: 1,
  shopId: "01890000-0000-7000-8000-000000000000",
  createdAt: "2026-01-01T00:00:00.000Z",
  changedAt: "2026-01-01T00:00:00.000Z",
};
const item = (n: number, fields: Record<string, unknown>) =>
  stockItemKept.parse({
    ...KEPT,
    id: `01890000-0000-7000-8000-00000000000${n}`,
    name: `Item ${n}`,
    kind: "pad",
    unit: "uses",
    quantity: 10,
    ...fields,
  });
const pad500 = item(1, { number: 500, quantity: 3 });
const pad2000 = item(2, { number: 2000, quantity: 1 });
const cleaner = item(3, { kind: "cleaner", unit: "mL" });

/** Work with so many stages signed already. */
function work(signed: number, ...abrasives: readonly (string | null)[]) {
  const stages = abrasives.map((abrasive, i): PlannedStage => ({ id: `${i}`, kind: "cut", abrasive, sideIds: [], label: "" }));
  const entry = {
    kind: "cut",
    signs: true,
    sidesDone: [],
    sidesAgain: [],
    againSeconds: null,
    began: null,
    takesBack: null,
    label: "",
  } as const;
  return workOf(
    stages,
    stages.slice(0, signed).map(({ id, abrasive }): WorkEntry => ({ ...entry, id, stageId: id, abrasive, at: id })),
  );
}

describe("what the waiting work will take", () => {
  it("counts a use of its pad for every stage that nobody has signed yet", () => {
    const waiting = waitingUse([pad500, pad2000, cleaner], [work(0, null, "pad-500", "pad-2000"), work(2, null, "pad-500", "pad-2000")]);
    expect(Object.fromEntries(waiting)).toEqual({ [pad500.id]: 1, [pad2000.id]: 2 });
  });

  it("of polish takes what the shop says one stage takes; where it says nothing, nothing is guessed", () => {
    const polishing = [work(0, "cutting-polish")];
    const polish = (perUse: number | null) => item(4, { kind: "polish", unit: "mL", quantity: 900, perUse });
    expect([...waitingUse([polish(15)], [...polishing, ...polishing])]).toEqual([[polish(15).id, 30]]);
    expect([...waitingUse([polish(null)], polishing)]).toEqual([]);
    // A bottle whose doses are not known does not stand in the way of one whose are.
    const other = item(5, { kind: "polish", unit: "g", quantity: 100, perUse: 4 });
    expect([...waitingUse([polish(null), other], polishing)]).toEqual([[other.id, 4]]);
  });
});

it("pads stand by what is left of them, apart from what is poured", () => {
  const { pads, other } = arranged([cleaner, pad500, pad2000]);
  expect([pads, other]).toEqual([[pad2000, pad500], [cleaner]]);
});

it("a cell that a spreadsheet would take for a formula is only text (OWASP, CSV injection)", () => {
  expect(csvText(["name"], [["=1+1"], ["@here"], ["-5 off"], ["plain, with comma"]])).toBe(
    `name\r\n'=1+1\r\n'@here\r\n'-5 off\r\n"plain, with comma"\r\n`,
  );
});

describe("spans of days", () => {
  // Calendar facts: 2026-01-01 was a Thursday (ISO week 1 begins on Monday 2025-12-29); 2024 was a leap year.
  it.each([
    ["today", "2026-01-01", "2026-01-01", "2026-01-01"],
    ["week", "2026-01-01", "2025-12-29", "2026-01-01"],
    ["week", "2026-01-05", "2026-01-05", "2026-01-05"],
    ["month", "2026-01-31", "2026-01-01", "2026-01-31"],
    ["lastMonth", "2026-01-15", "2025-12-01", "2025-12-31"],
    ["lastMonth", "2024-03-31", "2024-02-01", "2024-02-29"],
    ["year", "2026-11-25", "2025-12-01", "2026-11-25"],
  ] as const)("%s, seen on %s", (name, today, from, to) => {
    expect(spanOf(name, today)).toEqual({ from, to });
  });
});

it("an amount is typed with a comma or a point, and nothing else is an amount", () => {
  expect(["12", "12.5", " 0,05 ", "0", "-3", "1e3", "12.345", "", "twelve"].map(centsOf)).toEqual([
    1200,
    1250,
    5,
    null,
    null,
    null,
    null,
    null,
    null,
  ]);
});

describe("what changed hands", () => {
  const taken = (day: string, kind: "payment" | "refund", cents: number, id: string, refundOf: string | null = null) => ({
    day,
    bowlerName: null,
    payment: paymentKept.parse({
      ...KEPT,
      id: `01890000-0000-7000-8000-0000000000${id}`,
      visitId: KEPT.shopId,
      at: `${day}T12:00:00.000Z`,
      kind,
      refundOf: refundOf === null ? null : `01890000-0000-7000-8000-0000000000${refundOf}`,
      cents,
      currency: "USD",
      method: "cash",
    }),
  });
  const payments = [taken("2026-05-01", "payment", 2000, "01"), taken("2026-05-02", "refund", 500, "02", "01")];

  it("stands under its own day, refunds apart", () => {
    expect(byDay(payments)).toEqual([
      { day: "2026-05-02", takenCents: 0, givenCents: 500 },
      { day: "2026-05-01", takenCents: 2000, givenCents: 0 },
    ]);
  });

  it("a payment has left what was not given back of it", () => {
    expect(leftOf(payments[0].payment, payments)).toBe(1500);
  });
});
