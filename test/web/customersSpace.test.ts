import { describe, expect, it } from "vitest";
import { ballKept } from "#contract/records/ball";
import { bowlerKept } from "#contract/records/bowler";
import { stageDoneKept } from "#contract/records/stageDone";
import { ticketKept } from "#contract/records/ticket";
import { bodyOf } from "#engine/ball/body";
import { TYPICAL_BALL } from "#engine/ball/typical";
import { parseFinish } from "#engine/surface/finish";
import { dot, length, type Vector } from "#engine/vector";
import { placesOnBall } from "../../src/web/measured/placesOnBall.ts";
import { newestWork, signedPadWork } from "../../src/web/rooms/ball/space/signedWork.ts";

const KEPT = {
  id: "01890000-0000-7000-8000-000000000001",
  shopId: "01890000-0000-7000-8000-000000000000",
  version: 1,
  createdAt: "2026-01-01T00:00:00.000Z",
  changedAt: "2026-01-01T00:00:00.000Z",
};
const AT = "2026-01-01T00:00:00.000Z";
const ballWith = (pinToPapIn: number | null, valAngleDeg: number | null, drillingAngleDeg: number | null = null) =>
  ballKept.parse({
    ...KEPT,
    name: "Invented",
    cover: "solid",
    core: { diameterIn: 8.55 },
    layout: { pinToPapIn, valAngleDeg, drillingAngleDeg },
  });
const bowlerWith = (pap: object | null, axisTiltDeg: number | null) =>
  bowlerKept.parse({ ...KEPT, name: "Invented", pap, deliveries: [{ at: AT, how: "video", axisTiltDeg }] });
const RADIUS_IN = 8.55 / 2;
const apartIn = (a: Vector, b: Vector) => RADIUS_IN * Math.acos(dot(a, b));

describe("places on the ball", () => {
  it("nothing is drawn of what nobody knows", () => {
    expect(placesOnBall(ballWith(4, 40), null)).toEqual({ pap: null, pin: null, massBias: null, lines: [], track: [] });
    expect(placesOnBall(ballWith(4, 40), bowlerWith(null, 10)).pin).toBeNull();
    expect(placesOnBall(ballWith(4, null), bowlerWith({ overIn: 5, upIn: 0 }, 10)).pin).toBeNull();
  });

  // A layout is laid out on the ball with a flexible rule: distances over the surface (common practice).
  it("the pin lies its distance from the PAP over the surface; at a VAL angle of 0 straight above it, at 90° on the way to the grip", () => {
    const bowler = bowlerWith({ overIn: 5, upIn: 0 }, 10);
    for (const val of [0, 35, 90]) {
      const { pap, pin } = placesOnBall(ballWith(4.5, val), bowler);
      if (pap === null || pin === null) throw new Error("Pap and pin are known here.");
      expect(apartIn(pap, pin)).toBeCloseTo(4.5, 6);
      expect(length(pin)).toBeCloseTo(1, 9);
      if (val === 0) expect(pin[1]).toBeCloseTo(Math.sin(4.5 / RADIUS_IN), 6);
      // Five inches over and four and a half back leave half an inch.
      if (val === 90) expect(apartIn(pin, [0, 0, 1])).toBeCloseTo(0.5, 6);
    }
  });

  // Common practice: the mass bias lies 6 3/4 in from the pin, near the VAL for a small drilling angle, towards the thumb for a large one.
  it("the mass bias lies a quarter turn from the pin, where the core of the model has its highest RG; with the angle it goes down and back under the grip", () => {
    const bowler = bowlerWith({ overIn: 5, upIn: 0.5 }, 10);
    const heights = [10, 50, 90].map((drilling) => {
      const { pap, pin, massBias, lines } = placesOnBall(ballWith(4.5, 40, drilling), bowler);
      if (pap === null || pin === null || massBias === null) throw new Error("All of them are known here.");
      expect(apartIn(pin, massBias)).toBeCloseTo((Math.PI / 2) * RADIUS_IN, 6);
      const body = bodyOf({
        ...TYPICAL_BALL,
        cover: "solid",
        finish: parseFinish("1000"),
        diameterIn: 8.55,
        pinToPapIn: 4.5,
        drillingAngleDeg: drilling,
      });
      expect(dot(pap, pin)).toBeCloseTo(body.axisInBody[0], 9);
      expect(dot(pap, massBias)).toBeCloseTo(body.axisInBody[2], 9);
      expect(lines.map((line) => line[line.length - 1])).toEqual(
        [pap, massBias].map((end) => end.map((value) => expect.closeTo(value, 9))),
      );
      return massBias;
    });
    const across = heights.map(([x]) => x);
    expect(across).toEqual(across.toSorted((a, b) => b - a));
    expect(heights[2][1]).toBeLessThan(0);
    const left = placesOnBall(ballWith(4.5, 40, 50), bowlerWith({ overIn: -5, upIn: 0.5 }, 10)).massBias;
    expect(left).toEqual([-heights[1][0], heights[1][1], heights[1][2]].map((value) => expect.closeTo(value, 9)));
  });

  it("without a drilling angle, or with the pin on the axis, no mass bias is drawn", () => {
    const bowler = bowlerWith({ overIn: 5, upIn: 0 }, 10);
    const { massBias, lines } = placesOnBall(ballWith(4, 40), bowler);
    expect(massBias).toBeNull();
    expect(lines).toHaveLength(1);
    const onAxis = placesOnBall(ballWith(0, 40, 50), bowler);
    expect(onAxis).toMatchObject({ massBias: null, lines: [] });
    expect(length(onAxis.pin ?? [0, 0, 0])).toBeCloseTo(1, 9);
  });

  it("is mirrored for a left-hander, whose PAP lies on the other side", () => {
    const right = placesOnBall(ballWith(4, 40), bowlerWith({ overIn: 5, upIn: 0.5 }, 10));
    const left = placesOnBall(ballWith(4, 40), bowlerWith({ overIn: -5, upIn: 0.5 }, 10));
    const mirrored = right.pin === null ? null : [-right.pin[0], right.pin[1], right.pin[2]];
    left.pin?.forEach((value, i) => {
      expect(value).toBeCloseTo(mirrored?.[i] ?? Number.NaN, 9);
    });
  });

  it("the track lies a quarter turn and the tilt away from the PAP, all round", () => {
    const { pap, track } = placesOnBall(ballWith(null, null), bowlerWith({ overIn: 5, upIn: 0 }, 15));
    expect(track.length).toBeGreaterThan(60);
    for (const place of track) expect((Math.acos(dot(place, pap ?? [0, 0, 0])) * 180) / Math.PI).toBeCloseTo(105, 6);
  });
});

