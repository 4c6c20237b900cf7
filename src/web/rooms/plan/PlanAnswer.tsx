import type { AssumptionId } from "#engine/assumptions";
import type { FinishPlan } from "#engine/planning/plan";
import { ASSUMPTION_TEXTS } from "#words/en/assumptions";
import { pinsText } from "#words/en/carry";
import { PLAN_ANSWER } from "#words/en/screens";
import { messageText } from "#words/messageText";
import type { Pictures } from "../../client/protocol.ts";
import { Chart } from "../../pieces/Chart.tsx";
import { Fold } from "../../pieces/Fold.tsx";
import { PlainTable } from "../../pieces/PlainTable.tsx";
import { CandidateTable } from "./CandidateTable.tsx";
import { Meanings } from "./Meanings.tsx";
import type { Answered } from "./usePlan.ts";
import { Verdict } from "./Verdict.tsx";

interface AnswerProps {
  readonly answered: Answered;
  readonly pictures: Pictures | null;
  readonly shown: readonly string[];
  readonly compared: readonly string[];
  readonly isFinal: boolean;
  onShow(finish: string, on: boolean): void;
  onCompare(finish: string, on: boolean): void;
}

/** The answer for the technician. */
export function PlanAnswer(props: AnswerProps) {
  const { answered, pictures } = props;
  const { plan } = answered;
  return (
    <>
      <Verdict plan={plan} isFinal={props.isFinal} swatch={pictures?.swatches[plan.pick?.finish ?? ""] ?? null} />
      <section aria-label={PLAN_ANSWER.chart} className="chart-plate">
        {pictures !== null && <Chart svg={pictures.lane} className="lane-chart" file="lane" />}
      </section>
      <div className="two-columns">
        {pictures?.plateau !== null && pictures !== null && (
          <section className="plate loss-plate">
            <h2>{PLAN_ANSWER.loss}</h2>
            <Chart svg={pictures.plateau} className="loss-chart" file="finishes" />
            <p className="note">
              {PLAN_ANSWER.lossNote} {PLAN_ANSWER.metricNote[plan.metric]}
            </p>
          </section>
        )}
        <Reasons plan={plan} />
      </div>
      {pictures !== null && pictures.pins !== null && <Pins plan={plan} pictures={pictures.pins} />}
      <CandidateTable
        plan={plan}
        swatches={pictures?.swatches ?? {}}
        shown={props.shown}
        compared={props.compared}
        onShow={props.onShow}
        onCompare={props.onCompare}
      />
      <Meanings metric={plan.metric} />
      {pictures?.compare !== null && pictures !== null && (
        <section className="plate compare-plate no-print">
          <h2>{PLAN_ANSWER.compare}</h2>
          <p className="note">{PLAN_ANSWER.compareNote}</p>
          <Chart svg={pictures.compare} className="compare-chart" file="compared" />
        </section>
      )}
      <Cautions plan={plan} />
      <Background answered={answered} />
    </>
  );
}

function Reasons({ plan }: { readonly plan: FinishPlan }) {
  return (
    <section className="plate">
      <h2>{PLAN_ANSWER.reasons}</h2>
      <ul>
        {plan.reasons.map((m) => (
          <li key={`${m.id} ${JSON.stringify(m.params)}`}>{messageText(m)}</li>
        ))}
      </ul>
      {plan.rules.length > 0 && (
        <>
          <h3>{PLAN_ANSWER.rules}</h3>
          <ul className="rules">
            {plan.rules.map((r) => (
              <li key={r.rule}>
                <strong className={r.agrees ? "agrees" : "disagrees"}>{r.agrees ? PLAN_ANSWER.agrees : PLAN_ANSWER.disagrees}</strong>{" "}
                {messageText(r.message)} {r.why !== null && messageText(r.why)}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

function Pins({ plan, pictures }: { readonly plan: FinishPlan; readonly pictures: NonNullable<Pictures["pins"]> }) {
  const picked = plan.candidates.find(({ finish }) => finish === plan.pick?.finish) ?? plan.candidates.find(({ pins }) => pins !== null);
  return (
    <section className="plate pins-plate">
      <h2>{PLAN_ANSWER.pins}</h2>
      {picked !== undefined && picked.pins !== null && <p>{pinsText(picked.finish, picked.pins)}</p>}
      <div className="two-columns no-print">
        <Chart svg={pictures.strikes} className="strikes-chart" file="strikes" />
        <Chart svg={pictures.leaves} className="leaves-picture" file="leaves" />
      </div>
      <p className="no-print">{pictures.meanings.join("; ")}.</p>
      <p className="note no-print">{PLAN_ANSWER.pinsNote}</p>
    </section>
  );
}

function Cautions({ plan }: { readonly plan: FinishPlan }) {
  if (plan.cautions.length === 0) return null;
  return (
    <section className="cautions">
      <h2>{PLAN_ANSWER.cautions}</h2>
      <ul>
        {plan.cautions.map((m) => (
          <li key={m.id}>{messageText(m)}</li>
        ))}
      </ul>
    </section>
  );
}

function Background({ answered }: { readonly answered: Answered }) {
  const { plan, defaults } = answered;
  const columns = PLAN_ANSWER.assumptionColumns;
  return (
    <div className="no-print">
      <Fold title={PLAN_ANSWER.assumptions} summary="" startsOpen="never">
        <PlainTable
          name={PLAN_ANSWER.assumptions}
          rows={plan.assumptions}
          keyOf={({ id }) => id}
          columns={[
            { name: columns.what, cell: ({ id }) => ASSUMPTION_TEXTS[id as AssumptionId] ?? id },
            { name: columns.value, kind: "figure", cell: ({ value, unit }) => `${value} ${unit}` },
            { name: columns.range, kind: "figure", cell: ({ low, high }) => `${low} – ${high}` },
            { name: columns.mark, cell: ({ mark }) => mark },
          ]}
        />
      </Fold>
      {defaults.length > 0 && (
        <Fold title={PLAN_ANSWER.defaults} summary={String(defaults.length)} startsOpen="never">
          <p className="note">{PLAN_ANSWER.defaultsNote}</p>
          <p className="paths">{defaults.join(", ")}</p>
        </Fold>
      )}
    </div>
  );
}
