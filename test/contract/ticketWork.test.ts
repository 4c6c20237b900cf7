import { describe, expect, it } from "vitest";
import type { Ticket } from "#contract/records/ticket";
import { type Signed, workOfTicket } from "#contract/records/ticketWork";

/* Work that was planned and signed before stages had ids: known by what a stage was called and what was used. */

const planned = (...names: readonly string[]) =>
  ({
    stages: names.map((what, i) => ({ id: `0-${i}`, what, kind: "cut", abrasive: null, sideIds: [] })),
    been: [{ state: "received", at: "2026-01-01T00:00:00.000Z" }],
  }) as unknown as Ticket;
const old = {
  stageId: null,
  revision: null,
  kind: null,
  abrasive: null,
  signs: true,
  sidesDone: [],
  sidesAgain: [],
  againSeconds: null,
  way: null,
  began: null,
  cautionsRead: [],
  takesBack: null,
  personId: "p",
  initials: "T",
};
const done = (...names: readonly string[]): Signed[] =>
  names.map((what, i) => {
    const doneAt = `2026-01-01T00:0${i}:00.000Z`;
    return { ...old, id: `e${i}`, what, doneAt, createdAt: doneAt };
  });
const states = (ticket: Ticket, signed: readonly Signed[]) => workOfTicket(ticket, signed).stages.map(({ state }) => state);

describe("two devices at one side", () => {
  it("is of the one that began it last by the shop's clock, however the devices' clocks are set", () => {
    const ticket = {
      ...planned("500"),
      stages: [{ id: "0-0", what: null, kind: "cut", abrasive: null, sideIds: ["grip"] }],
    } as unknown as Ticket;
    const begins = (device: string, doneAt: string, createdAt: string | null): Signed => ({
      ...old,
      id: device,
      stageId: "0-0",
      what: null,
      signs: false,
      began: { side: "grip", device },
      doneAt,
      createdAt,
    });
    const ahead = begins("ahead", "2026-01-01T09:00:00.000Z", "2026-01-01T08:00:00.000Z");
    const right = begins("right", "2026-01-01T08:01:00.000Z", "2026-01-01T08:01:00.000Z");
    const running = (...entries: Signed[]) => workOfTicket(ticket, entries).next?.running?.id;
    expect([running(ahead), running(ahead, right), running(right, ahead)]).toEqual(["ahead", "right", "right"]);
    expect(running(right, { ...ahead, id: "here", createdAt: null })).toBe("here");
  });
});

describe("old signatures", () => {
  it("count each stage once, in the order of the work, however often it was signed", () => {
    expect(states(planned("Clean", "500", "1000"), done("Clean", "Clean", "500"))).toEqual(["signed", "signed", "open"]);
    expect(states(planned("Clean", "500"), [])).toEqual(["open", "open"]);
  });

  it("go on where work that was planned anew differs, and lend their initials to no other work", () => {
    const anew = planned("Clean", "2000", "Polish");
    expect(states(anew, done("Clean", "500", "1000"))).toEqual(["signed", "open", "open"]);
    const { stages } = workOfTicket(anew, done("Clean", "500", "1000", "2000"));
    expect(stages.map(({ by }) => by?.id ?? null)).toEqual(["e0", "e3", null]);
  });

  it("of a ball that came back count no more, whatever the clock of the bench says", () => {
    const ticket = planned("Clean", "500");
    const back = { ...ticket, been: [...ticket.been, { state: "rework", at: "2026-01-02T00:00:00.000Z", by: "p" }] } as Ticket;
    const first = done("Clean", "500");
    const again = { ...old, id: "again", what: "Clean", doneAt: "2026-01-01T00:30:00.000Z", createdAt: "2026-01-02T00:20:00.000Z" };
    expect(states(ticket, first)).toEqual(["signed", "signed"]);
    expect(states(back, first)).toEqual(["open", "open"]);
    expect(states(back, [...first, again])).toEqual(["signed", "open"]);
    const unsent = { ...old, id: "unsent", what: "500", doneAt: "2026-01-02T00:30:00.000Z", createdAt: null };
    expect(states(back, [...first, again, unsent])).toEqual(["signed", "signed"]);
  });
});
