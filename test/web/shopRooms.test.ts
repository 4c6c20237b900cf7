import { describe, expect, it } from "vitest";
import { csvText } from "#contract/csv";
import { stockItemKept } from "#contract/records/stock";
import { arranged, quantityText, waitingUse } from "../../src/web/rooms/stock/waitingWork.ts";

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

describe("what the waiting work will take", () => {
  it("counts a use of its pad for every stage that nobody has signed yet", () => {
    const stages = [{ abrasive: null }, { abrasive: "pad-500" }, { abrasive: "pad-2000" }];
    const waiting = waitingUse(
      [pad500, pad2000, cleaner],
      [
        { stages, signed: 0 },
        { stages, signed: 2 },
      ],
    );
    expect(Object.fromEntries(waiting)).toEqual({ [pad500.id]: 1, [pad2000.id]: 2 });
  });
});

it("pads stand by what is left of them, apart from what is poured", () => {
  const { pads, other } = arranged([cleaner, pad500, pad2000]);
  expect([pads, other]).toEqual([[pad2000, pad500], [cleaner]]);
});

it("a quantity has a true minus and no dust", () => {
  expect([quantityText(0.1 + 0.2), quantityText(-4), quantityText(15380)]).toEqual(["0.3", "−4", "15380"]);
});

it("a cell that a spreadsheet would take for a formula is only text (OWASP, CSV injection)", () => {
  expect(csvText(["name"], [["=1+1"], ["@here"], ["-5 off"], ["plain, with comma"]])).toBe(
    `name\r\n'=1+1\r\n'@here\r\n'-5 off\r\n"plain, with comma"\r\n`,
  );
});
