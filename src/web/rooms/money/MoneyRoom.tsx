import { useEffect } from "react";
import { Link, useSearchParams } from "wouter";
import { dayIn } from "#contract/records/dayIn";
import { MONEY } from "#words/en/rooms/money";
import { OUTCOME_WORDS } from "#words/en/rooms/outcomes";
import { LineField } from "../../pieces/PlainFields.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useSettings } from "../../shop/zone.ts";
import { Balances } from "./Balances.tsx";
import { Payments } from "./Payments.tsx";
import { Sums } from "./Sums.tsx";
import { type Span, type SpanName, spanOf } from "./span.ts";

/** What was taken over a span of days, and what is still owed. */
export function MoneyRoom() {
  const settings = useSettings();
  useEffect(() => {
    document.title = MONEY.title;
  }, []);
  return (
    <main id="answer" className="room money" tabIndex={-1}>
      <div className="room-head">
        <h1>{MONEY.title}</h1>
        <Link href="/held">{OUTCOME_WORDS.toRoom}</Link>
      </div>
      {/* A day is the shop's day: without its zone there is none. */}
      <Reading of={settings}>{({ zone }) => <OverSpan today={dayIn(zone, new Date().toISOString())} />}</Reading>
    </main>
  );
}

function OverSpan({ today }: { readonly today: string }) {
  const [params, setParams] = useSearchParams();
  const usual = spanOf("month", today);
  const span: Span = { from: params.get("from") ?? usual.from, to: params.get("to") ?? usual.to };
  const takings = useRead(["payments", "takings", span.from, span.to], () => answered(shop.takings.$get({ query: { ...span } })));
  const choose = ({ from, to }: Span) => setParams({ from, to }, { replace: true });
  const refusal = takings.error?.problem?.status === 422 ? takings.error : null;
  return (
    <>
      <section className="plate no-print" aria-label={MONEY.span}>
        <div className="choices-words">
          {(Object.keys(MONEY.spans) as SpanName[]).map((name) => (
            <button key={name} type="button" className="button" onClick={() => choose(spanOf(name, today))}>
              {MONEY.spans[name]}
            </button>
          ))}
        </div>
        <div className="field-row">
          <LineField label={MONEY.from} type="date" value={span.from} onChange={(from) => from !== "" && choose({ ...span, from })} />
          <LineField label={MONEY.to} type="date" value={span.to} onChange={(to) => to !== "" && choose({ ...span, to })} />
        </div>
        <WriteFault error={refusal} />
      </section>
      <div className="room-columns even-columns">
        {refusal === null && (
          <div>
            <Reading of={takings}>{(read) => <Sums takings={read} span={span} />}</Reading>
          </div>
        )}
        <div>
          <Balances />
          {refusal === null && takings.data !== undefined && <Payments takings={takings.data} />}
        </div>
      </div>
    </>
  );
}
