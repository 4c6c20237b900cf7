import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  AT_THE_BEGINNING,
  afterACut,
  answered,
  held,
  isThisBall,
  looked,
  nameOf,
  type PlannedStage,
  secondsLeft,
  secondsRun,
  started,
  stateOf,
  stepsOf,
  withBall,
} from "../../src/web/benchWork/guide.ts";

let count = 0;
const stage = (kind: PlannedStage["kind"], abrasive: string | null): PlannedStage => ({
  id: `0-${count++}`,
  what: null,
  kind,
  abrasive,
  way: null,
  secondsPerSide: 20,
  sides: 6,
  force: "medium",
  sideIds: ["grip", "opposite", "left", "right", "fingers", "thumb"],
  cautions: [],
});
interface Ball {
  readonly id: string;
  readonly stages: readonly PlannedStage[];
}
const ball = (id: string, stages: readonly PlannedStage[]): Ball => ({ id, stages });
const steps = (balls: readonly Ball[], signed: (id: string) => number = () => 0) =>
  stepsOf(balls, (ticketId) => balls.find(({ id }) => id === ticketId)?.stages.slice(signed(ticketId)) ?? []);

describe("the order of a batch", () => {
  const first = ball("a", [stage("clean", null), stage("cut", "pad-1000"), stage("cut", "pad-2000"), stage("check", null)]);
  const second = ball("b", [stage("clean", null), stage("cut", "pad-500"), stage("cut", "pad-1000"), stage("polish", "cutting-polish")]);

  it("takes up a pad once for all balls that want it, coarse before fine (common practice)", () => {
    const order = steps([first, second]).map(({ ticketId, stage: { abrasive } }) => `${ticketId} ${abrasive ?? ""}`);
    expect(order).toEqual(["a ", "b ", "b pad-500", "a pad-1000", "b pad-1000", "a pad-2000", "b cutting-polish", "a "]);
  });

  it("leaves out what is signed", () => {
    expect(steps([first, second], (id) => (id === "a" ? 4 : 3))).toEqual([{ ticketId: "b", stage: second.stages[3] }]);
    expect(steps([first], () => 4)).toEqual([]);
  });

  it("keeps every ball's stages in their order, each once, whatever the batch (property)", () => {
    const anyKind = fc.constantFrom(["clean", null], ["cut", "pad-500"], ["cut", "pad-2000"], ["polish", "compound"]) as fc.Arbitrary<
      ["clean" | "cut" | "polish", string | null]
    >;
    fc.assert(
      fc.property(fc.array(fc.array(anyKind, { maxLength: 5 }), { minLength: 1, maxLength: 4 }), (batch) => {
        const balls = batch.map((kinds, i) =>
          ball(
            String(i),
            kinds.map(([kind, abrasive]) => stage(kind, abrasive)),
          ),
        );
        const order = steps(balls);
        for (const { id, stages } of balls)
          expect(order.filter(({ ticketId }) => ticketId === id).map((step) => step.stage)).toEqual(stages);
      }),
      { seed: 6, numRuns: 200 },
    );
  });
});

describe("the clock of a side", () => {
  const sanding = stage("cut", "pad-1000");
  const fresh = stateOf(AT_THE_BEGINNING, "t", nameOf(sanding, "grip"));

  it("goes by the time of day, so that a sleeping tab loses no second", () => {
    const running = started(fresh, 1_000_000);
    expect(secondsLeft(running, sanding, 1_007_500)).toBeCloseTo(12.5, 9);
    expect(secondsLeft(running, sanding, 9_000_000)).toBe(0);
  });

  it("stands while it is held, and goes on from there", () => {
    const paused = held(started(fresh, 0), 5_000);
    expect(secondsLeft(paused, sanding, 60_000)).toBeCloseTo(15, 9);
    expect(secondsLeft(started(paused, 60_000), sanding, 62_000)).toBeCloseTo(13, 9);
  });

  it("a clock set back does not give time away", () => {
    expect(secondsLeft(started(fresh, 50_000), sanding, 10_000)).toBe(20);
  });

  it("after a power cut stands at the seconds that it was seen to run, and asks whether the spinner ran on", () => {
    const kept = withBall(AT_THE_BEGINNING, "t", looked(started(fresh, 100_000), 108_000));
    const back = stateOf(afterACut(JSON.parse(JSON.stringify(kept))), "t", fresh.of);
    expect([back.wasCut, back.runningSince]).toEqual([true, null]);
    expect(secondsRun(back, sanding, 500_000)).toBeCloseTo(8, 9);
    expect(secondsRun(answered(back, false, 500_000), sanding, 500_000)).toBeCloseTo(8, 9);
    // It ran on for as long as the page was away, but a side has no more than its time.
    expect(secondsRun(answered(back, true, 110_000), sanding, 110_000)).toBeCloseTo(10, 9);
    expect(secondsRun(answered(back, true, 500_000), sanding, 500_000)).toBe(20);
    // A clock that stood is not asked about.
    expect(stateOf(afterACut(withBall(AT_THE_BEGINNING, "t", held(started(fresh, 0), 5_000))), "t", fresh.of).wasCut).toBe(false);
  });

  it("hangs on the ball: another side begins anew, another ball changes nothing, and the ball stays looked at", () => {
    const running = { ...started(fresh, 0), looked: "scanned" } as const;
    const kept = withBall(withBall(AT_THE_BEGINNING, "t", running), "u", started(stateOf(AT_THE_BEGINNING, "u", "x"), 1000));
    expect(stateOf(kept, "t", running.of)).toEqual(running);
    expect(stateOf(kept, "t", nameOf(sanding, "left"))).toMatchObject({ runningSince: null, ranMs: 0, looked: "scanned" });
    const many = Array.from({ length: 300 }, (_, i) => `b${i}`).reduce((state, id) => withBall(state, id, fresh), kept);
    expect(Object.keys(many.balls).length).toBeLessThanOrEqual(100);
  });
});

describe("is it this ball", () => {
  it("by the address on its label or the end of its serial number, three letters at least", () => {
    expect(isThisBall("http://127.0.0.1:4780/tickets/abc", "abc", null)).toBe(true);
    expect(isThisBall("http://127.0.0.1:4780/tickets/abd", "abc", "X1")).toBe(false);
    expect(isThisBall(" 0296 ", "abc", "INV100296")).toBe(true);
    expect(isThisBall("inv100296", "abc", "INV100296")).toBe(true);
    expect(isThisBall("96", "abc", "INV100296")).toBe(false);
    expect(isThisBall("", "abc", null)).toBe(false);
  });
});
