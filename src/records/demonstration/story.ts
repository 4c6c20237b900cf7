import type { Customer, CustomerBall } from "./customers.ts";
import type { Furnished } from "./furnish.ts";
import type { Making, Times } from "./making.ts";
import { openBefore, someTime } from "./openHours.ts";
import { DAY, HOUR } from "./shopClock.ts";
import { noteShots } from "./shots.ts";
import { dueMs } from "./surface.ts";
import { visitOf } from "./visits.ts";

/** Balls of one bowler that are due within so many days are brought along. */
const BROUGHT_ALONG_DAYS = 25;
/** People come when they have noticed, not when it is due. */
const LATE_DAYS = { from: 20, to: 60 } as const;
const NOTED_AFTER_VISIT = 0.25;
/** Every so many bowlers one comes in the last days in any case: a shop with an empty queue shows nothing. */
const EAGER_EVERY = 3;
/** Some in the last days, some in the last hours, whose balls are at the bench, and some have just come. */
const EAGER_DAYS = [
  [0.1, 2.5],
  [0.01, 0.06],
  [0.001, 0.006],
] as const;

/**
 * Two years. Each bowler's story goes on by itself and says when it goes on; whichever is next in time is told next. What is under way
 * when the time is up stays as it is then: that is the queue.
 */
export async function tellStory(making: Making, shop: Furnished, customers: readonly Customer[]): Promise<void> {
  const stories = customers.map((customer, i) => storyOf(making, shop, customer, i % EAGER_EVERY === 0));
  const next = new Map<Times, number>();
  for (const story of stories) await goOn(story, next);
  for (;;) {
    const [story, ms] = [...next].reduce((first, entry) => (entry[1] < first[1] ? entry : first));
    if (ms >= making.endMs) return;
    making.clock.at(ms);
    await goOn(story, next);
  }
}

async function goOn(story: Times, next: Map<Times, number>): Promise<void> {
  const { value, done } = await story.next();
  next.set(story, done === true ? Number.POSITIVE_INFINITY : value);
}

/** A bowler comes, collects, bowls, and comes again. */
async function* storyOf(making: Making, shop: Furnished, customer: Customer, isEager: boolean): Times {
  const { dice, clock, endMs } = making;
  for (let mayHurry = isEager; ; ) {
    const usualMs = Math.max(clock.now() + 2 * DAY, nextVisitMs(making, customer));
    const hurries = mayHurry && usualMs >= endMs;
    if (hurries) mayHurry = false;
    const [from, to] = dice.pick(EAGER_DAYS);
    yield hurries ? Math.max(clock.now() + HOUR, openBefore(endMs - dice.between(from, to) * DAY)) : usualMs;
    const balls = broughtAlong(customer, clock.now());
    yield* visitOf(making, shop, customer, balls);
    if (dice.chance(NOTED_AFTER_VISIT)) yield* noteShots(making, shop, customer, balls);
  }
}

/** What is due or soon will be; else the ball that is due first. */
function broughtAlong({ balls }: Customer, nowMs: number): readonly CustomerBall[] {
  const due = balls.filter((ball) => dueMs(ball) < nowMs + BROUGHT_ALONG_DAYS * DAY);
  return due.length > 0 ? due : [balls.reduce((first, ball) => (dueMs(ball) < dueMs(first) ? ball : first))];
}

/** While the shop is open, on a day some time after the first ball is due. */
function nextVisitMs({ dice, beginMs }: Making, { balls }: Customer): number {
  const due = Math.max(beginMs, Math.min(...balls.map(dueMs)));
  const day = Math.floor(due / DAY) + dice.whole(LATE_DAYS.from, LATE_DAYS.to);
  return someTime(dice, day * DAY, [15, 24]);
}
