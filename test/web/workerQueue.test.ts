import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Answer, Call } from "../../src/web/client/protocol.ts";
import { workerQueue } from "../../src/web/client/workerQueue.ts";

/* The page's queue of calls over workers of a browser that is not there. */

/** Answers every call with its number, unless its file could not be loaded. */
class FakeWorker extends EventTarget {
  static all: FakeWorker[] = [];
  static canLoad = true;
  static hasWords = true;
  readonly canLoad = FakeWorker.canLoad && FakeWorker.hasWords;
  readonly name: string;
  isEnded = false;
  constructor(_: URL, { name }: WorkerOptions) {
    super();
    this.name = name ?? "";
    FakeWorker.all.push(this);
    if (!FakeWorker.canLoad) queueMicrotask(() => this.dispatchEvent(new Event("error")));
    // It runs, but its catalogue did not come.
    else if (!FakeWorker.hasWords) queueMicrotask(() => this.dispatchEvent(new MessageEvent("message", { data: null })));
  }
  postMessage({ number }: { readonly number: number; readonly call: Call }): void {
    const data = { number, reply: { kind: "answered", number } } as unknown as Answer;
    if (this.canLoad && !this.isEnded) queueMicrotask(() => this.dispatchEvent(new MessageEvent("message", { data })));
  }
  terminate(): void {
    this.isEnded = true;
  }
}

class FakeErrorEvent extends Event {
  readonly message: string;
  constructor(message: string) {
    super("error");
    this.message = message;
  }
}

beforeEach(() => {
  FakeWorker.all = [];
  FakeWorker.canLoad = true;
  FakeWorker.hasWords = true;
  vi.stubGlobal("document", { documentElement: { lang: "de" } });
  vi.stubGlobal("Worker", FakeWorker);
  vi.stubGlobal("ErrorEvent", FakeErrorEvent);
});
afterEach(() => vi.unstubAllGlobals());

const ASK: Call = { kind: "read", bytes: new Uint8Array() };
const outcomes = (calls: readonly Promise<unknown>[]) =>
  Promise.all(calls.map((call) => call.then(() => "answered").catch((error: Error) => error.message)));

describe("the page's workers", () => {
  it("that could not be loaded are said to be missing, and are asked for anew by the next call", async () => {
    const queue = workerQueue(2);
    FakeWorker.canLoad = false;
    expect(await outcomes([queue.call(ASK, null), queue.call(ASK, null), queue.call(ASK, null)])).toEqual(
      Array(3).fill("a file of the page could not be loaded"),
    );
    FakeWorker.canLoad = true;
    expect(await outcomes([queue.call(ASK, null), queue.call(ASK, null), queue.call(ASK, null)])).toEqual(Array(3).fill("answered"));
    expect(FakeWorker.all.filter(({ isEnded }) => !isEnded)).toHaveLength(2);
  });

  it("whose file did not come once are asked for once more, and nobody notices", async () => {
    const queue = workerQueue(1);
    FakeWorker.canLoad = false;
    const calls = [queue.call(ASK, null), queue.call(ASK, null)];
    FakeWorker.canLoad = true;
    expect(await outcomes(calls)).toEqual(["answered", "answered"]);
  });

  it("whose words did not come are asked for once more, in the page's language", async () => {
    const queue = workerQueue(1);
    FakeWorker.hasWords = false;
    const calls = [queue.call(ASK, null), queue.call(ASK, null)];
    FakeWorker.hasWords = true;
    expect(await outcomes(calls)).toEqual(["answered", "answered"]);
    expect(FakeWorker.all.map(({ name }) => name)).toEqual(["de", "de"]);
  });

  it("of which one breaks while nothing is asked of it leave no call without an answer", async () => {
    const queue = workerQueue(2);
    await queue.call(ASK, null);
    for (const worker of FakeWorker.all) worker.dispatchEvent(new FakeErrorEvent("out of memory"));
    expect(await outcomes([queue.call(ASK, null), queue.call(ASK, null), queue.call(ASK, null)])).toEqual(Array(3).fill("answered"));
  });

  it("that break in the middle of a call fail that call, and the ones behind it are answered", async () => {
    const queue = workerQueue(1);
    const first = queue.call(ASK, null);
    const second = queue.call(ASK, null);
    FakeWorker.all[0].dispatchEvent(new FakeErrorEvent("out of memory"));
    expect(await outcomes([first, second])).toEqual(["out of memory", "answered"]);
  });
});
