import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import type { Records } from "#records/records";
import { type QueueBook, queueBook } from "#server/queue";
import { hearQueue } from "#server/queueEvents";
import { onTheCounter, type TestShop, testShop } from "../records/shop.ts";

/* The queue is asked for by every counter every few seconds: it is made once after a change, and nobody sees an old one. */

describe("the queue for everybody who asks", () => {
  let shop: TestShop;
  let listed: number;
  let ms: number;
  let records: Records;

  beforeEach(async () => {
    shop = await testShop();
    listed = 0;
    ms = 0;
    const { tickets } = shop.records;
    const list: typeof tickets.list = (asked) => {
      listed += 1;
      return tickets.list(asked);
    };
    records = { ...shop.records, tickets: { ...tickets, list } };
  });
  afterEach(() => shop.end());

  test("a hundred who ask at once are answered from one reading, and so are those who come until something changes", async () => {
    const { ticket } = await onTheCounter(shop);
    const book = queueBook(records, () => ms);
    const answers = await Promise.all(Array.from({ length: 100 }, () => book.now()));
    expect(answers.every(({ items }) => items.length === 1 && items[0].ticket.id === ticket.id)).toBe(true);
    await book.now();
    expect(listed).toBe(1);
    book.close();
  });

  test("whoever asks after a write sees it: a ticket that moved, a ball and a bowler that were renamed", async () => {
    const { ticket, ball, bowler } = await onTheCounter(shop);
    const book = queueBook(records, () => ms);
    expect((await book.now()).items[0]).toMatchObject({ ballName: "Grey Heron", bowlerName: "Ottilie Sandgrouse" });
    await records.balls.change(ball.id, { name: "Grey Heron II" }, { by: shop.by, expectedVersion: ball.version });
    await records.bowlers.change(bowler.id, { name: "O. Sandgrouse" }, { by: shop.by, expectedVersion: bowler.version });
    expect((await book.now()).items[0]).toMatchObject({ ballName: "Grey Heron II", bowlerName: "O. Sandgrouse" });
    await records.tickets.move(ticket.id, "cancelled", { by: shop.by, expectedVersion: ticket.version });
    expect((await book.now()).items).toEqual([]);
    book.close();
  });

  test("what another program wrote, which tells nobody, is there a second later", async () => {
    const book = queueBook(records, () => ms);
    expect((await book.now()).items).toEqual([]);
    const beside = await testShop({ folder: shop.parts.folder });
    await onTheCounter(beside);
    await beside.records.close();
    ms = 1001;
    expect((await book.now()).items).toHaveLength(1);
    book.close();
  });

  test("a page that listens hears of it again after a reading that failed", async () => {
    const tellers: (() => void)[] = [];
    let readings = 0;
    const failing: QueueBook = {
      now() {
        readings += 1;
        return readings <= 2 ? Promise.reject(new Error("cut")) : Promise.resolve({ items: [] });
      },
      watch(tell) {
        tellers.push(tell);
        return () => tellers.splice(0);
      },
      close: () => {},
    };
    const sent: unknown[] = [];
    const gone = new AbortController();
    vi.useFakeTimers();
    const hearing = hearQueue(failing)(async (_event, data) => void sent.push(data), gone.signal);
    await vi.advanceTimersByTimeAsync(2500);
    expect([readings, sent]).toEqual([3, [{ items: [] }]]);
    tellers[0]();
    await vi.advanceTimersByTimeAsync(500);
    expect(sent).toHaveLength(2);
    gone.abort();
    await hearing;
    await vi.advanceTimersByTimeAsync(5000);
    expect(readings).toBe(4);
    vi.useRealTimers();
  });

  test("those who watch are told of what the queue shows, and of nothing else, until they stop", async () => {
    const book = queueBook(records, () => ms);
    let told = 0;
    const stop = book.watch(() => {
      told += 1;
    });
    await records.houses.create({ name: "Invented house" }, { by: shop.by });
    expect(told).toBe(0);
    await records.bowlers.create({ name: "Ottilie Sandgrouse" }, { by: shop.by });
    expect(told).toBe(1);
    stop();
    await records.bowlers.create({ name: "Egon Plover" }, { by: shop.by });
    expect(told).toBe(1);
    book.close();
  });
});
