import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Ticket } from "#contract/records/ticket";
import {
  AT_THE_BEGINNING,
  held,
  isThisBall,
  type PlannedStage,
  secondsLeft,
  sideAgain,
  sideFinished,
  signedOff,
  started,
  stateFor,
  stepsOf,
} from "../../src/web/rooms/bench/guide.ts";

const stage = (kind: PlannedStage["kind"], abrasive: string | null): PlannedStage => ({
  what: kind ?? "",
  kind,
  abrasive,
  way: null,
  secondsPerSide: 20,
  sides: 6,
  force: "medium",
  sideIds: ["grip", "opposite", "left", "right", "fingers", "thumb"],
  cautions: [],
});
const ticket = (id: string, stages: readonly PlannedStage[]) => ({ id, stages }) as unknown as Ticket;

describe("the order of a batch", () => {
  const first = ticket("a", [stage("clean", null), stage("cut", "pad-1000"), stage("cut", "pad-2000"), stage("check", null)]);
  const second = ticket("b", [stage("clean", null), stage("cut", "pad-500"), stage("cut", "pad-1000"), stage("polish", "cutting-polish")]);

  it("takes up a pad once for all balls that want it, coarse before fine (common practice)", () => {
    const order = stepsOf([first, second], () => 0).map(
      ({ ticketId, stage: at }) => `${ticketId} ${[first, second].find(({ id }) => id === ticketId)?.stages[at].abrasive ?? ""}`,
    );
    expect(order).toEqual(["a ", "b ", "b pad-500", "a pad-1000", "b pad-1000", "a pad-2000", "b cutting-polish", "a "]);
  });

  it("leaves out what is signed", () => {
    expect(stepsOf([first, second], (id) => (id === "a" ? 4 : 3))).toEqual([{ ticketId: "b", stage: 3 }]);
    expect(stepsOf([first], () => 4)).toEqual([]);
  });

  it("keeps every ball's stages in their order, each once, whatever the batch (property)", () => {
    const anyStage = fc.constantFrom(stage("clean", null), stage("cut", "pad-500"), stage("cut", "pad-2000"), stage("polish", "compound"));
    const anyBatch = fc.array(fc.array(anyStage, { maxLength: 5 }), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(anyBatch, (batch) => {
        const tickets = batch.map((stages, i) => ticket(String(i), stages));
        const steps = stepsOf(tickets, () => 0);
        for (const { id, stages } of tickets)
          expect(steps.filter(({ ticketId }) => ticketId === id).map((step) => step.stage)).toEqual(stages.map((_, i) => i));
      }),
      { seed: 6, numRuns: 200 },
    );
  });
});

describe("the clock of a side", () => {
  const sanding = stage("cut", "pad-1000");

  it("goes by the time of day, so that a sleeping tab or a reload loses no second", () => {
    const running = started(AT_THE_BEGINNING, 1_000_000);
    expect(secondsLeft(running, sanding, 1_007_500)).toBeCloseTo(12.5, 9);
    const reloaded = JSON.parse(JSON.stringify(running));
    expect(secondsLeft(reloaded, sanding, 1_007_500)).toBeCloseTo(12.5, 9);
    expect(secondsLeft(running, sanding, 9_000_000)).toBe(0);
  });

  it("stands while it is held, and goes on from there", () => {
    const paused = held(started(AT_THE_BEGINNING, 0), 5_000);
    expect(secondsLeft(paused, sanding, 60_000)).toBeCloseTo(15, 9);
    expect(secondsLeft(started(paused, 60_000), sanding, 62_000)).toBeCloseTo(13, 9);
  });

  it("a clock set back does not give time away", () => {
    expect(secondsLeft(started(AT_THE_BEGINNING, 50_000), sanding, 10_000)).toBe(20);
  });

  it("writes down every side, takes one back, and begins the next step anew", () => {
    const two = sideFinished(sideFinished(AT_THE_BEGINNING, sanding), sanding);
    expect(two).toMatchObject({ side: 2, sideSeconds: [20, 20] });
    expect(sideAgain(two)).toMatchObject({ side: 1, sideSeconds: [20] });
    const next = stateFor(signedOff({ ...two, of: "a 1" }), { ticketId: "a", stage: 2 });
    expect(next).toMatchObject({ side: 0, sideSeconds: [] });
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
