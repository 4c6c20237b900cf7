import { useMemo, useState } from "react";
import type { Ball } from "#contract/records/ball";
import { dayIn } from "#contract/records/dayIn";
import { type LimitAnswer, limitsOf } from "#engine/rules/limits";
import type { BookId } from "#engine/rules/ruleBooks";
import { allowedText, BOOK_NAMES, figureOf, LIMITS, limitName, whyNotChecked } from "#words/en/limits";
import { BALL_LOG } from "#words/en/rooms/ball";
import { measuredBall } from "../../measured/ballUse.ts";
import { WordField } from "../../pieces/PlainFields.tsx";
import { type Column, PlainTable } from "../../pieces/PlainTable.tsx";
import { useSettings } from "../../shop/zone.ts";
import type { BallRecords } from "./useBallRecords.ts";

interface LimitsProps {
  readonly ball: Ball;
  readonly records: BallRecords;
}

/** What lies within the limits of a rule book as far as it was measured, and by name what was not checked. No verdict: a qualified person decides. */
export function BallLimits({ ball, records }: LimitsProps) {
  const settings = useSettings().data;
  const [chosen, setChosen] = useState<BookId | null>(null);
  const book = chosen ?? settings?.ruleBook ?? "usbc";
  const on = dayIn(settings?.zone ?? "UTC", new Date().toISOString());
  const limits = useMemo(() => limitsOf(measuredBall(ball, records.readings), book, on), [ball, records.readings, book, on]);
  const of = (verdict: LimitAnswer["verdict"]) => limits.filter((one) => one.verdict === verdict);
  const [outside, warning, unchecked] = [of("outside"), of("warning"), of("notChecked")];
  const measured = limits.filter(({ verdict }) => verdict !== "notChecked");
  const names = (some: readonly LimitAnswer[]) => some.map(limitName).join(", ");
  return (
    <section className="plate">
      <h2>{BALL_LOG.limits}</h2>
      <WordField label={BALL_LOG.book} value={book} words={BOOK_NAMES} onChange={(word) => setChosen(word as BookId)} />
      <p>
        <strong>{headOf(measured.length, outside.length === 0 ? null : names(outside))}</strong>
      </p>
      {warning.length > 0 && (
        <p>
          {LIMITS.warning}: {names(warning)}. {warning.some(({ quantity }) => quantity.endsWith("RaMicroinch")) && LIMITS.roughness}
        </p>
      )}
      {measured.length > 0 && <PlainTable name={BALL_LOG.limits} columns={COLUMNS} rows={measured} keyOf={({ topic }) => topic} />}
      {unchecked.length > 0 && (
        <p>
          {LIMITS.notChecked}: {byReason(unchecked)}.
        </p>
      )}
      <p className="note">
        {BALL_LOG.limitsFrom} {LIMITS.check}
      </p>
    </section>
  );
}

/** Each reason once, with everything it holds for. */
function byReason(unchecked: readonly LimitAnswer[]): string {
  const reasons = [...new Set(unchecked.map(whyNotChecked))];
  return reasons
    .map((why) => {
      const names = unchecked.filter((one) => whyNotChecked(one) === why).map(limitName);
      return `${names.join(", ")} (${why})`;
    })
    .join("; ");
}

function headOf(measured: number, outside: string | null): string {
  if (outside !== null) return `${LIMITS.outside}: ${outside}.`;
  return measured === 0 ? `${LIMITS.nothing}.` : `${LIMITS.within}.`;
}

const COLUMNS: readonly Column<LimitAnswer>[] = [
  { name: LIMITS.columns.what, cell: limitName },
  {
    name: LIMITS.columns.value,
    kind: "figure",
    cell: ({ value, quantity }) => (value === null ? "" : figureOf(value, quantity)),
  },
  { name: LIMITS.columns.allowed, cell: allowedText },
  {
    name: LIMITS.columns.margin,
    kind: "figure",
    cell: ({ margin, quantity, verdict }) =>
      margin === null ? "" : `${figureOf(margin, quantity)} ${verdict === "within" ? "" : LIMITS.verdicts[verdict]}`,
  },
  { name: LIMITS.columns.source, cell: ({ source, mark }) => <span className="note">{LIMITS.source(source, mark)}</span> },
];
