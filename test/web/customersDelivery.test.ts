import { describe, expect, it } from "vitest";
import { deliveryOf, EMPTY_DELIVERY } from "../../src/web/rooms/bowler/deliveryDraft.ts";
import { figureOrNull } from "../../src/web/shop/typedValues.ts";

const AT = "2026-05-01T10:00:00.000Z";
const KMH = { unit: "km/h", text: String, typed: String, mph: (figure: number) => figure / 1.609344 };
const typed = (fields: Record<string, string>) => ({ ...EMPTY_DELIVERY.typed, ...fields });

describe("a delivery that is written down", () => {
  it("is nothing while nothing was written", () => {
    expect(deliveryOf(EMPTY_DELIVERY, AT, KMH)).toBeNull();
    expect(deliveryOf({ way: "words", typed: typed({ speedMph: "28" }) }, AT, KMH)).toBeNull();
  });

  it("is kept in mph whatever the shop's unit (a mile is 1.609344 km, by agreement of 1959)", () => {
    const kept = deliveryOf({ way: "numbers", typed: typed({ speedMph: "28,0" }) }, AT, KMH);
    expect(kept?.speedMph).toBeCloseTo(17.398, 3);
    expect(kept).toMatchObject({ how: "video", revRateRpm: null, speed: null });
  });

  it("in words is never said to have been measured", () => {
    const kept = deliveryOf({ way: "words", typed: typed({ how: "sensor", speed: "fast" }) }, AT, KMH);
    expect(kept).toMatchObject({ how: "word only", speed: "fast", hook: null, speedMph: null });
  });
});

it("what is no figure goes to the shop as it was typed, to be answered beside its field", () => {
  expect([figureOrNull(" 4,5 "), figureOrNull("−3"), figureOrNull(""), figureOrNull("about 5")]).toEqual([4.5, -3, null, "about 5"]);
});
