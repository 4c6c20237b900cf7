import { Checkbox } from "react-aria-components";
import type { Candidate, FinishPlan } from "#engine/planning/plan";
import { PLAN_ANSWER } from "#words/en/screens";
import { Picture } from "../../pieces/Picture.tsx";
import { tableColumns } from "./tableColumns.ts";

export const MOST_COMPARED = 3;

interface TableProps {
  readonly plan: FinishPlan;
  readonly swatches: Readonly<Record<string, string>>;
  readonly shown: readonly string[];
  readonly compared: readonly string[];
  onShow(finish: string, on: boolean): void;
  onCompare(finish: string, on: boolean): void;
}

/** Every finish on its own best line. On a narrow page each row becomes a card of named figures. */
export function CandidateTable(props: TableProps) {
  const { plan } = props;
  const columns = tableColumns(plan);
  return (
    // A table wider than the page is scrolled by keyboard too, so it can take the focus.
    // biome-ignore lint/a11y/noNoninteractiveTabindex: see above
    <section className="table-scroll" tabIndex={0} aria-label={PLAN_ANSWER.table}>
      <table className="candidates">
        <caption>{PLAN_ANSWER.table}</caption>
        <thead>
          <tr>
            <th scope="col">{PLAN_ANSWER.columns.finish}</th>
            {columns.map((c) => (
              <th key={c.name} scope="col">
                {c.name}
              </th>
            ))}
            <th scope="col" className="no-print">
              {PLAN_ANSWER.columns.onChart}
            </th>
            <th scope="col" className="no-print">
              {PLAN_ANSWER.columns.compare}
            </th>
          </tr>
        </thead>
        <tbody>
          {plan.candidates.map((candidate) => (
            <Row key={candidate.finish} {...props} candidate={candidate} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Row({ plan, candidate, swatches, shown, compared, onShow, onCompare }: TableProps & { readonly candidate: Candidate }) {
  const { finish } = candidate;
  const picked = plan.pick?.finish === finish;
  const isFull = compared.length >= MOST_COMPARED && !compared.includes(finish);
  return (
    <tr className={picked ? "is-pick" : undefined}>
      <th scope="row">
        <span className="finish-name">
          <Picture svg={swatches[finish] ?? ""} className="swatch" />
          <span>
            {finish}
            {picked && <em className="mark-pick">{PLAN_ANSWER.pick}</em>}
            {plan.today.finish === finish && <em>{PLAN_ANSWER.today}</em>}
          </span>
        </span>
      </th>
      {tableColumns(plan).map((c) => (
        <td key={c.name} data-name={c.name}>
          {c.text(candidate)}
          {c.second !== undefined && <small>{c.second(candidate)}</small>}
        </td>
      ))}
      <td className="no-print" data-name={PLAN_ANSWER.columns.onChart}>
        <Tick
          label={PLAN_ANSWER.alsoOf(PLAN_ANSWER.columns.onChart, finish)}
          on={shown.includes(finish)}
          off={candidate.line === null}
          onChange={(on) => onShow(finish, on)}
        />
      </td>
      <td className="no-print" data-name={PLAN_ANSWER.columns.compare}>
        <Tick
          label={PLAN_ANSWER.alsoOf(PLAN_ANSWER.columns.compare, finish)}
          on={compared.includes(finish)}
          off={isFull || candidate.line === null}
          onChange={(on) => onCompare(finish, on)}
        />
      </td>
    </tr>
  );
}

function Tick(props: { readonly label: string; readonly on: boolean; readonly off: boolean; readonly onChange: (on: boolean) => void }) {
  return (
    <Checkbox className="tick" aria-label={props.label} isSelected={props.on} isDisabled={props.off} onChange={props.onChange}>
      <span className="tick-box" aria-hidden="true" />
    </Checkbox>
  );
}
