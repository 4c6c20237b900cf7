import { type MeasuredBall, measuredValue, type Quantity } from "./measuredBall.ts";
import { type BookId, HARDNESS_TEST_C, type LimitRecord, RULE_BOOKS } from "./ruleBooks.ts";

/** A limit that an event or a shop sets itself. It replaces a book's warning on the same quantity, and stands beside a book's limit. */
export interface OwnLimit {
  readonly quantity: Quantity;
  readonly least: number | null;
  readonly most: number | null;
  readonly why: string;
}

/** Why a limit was not checked. */
export type NotChecked = "notMeasured" | "needs" | "noRecord" | "temperature";

/** One limit held against the ball. */
export interface LimitAnswer {
  readonly topic: string;
  readonly quantity: Quantity;
  readonly verdict: "within" | "outside" | "warning" | "notChecked";
  readonly value: number | null;
  readonly least: number | null;
  readonly most: number | null;
  /** How far inside; negative outside; null where there is no value. In the quantity's unit. */
  readonly margin: number | null;
  readonly reason: NotChecked | null;
  /** What must be known to check it. */
  readonly needs: readonly (keyof MeasuredBall)[];
  readonly mark: LimitRecord["mark"] | "event";
  readonly source: string;
  readonly from: string | null;
  readonly until: string | null;
}

/**
 * The limits of a book on a day, held against what was measured.
 *
 * @param on day of play, `2026-05-31`; where the day of approval or making decides and is not known, every rule up to this day must be kept
 */
export function limitsOf(ball: MeasuredBall, book: BookId, on: string, own: readonly OwnLimit[] = []): LimitAnswer[] {
  const replaced = (record: LimitRecord) => record.strength === "warning" && own.some(({ quantity }) => quantity === record.quantity);
  const records = RULE_BOOKS[book].filter((record) => !replaced(record));
  const topics = [...new Set(records.map(({ topic }) => topic))];
  const answers = topics.flatMap((topic) =>
    topicAnswer(
      records.filter((record) => record.topic === topic),
      ball,
      on,
    ),
  );
  // A rule that came later is missed only where no other rule of that day speaks of the same quantity.
  const ruled = new Set(answers.filter(({ reason }) => reason !== "noRecord").map(({ quantity }) => quantity));
  return [
    ...answers.filter(({ reason, quantity }) => reason !== "noRecord" || !ruled.has(quantity)),
    ...own.map((limit) => ownAnswer(limit, ball)),
  ];
}

function topicAnswer(records: readonly LimitRecord[], ball: MeasuredBall, on: string): LimitAnswer[] {
  const { dated, quantity } = records[0];
  const value = measuredValue(quantity, ball);
  const day = dated === "use" ? on : dated === "approval" ? ball.approvedOn : ball.madeOn;
  const inTime = records.filter((record) => (day === null ? (record.from ?? "") <= on : covers(record, day)));
  const mine = inTime.filter((record) => record.applies(ball) !== false);
  if (mine.length === 0) {
    const ruledOnOtherDays = value !== null && records.some((record) => record.applies(ball) !== false);
    return ruledOnOtherDays ? [notChecked({ ...records[0], least: null, most: null, from: null, until: null }, value, "noRecord")] : [];
  }
  const shown = mine[mine.length - 1];
  if (value === null) return [notChecked(shown, value, "notMeasured")];
  const unsure = mine.find((record) => record.applies(ball) === null);
  if (unsure !== undefined)
    return [
      notChecked(
        shown,
        value,
        "needs",
        shown.needs.filter((field) => ball[field] === null),
      ),
    ];
  if (quantity === "hardnessD" && !testedWarm(ball)) return [notChecked(shown, value, "temperature", ["temperatureC"])];
  if (day !== null) return [checked(shown, value)];
  const answers = mine.map((record) => checked(record, value));
  const kept = answers.filter(({ verdict }) => verdict === "within");
  if (kept.length === answers.length) return [answers[answers.length - 1]];
  const alwaysRuled = records.some(({ from }) => from === null);
  if ((kept.length === 0 && alwaysRuled) || shown.strength === "warning") return [answers[answers.length - 1]];
  return [notChecked(shown, value, "needs", [dated === "approval" ? "approvedOn" : "madeOn"])];
}

function covers({ from, until }: LimitRecord, day: string): boolean {
  return (from === null || from <= day) && (until === null || day <= until);
}

function testedWarm({ temperatureC }: MeasuredBall): boolean {
  return temperatureC !== null && temperatureC >= HARDNESS_TEST_C[0] && temperatureC <= HARDNESS_TEST_C[1];
}

/** Readings come in decimals, so a value that differs from its limit by less than any instrument shows is on it. */
const HAIR = 1e-9;

function marginOf(value: number, least: number | null, most: number | null): number {
  return Math.min(least === null ? Number.MAX_VALUE : value - least, most === null ? Number.MAX_VALUE : most - value);
}

function checked(record: LimitRecord, value: number): LimitAnswer {
  const margin = marginOf(value, record.least, record.most);
  const beyond = record.strength === "limit" ? "outside" : "warning";
  return { ...stated(record), verdict: margin >= -HAIR ? "within" : beyond, value, margin, reason: null, needs: [] };
}

function notChecked(record: LimitRecord, value: number | null, reason: NotChecked, needs: LimitAnswer["needs"] = []): LimitAnswer {
  return { ...stated(record), verdict: "notChecked", value, margin: null, reason, needs };
}

function stated({ topic, quantity, least, most, mark, source, from, until }: LimitRecord) {
  return { topic, quantity, least, most, mark, source, from, until };
}

function ownAnswer({ quantity, least, most, why }: OwnLimit, ball: MeasuredBall): LimitAnswer {
  const value = measuredValue(quantity, ball);
  const margin = value === null ? null : marginOf(value, least, most);
  return {
    topic: `own.${quantity}`,
    quantity,
    verdict: margin === null ? "notChecked" : margin >= -HAIR ? "within" : "outside",
    value,
    least,
    most,
    margin,
    reason: margin === null ? "notMeasured" : null,
    needs: [],
    mark: "event",
    source: why,
    from: null,
    until: null,
  };
}
