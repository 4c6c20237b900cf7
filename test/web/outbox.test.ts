import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Ticket } from "#contract/records/ticket";
import { problemType } from "#contract/routes/problemDocument";
import { countSigned, signatures, withWaitingStages } from "../../src/web/benchWork/signedStages.ts";
import { Outbox, type Waiting } from "../../src/web/shop/outbox.ts";

/* What waits to be sent, over a browser's memory and a network that are not there. */

// The client of the shop's server asks for its own address as soon as it is there.
vi.hoisted(() => vi.stubGlobal("location", { origin: "http://shop.example" }));

let isFull = false;
beforeEach(() => {
  const kept = new Map<string, string>();
  isFull = false;
  vi.stubGlobal("localStorage", {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem(key: string, text: string) {
      if (isFull) throw new DOMException("full", "QuotaExceededError");
      kept.set(key, text);
    },
  });
  vi.stubGlobal("dispatchEvent", () => true);
  vi.stubGlobal("fetch", () => Promise.reject(new TypeError("no network")));
  vi.useFakeTimers();
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

const stage = (key: string, what = "Sand") => ({
  key,
  path: "/api/stages-done" as const,
  body: { ticketId: "t", what, doneAt: key },
  what,
});
const keys = (outbox: Outbox) => outbox.snapshot().map(({ key }) => key);

const refusal = () =>
  Response.json(
    { type: problemType("invalid"), title: "That is not valid.", status: 422, detail: "not allowed here", problems: [] },
    { status: 422, headers: { "content-type": "application/problem+json" } },
  );

describe("the outbox", () => {
  it("of two tabs loses nothing that either of them has put in", () => {
    const early = new Outbox(() => {});
    const bench = new Outbox(() => {});
    for (const key of ["1", "2", "3"]) bench.add(stage(key));
    early.add(stage("4"));
    expect(keys(early)).toEqual(["1", "2", "3", "4"]);
    bench.hear();
    bench.drop("2");
    expect(keys(new Outbox(() => {}))).toEqual(["1", "3", "4"]);
  });

  it("tells in every tab of what one of them has sent, and sends what a tab that was closed has left", async () => {
    const told: string[] = [];
    const other = new Outbox(({ key }) => told.push(key));
    const sender = new Outbox(() => {});
    sender.add(stage("1"));
    other.hear();
    expect([keys(other), told]).toEqual([["1"], []]);
    sender.drop("1");
    other.hear();
    expect([keys(other), told]).toEqual([[], ["1"]]);
    sender.add(stage("2"));
    other.hear();
    vi.stubGlobal("fetch", () => Promise.resolve(Response.json({}, { status: 201 })));
    await vi.advanceTimersByTimeAsync(4100);
    expect([keys(other), told]).toEqual([[], ["1", "2"]]);
  });

  it("says where a browser keeps nothing of it, and still holds it", () => {
    const outbox = new Outbox(() => {});
    outbox.add(stage("1"));
    expect(outbox.isKept()).toBe(true);
    isFull = true;
    outbox.add(stage("2"));
    expect([outbox.isKept(), keys(outbox)]).toEqual([false, ["1", "2"]]);
    outbox.add(stage("3"));
    expect(keys(outbox)).toEqual(["1", "2", "3"]);
  });

  it("tells of what was taken and of what was refused", async () => {
    const told: Pick<Waiting, "key" | "refused">[] = [];
    const outbox = new Outbox(({ key, refused }) => told.push({ key, refused }));
    const answers = [Response.json({}, { status: 201 }), refusal()];
    vi.stubGlobal("fetch", () => Promise.resolve(answers.shift()));
    outbox.add(stage("1"));
    outbox.add(stage("2"));
    await vi.advanceTimersByTimeAsync(100);
    expect(told).toEqual([
      { key: "1", refused: null },
      { key: "2", refused: expect.stringContaining("not allowed here") },
    ]);
    expect(keys(outbox)).toEqual(["2"]);
  });
});

describe("who has signed the stages of a ticket", () => {
  const planned = (...names: readonly string[]) =>
    ({
      id: "t",
      stages: names.map((what) => ({ what })),
      been: [{ state: "received", at: "2026-01-01T00:00:00.000Z" }],
    }) as unknown as Ticket;
  const done = (...names: readonly string[]) =>
    names.map((what, i) => {
      const doneAt = `2026-01-01T00:0${i}:00.000Z`;
      return { what, doneAt, initials: "T", createdAt: doneAt };
    });
  const count = (ticket: Ticket, signed: ReturnType<typeof done>) => countSigned(ticket, signed, []);

  it("each stage once, in the order of the work, however often it was signed", () => {
    expect(count(planned("Clean", "500", "1000"), done("Clean", "Clean", "500"))).toBe(2);
    expect(count(planned("Clean", "500"), done())).toBe(0);
  });

  it("work that was planned anew goes on where it differs, and its stages bear no initials of other work", () => {
    const anew = planned("Clean", "2000", "Polish");
    expect(count(anew, done("Clean", "500", "1000"))).toBe(1);
    expect(signatures(anew, done("Clean", "500", "1000", "2000")).map((one) => one?.doneAt ?? null)).toEqual([
      "2026-01-01T00:00:00.000Z",
      "2026-01-01T00:03:00.000Z",
      null,
    ]);
  });

  it("on a ball that came back is asked from the first stage on, whatever the clock of the bench says", () => {
    const ticket = planned("Clean", "500");
    const back = { ...ticket, been: [...ticket.been, { state: "rework", at: "2026-01-02T00:00:00.000Z", by: "p" }] } as Ticket;
    const first = done("Clean", "500");
    const again = { what: "Clean", doneAt: "2026-01-01T00:30:00.000Z", initials: "U", createdAt: "2026-01-02T00:20:00.000Z" };
    expect(count(ticket, first)).toBe(2);
    expect(signatures(back, first)).toEqual([null, null]);
    expect(signatures(back, [...first, again])).toEqual([again, null]);
    const outbox = new Outbox(() => {});
    outbox.add(stage("2026-01-02T00:30:00.000Z", "500"));
    expect(countSigned(back, [...first, again], outbox.snapshot())).toBe(2);
  });

  it("what waits in this browser counts once, also while the shop already has it; what was refused does not count", () => {
    const outbox = new Outbox(() => {});
    outbox.add(stage("2026-01-01T00:05:00.000Z", "500"));
    const [sent] = outbox.snapshot();
    const taken = { what: "500", doneAt: "2026-01-01T00:05:00.000Z", initials: "T", createdAt: "2026-01-01T00:05:01.000Z" };
    expect(withWaitingStages("t", done("Clean"), [sent])).toHaveLength(2);
    expect(withWaitingStages("t", [...done("Clean"), taken], [sent])).toHaveLength(2);
    expect(withWaitingStages("other", done("Clean"), [sent])).toHaveLength(1);
    expect(withWaitingStages("t", done("Clean"), [{ ...sent, refused: "no" }])).toHaveLength(1);
  });
});
