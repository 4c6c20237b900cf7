import type { Customer, CustomerBall } from "./customers.ts";
import type { Furnished } from "./furnish.ts";
import type { Making } from "./making.ts";
import { DAY, HOUR } from "./shopClock.ts";
import { makeShotNotes } from "./shots.ts";
import { dueMs } from "./surface.ts";
import { makeVisit, type Progress } from "./visits.ts";

/** Balls of one bowler that are due within so many days are brought along. */
const BROUGHT_ALONG_DAYS = 25;
/** People come when they have noticed, not when it is due. */
const LATE_DAYS = { from: 20, to: 60 } as const;
const NOTED_AFTER_VISIT = 0.2;

/** Every so many bowlers one comes in the last days in any case: a shop with an empty queue shows nothing. */
const EAGER_EVERY = 4;
const EAGER_DAYS = { from: 0.2, to: 5.5 } as const;

/** Two years, day by day: whoever has a ball that is due comes with it. */
export async function tellStory(making: Making, shop: Furnished, customers: readonly Customer[]): Promise<void> {
  const { dice, endMs, beginMs } = making;
  const eager = new Set(customers.filter((_, i) => i % EAGER_EVERY === 0));
  const nextAfter = (customer: Customer, afterMs: number): number => {
    const ms = Math.max(afterMs, nextVisitMs(making, customer));
    if (ms < endMs || !eager.delete(customer)) return ms;
    return Math.max(afterMs, endMs - dice.between(EAGER_DAYS.from, EAGER_DAYS.to) * DAY);
  };
  const next = new Map(customers.map((customer) => [customer, nextAfter(customer, beginMs)]));
  for (;;) {
    const [customer, arrivedMs] = [...next].reduce((first, entry) => (entry[1] < first[1] ? entry : first));
    if (arrivedMs >= endMs) return;
    const balls = broughtAlong(customer, arrivedMs);
    const progress = progressOf(making, arrivedMs);
    await makeVisit(making, shop, customer, balls, arrivedMs, progress);
    if (progress === "collected" && dice.chance(NOTED_AFTER_VISIT))
      await makeShotNotes(making, shop, customer, balls[0], Math.min(endMs, arrivedMs + 4 * DAY));
    next.set(customer, progress === "collected" ? nextAfter(customer, arrivedMs + 2 * DAY) : endMs);
  }
}

/** What is due or soon will be; else the ball that is due first. */
function broughtAlong({ balls }: Customer, arrivedMs: number): readonly CustomerBall[] {
  const due = balls.filter((ball) => dueMs(ball) < arrivedMs + BROUGHT_ALONG_DAYS * DAY);
  return due.length > 0 ? due : [balls.reduce((first, ball) => (dueMs(ball) < dueMs(first) ? ball : first))];
}

/** In the afternoon or evening of a day some time after the first ball is due; a queue would grow if all came at once. */
function nextVisitMs({ dice, beginMs }: Making, { balls }: Customer): number {
  const due = Math.max(beginMs, Math.min(...balls.map(dueMs)));
  const day = Math.floor(due / DAY) + dice.whole(LATE_DAYS.from, LATE_DAYS.to);
  return day * DAY + dice.between(15, 23) * HOUR;
}

/** What came in the last days is still in the shop. */
function progressOf({ dice, endMs }: Making, arrivedMs: number): Progress {
  const days = (endMs - arrivedMs) / DAY;
  if (days > 6) return "collected";
  if (days > 3) return dice.pick(["ready", "collected", "drying"]);
  return dice.pick(["received", "waiting for approval", "in work", "in work", "received"]);
}
