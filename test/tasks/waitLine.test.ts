import { expect, test } from "vitest";
import { waitLine } from "#tasks/waitLine";

/** Workers that note what they were given and answer when they are told to. */
function bench(...workers: string[]) {
  const given: [string, number][] = [];
  const line = waitLine<string, number, string>((worker, call) => given.push([worker, call]));
  for (const worker of workers) line.join(worker);
  return { given, line };
}

test("calls are taken in the order in which they came, one a worker", async () => {
  const { given, line } = bench("a");
  const replies = [1, 2, 3].map((call) => line.ask(call, null));
  expect(given).toEqual([["a", 1]]);
  for (const reply of ["one", "two", "three"]) line.finish("a", { reply });
  expect(await Promise.all(replies)).toEqual(["one", "two", "three"]);
  expect(given.map(([, call]) => call)).toEqual([1, 2, 3]);
});

test("a stopped call leaves the line; one that is being worked on is dropped when it comes", async () => {
  const { given, line } = bench("a");
  const [taken, waits] = [new AbortController(), new AbortController()];
  const first = line.ask(1, taken.signal);
  const second = line.ask(2, waits.signal);
  const third = line.ask(3, null);
  taken.abort("changed my mind");
  waits.abort("me too");
  await expect(first).rejects.toBe("changed my mind");
  await expect(second).rejects.toBe("me too");
  line.finish("a", { reply: "late" });
  line.finish("a", { reply: "three" });
  expect(await third).toBe("three");
  expect(given.map(([, call]) => call)).toEqual([1, 3]);
  await expect(line.ask(4, AbortSignal.abort("before"))).rejects.toBe("before");
});

test("a worker that is gone takes only its own call with it", async () => {
  const { given, line } = bench("a");
  const lost = line.ask(1, null);
  const kept = line.ask(2, null);
  expect(line.lose("a", "died")).toBe(true);
  await expect(lost).rejects.toBe("died");
  line.join("b");
  line.finish("b", { reply: "two" });
  expect(await kept).toBe("two");
  expect(line.lose("b", "died idle")).toBe(false);
  const nobody = line.ask(3, null);
  line.rejectWaiting("no worker can start");
  await expect(nobody).rejects.toBe("no worker can start");
  expect(given.map(([worker]) => worker)).toEqual(["a", "b"]);
});

test("closing rejects every call, taken or not", async () => {
  const { line } = bench("a");
  const calls = [line.ask(1, null), line.ask(2, null)];
  line.rejectAll("closed");
  expect((await Promise.allSettled(calls)).map((call) => call.status === "rejected" && call.reason)).toEqual(["closed", "closed"]);
});