describe("signed pad work", () => {
  const ticket = (receivedAt: string, stages: object[]) =>
    ticketKept.parse({
      ...KEPT,
      visitId: KEPT.shopId,
      ballId: KEPT.id,
      receivedAt,
      state: "in work",
      been: [],
      readyAt: null,
      collectedAt: null,
      stages,
    });
  const pads = { what: "Sand", kind: "cut", abrasive: "pad-1000", sideIds: ["grip", "opposite"], force: "light", sides: 2 };
  const signed = (fields: object) =>
    stageDoneKept.parse({ ...KEPT, ticketId: KEPT.id, personId: KEPT.id, initials: "X", doneAt: AT, what: "Sand", ...fields });

  it("is what the clock counted on each side of the stages that are signed, and no more", () => {
    const work = signedPadWork(ticket(AT, [{ what: "Clean", kind: "clean" }, pads, pads]), [
      signed({ what: "Clean" }),
      signed({ abrasive: "Pad 1000", way: "hand, wet", sideSeconds: [21, 0] }),
    ]);
    expect(work).toHaveLength(1);
    expect(work[0]).toMatchObject({ by: "hand", sides: [{ side: "grip", seconds: 21, force: "light" }] });
  });

  it("told side by side is of its own stage, with what was really used; begun, read and taken back it is none", () => {
    const of = ticket(AT, [
      { ...pads, id: "0-0" },
      { ...pads, id: "0-1", abrasive: "pad-2000" },
    ]);
    const side = (id: string, sidesDone: string[], more: object = {}) =>
      signed({
        id: `01890000-0000-7000-8000-00000000001${id}`,
        stageId: "0-1",
        signs: false,
        abrasive: "pad-1500",
        sidesDone,
        sideSeconds: [20],
        ...more,
      });
    const back = side("1", ["grip"]);
    const work = signedPadWork(of, [
      signed({ stageId: "0-1", signs: false, began: { side: "grip", device: "x" } }),
      signed({ signs: false, cautionsRead: ["spinner"] }),
      back,
      signed({ signs: false, takesBack: back.id }),
      side("2", ["opposite"]),
      side("3", [], { signs: true, sideSeconds: [], sidesDone: ["grip", "opposite"] }),
    ]);
    // Grain of P1500, 12.6 µm (ISO 6344).
    expect(work).toMatchObject([{ grainUm: 12.6, sides: [{ side: "opposite", seconds: 20 }] }]);
  });

  it("is that of the newest ticket on which pads were planned", () => {
    const tickets = [ticket("2026-02-01T00:00:00.000Z", []), ticket("2026-01-15T00:00:00.000Z", [pads]), ticket(AT, [pads])];
    expect(newestWork(tickets)?.receivedAt).toBe("2026-01-15T00:00:00.000Z");
    expect(newestWork([tickets[0]])).toBeNull();
  });
});
