import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Ticket } from "#contract/records/ticket";
import type { Signed } from "#contract/records/ticketWork";
import { problemType } from "#contract/routes/problemKinds";
import { workHere } from "../../src/web/benchWork/onTheBench.ts";
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
    // What a refusal looks like is loaded with the first one.
    await vi.waitFor(() =>
      expect(told).toEqual([
        { key: "1", refused: null },
        { key: "2", refused: expect.stringContaining("not allowed here") },
      ]),
    );
    expect(keys(outbox)).toEqual(["2"]);
  });
});

describe("what is taken out", () => {
  it("is never sent where it waited, and has the id that the shop gave it where it was on its way or taken", async () => {
    const outbox = new Outbox(() => {});
    const answers: ((response: Response) => void)[] = [];
    vi.stubGlobal("fetch", () => new Promise<Response>((resolve) => answers.push(resolve)));
    outbox.add(stage("1"));
    outbox.add(stage("2"));
    await vi.advanceTimersByTimeAsync(0);
    const onItsWay = outbox.takeOut("1");
    expect(await outbox.takeOut("2")).toBeNull();
    answers[0](Response.json({ id: "row-1" }, { status: 201 }));
    expect(await onItsWay).toBe("row-1");
    expect([keys(outbox), answers.length]).toEqual([[], 1]);
    expect(await outbox.takeOut("1")).toBe("row-1");
    expect(await outbox.takeOut("row-0")).toBe("row-0");
  });
});

describe("several changes of one ticket that waited", () => {
  it("are each made on what the one before came to, also where a signature moved the ticket in between", async () => {
    const outbox = new Outbox(() => {});
    const change = (key: string, path: Waiting["path"], version: number) =>
      outbox.add({ key, method: "PATCH", path, body: {}, what: "", version });
    change("1", "/api/tickets/t", 5);
    change("2", "/api/tickets/t/move", 6);
    change("other", "/api/tickets/u", 6);
    const asked: (string | null)[] = [];
    const versions = [7, 8, 7];
    vi.stubGlobal("fetch", (path: string, { headers }: RequestInit) => {
      asked.push(`${path} ${new Headers(headers).get("If-Match")}`);
      return Promise.resolve(Response.json({ version: versions.shift() }));
    });
    await vi.advanceTimersByTimeAsync(4100);
    expect(asked).toEqual(['/api/tickets/t "5"', '/api/tickets/t/move "7"', '/api/tickets/u "6"']);
    expect(keys(outbox)).toEqual([]);
  });
});

describe("what this browser has signed and the shop has not got yet", () => {
  const planned = {
    id: "t",
    stages: [
      { id: "0-0", kind: "clean", abrasive: null, sideIds: [], what: null },
      { id: "0-1", kind: "cut", abrasive: "pad-500", sideIds: [], what: null },
    ],
    been: [{ state: "received", at: "2026-01-01T00:00:00.000Z" }],
  } as unknown as Ticket;
  const entry = (i: number, createdAt: string | null): Signed => {
    const { id: stageId, kind, abrasive } = planned.stages[i];
    const doneAt = `2026-01-01T00:0${i}:00.000Z`;
    return {
      id: `e${i}`,
      stageId,
      revision: 0,
      kind,
      abrasive,
      what: null,
      signs: true,
      sidesDone: [],
      sidesAgain: [],
      againSeconds: null,
      way: null,
      began: null,
      cautionsRead: [],
      personId: "p",
      takesBack: null,
      doneAt,
      initials: "T",
      createdAt,
    };
  };
  const waiting = (i: number) => {
    const outbox = new Outbox(() => {});
    outbox.add({ key: `k${i}`, path: "/api/stages-done", what: "", body: { ...entry(i, null), ticketId: "t", personId: "p" } });
    return outbox.snapshot();
  };

  it("counts once, also while the shop already has it", () => {
    expect(workHere(planned, [entry(0, "2026-01-01T00:00:01.000Z")], waiting(1)).next).toBeNull();
    const taken = [0, 1].map((i) => entry(i, `2026-01-01T00:0${i}:01.000Z`));
    expect(workHere(planned, taken, waiting(1)).signed).toHaveLength(2);
  });

  it("does not count where the shop refused it, or where it is another ticket's", () => {
    const [sent] = waiting(0);
    expect(workHere(planned, [], [{ ...sent, refused: "no" }]).signed).toEqual([]);
    expect(workHere({ ...planned, id: "other" }, [], [sent]).signed).toEqual([]);
  });
});
