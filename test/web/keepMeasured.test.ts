import { describe, expect, test } from "vitest";
import { deliveryFileSchema, deliveryOf } from "#contract/deliveryFile";
import type { Bowler } from "#contract/records/bowler";
import { keepingOf, measuredChange } from "../../src/web/rooms/bowler/keepMeasured.ts";

const MEASURED_BEFORE: Bowler["deliveries"][number] = {
  at: "2026-05-02T10:00:00.000Z",
  how: "video",
  speedMph: 17,
  revRateRpm: 300,
  axisRotationDeg: 50,
  axisTiltDeg: null,
  speed: null,
  hook: null,
  plays: null,
  note: "",
};

const bowlerWith = (deliveries: Bowler["deliveries"], spread: Bowler["spread"] = null) => ({ deliveries, spread }) as Bowler;

/** Revs alone were counted, in some shots: two turns in so many pictures at 120 a second. */
const revsOf = (...pictures: number[]) =>
  deliveryOf(
    deliveryFileSchema.parse({
      gritwright: 1,
      camera: { framesPerSecond: 120 },
      shots: pictures.map((frames) => ({ turns: { turns: 2, frames } })),
    }),
  ).measured;

const AT = "2026-11-25T18:00:00.000Z";

describe("keeping a measured delivery", () => {
  test("what was not measured is taken over from a measured delivery, and never from one that was told or estimated", () => {
    const measured = revsOf(45);
    expect(keepingOf(measured, bowlerWith([MEASURED_BEFORE]))).toMatchObject({
      measured: ["revRateRpm"],
      carried: ["speedMph", "axisRotationDeg"],
      empty: ["axisTiltDeg"],
    });
    for (const how of ["told by the bowler", "estimated", "word only"] as const) {
      const keeping = keepingOf(measured, bowlerWith([{ ...MEASURED_BEFORE, how }]));
      expect(keeping.carried).toEqual([]);
      expect(keeping.empty).toEqual(["speedMph", "axisRotationDeg", "axisTiltDeg"]);
    }
  });

  test("it is added as the newest; 45 pictures for two turns at 120 a second is 320 rpm (computed by hand)", () => {
    const { deliveries, spread, pap } = measuredChange(revsOf(45), bowlerWith([MEASURED_BEFORE]), AT, "From one shot.");
    expect(deliveries?.[0]).toBe(MEASURED_BEFORE);
    expect(deliveries?.[1]).toMatchObject({ at: AT, how: "video", revRateRpm: 320, speedMph: 17, axisTiltDeg: null });
    // One shot tells no spread, and without marks there is no PAP: what is kept of them is left alone.
    expect(spread).toBeUndefined();
    expect(pap).toBeUndefined();
  });

  test("a spread that was measured takes its place beside those that were not", () => {
    const before = { launchAngleDeg: 0.4, laydownBoards: null, speedMph: 0.3, revRateRpm: 12, axisRotationDeg: null };
    const { spread } = measuredChange(revsOf(40, 45, 52), bowlerWith([], before), AT, "");
    expect(spread).toMatchObject({ launchAngleDeg: 0.4, speedMph: 0.3, axisRotationDeg: null });
    // 360, 320 and 276.9 rpm have a standard deviation of 41.6 (computed); reading explains a little of it.
    expect(spread?.revRateRpm).toBeGreaterThan(38);
    expect(spread?.revRateRpm).toBeLessThan(41.6);
  });
});
