import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { keepBackups } from "#server/backupSchedule";
import { jsonLog } from "#server/log";
import { type TestShop, testShop } from "../records/shop.ts";

let shop: TestShop;
const lines: string[] = [];
const log = jsonLog(
  "requests",
  (line) => lines.push(line),
  () => "2026-05-31T18:00:00.000Z",
);
beforeEach(async () => {
  lines.length = 0;
  shop = await testShop();
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout", "setInterval", "clearInterval"] });
});
afterEach(async () => {
  vi.useRealTimers();
  await shop.end();
});

test("a backup is made soon after the start, and not again before it is due", async () => {
  const stop = keepBackups(shop.records, log);
  vi.advanceTimersByTime(60_000);
  vi.advanceTimersByTime(2 * 3_600_000);
  await stop();
  expect(await shop.records.backups.list()).toMatchObject([{ why: "scheduled" }]);
  expect(lines.map((line) => JSON.parse(line))).toMatchObject([{ event: "backup", level: "info" }]);
});

test("one that fails is logged without words, and the next hour tries again; stopped, nothing more is tried", async () => {
  const keepUp = vi.fn().mockRejectedValue(new Error("no room for Ottilie Sandgrouse"));
  const stop = keepBackups({ backups: { ...shop.records.backups, keepUp } }, log);
  vi.advanceTimersByTime(60_000);
  vi.advanceTimersByTime(3_600_000);
  await stop();
  vi.advanceTimersByTime(9 * 3_600_000);
  expect(keepUp).toHaveBeenCalledTimes(2);
  expect(lines.map((line) => JSON.parse(line).level)).toEqual(["error", "error"]);
  expect(lines.join("")).not.toContain("Sandgrouse");
});
