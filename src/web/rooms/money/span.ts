import type { Takings } from "#contract/routes/money";
import type { MONEY } from "#words/en/rooms/money";

/** Days of the calendar, both included. */
export interface Span {
  readonly from: string;
  readonly to: string;
}

export type SpanName = keyof typeof MONEY.spans;

const DAY_MS = 86_400_000;
const WEEK_DAYS = 7;

/** The span of that name that today lies in or follows; weeks begin on Monday (ISO 8601). */
export function spanOf(name: SpanName, today: string): Span {
  const [year, month] = today.split("-").map(Number);
  const weekday = (new Date(today).getUTCDay() + WEEK_DAYS - 1) % WEEK_DAYS;
  switch (name) {
    case "today":
      return { from: today, to: today };
    case "week":
      return { from: dayText(Date.parse(today) - weekday * DAY_MS), to: today };
    case "month":
      return { from: `${today.slice(0, 8)}01`, to: today };
    case "lastMonth":
      return { from: dayText(Date.UTC(year, month - 2, 1)), to: dayText(Date.UTC(year, month - 1, 0)) };
    case "year":
      return { from: dayText(Date.UTC(year - 1, month, 1)), to: today };
  }
}

function dayText(ms: number): string {
  return new Date(ms).toISOString().slice(0, 10);
}

export interface DayTakings {
  readonly day: string;
  readonly takenCents: number;
  readonly givenCents: number;
}

/** What changed hands on each day that something did, the latest first. */
export function byDay(payments: Takings["payments"]): readonly DayTakings[] {
  const days = new Map<string, DayTakings>();
  for (const { day, payment } of payments) {
    const { takenCents, givenCents } = days.get(day) ?? { takenCents: 0, givenCents: 0 };
    const isPayment = payment.kind === "payment";
    days.set(day, {
      day,
      takenCents: takenCents + (isPayment ? payment.cents : 0),
      givenCents: givenCents + (isPayment ? 0 : payment.cents),
    });
  }
  return [...days.values()].toSorted((a, b) => b.day.localeCompare(a.day));
}

/** What is left of a payment after what was given back of it in the same list. */
export function leftOf(payment: Takings["payments"][number]["payment"], payments: Takings["payments"]): number {
  const given = payments.filter((one) => one.payment.refundOf === payment.id);
  return payment.cents - given.reduce((sum, one) => sum + one.payment.cents, 0);
}

/** What is left of its tip. */
export function tipLeftOf(payment: Takings["payments"][number]["payment"], payments: Takings["payments"]): number {
  const given = payments.filter((one) => one.payment.refundOf === payment.id);
  return payment.tipCents - given.reduce((sum, one) => sum + one.payment.tipCents, 0);
}
