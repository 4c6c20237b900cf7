import type { Learned } from "#engine/learning/house/correct";
import { CORRECT, PARAMETER_WORDS } from "#words/en/correct";
import { TAUGHT } from "#words/en/rooms/taught";
import { fixed } from "#words/figures";
import type { HouseTold } from "../../client/protocol.ts";
import { PlainTable } from "../../pieces/PlainTable.tsx";

type Told = Extract<HouseTold, { kind: "told" }>;

/** Chains that agree worse than this have not settled. */
const SETTLED = 1.2;

/** Parameters before and now, what is tied and untold, what to look at next, and what it does to the plans. */
export function HouseToldTables({ told: { correction, next, plans } }: { readonly told: Told }) {
  const nameOf = (id: Learned["id"]) => PARAMETER_WORDS[id].name;
  const { parameters, untold, tied, worstRhat } = correction;
  const most = next[0];
  return (
    <>
      <PlainTable
        name={TAUGHT.table}
        rows={parameters}
        keyOf={({ id }) => id}
        columns={[
          { name: TAUGHT.parameter, cell: ({ id }) => nameOf(id) },
          { name: TAUGHT.assumed, cell: ({ id, before }) => span(id, before), kind: "figure" },
          { name: TAUGHT.now, cell: ({ id, value }) => figure(id, value), kind: "figure" },
          { name: TAUGHT.range, cell: (one) => span(one.id, one), kind: "figure" },
          { name: TAUGHT.picture, cell: (one) => <OnRange of={one} />, kind: "figure" },
          { name: TAUGHT.left, cell: ({ left }) => CORRECT.percent(left), kind: "figure" },
        ]}
      />
      {worstRhat > SETTLED && <p className="failed">{CORRECT.notConverged(worstRhat)}</p>}
      {untold.length > 0 && <p>{CORRECT.untold(untold.map(nameOf))}</p>}
      {tied.map(({ pair: [a, b], correlation }) => (
        <p key={`${a} ${b}`}>{CORRECT.tied(nameOf(a), nameOf(b), correlation)}</p>
      ))}
      <p className="note">{CORRECT.held}</p>
      {most !== undefined && (
        <p>
          <strong>{CORRECT.next}:</strong> {most.ball}, {nameOf(most.shot.tells)}
        </p>
      )}
      <h3>{TAUGHT.plans}</h3>
      <ul>
        {plans.map(({ ball, before, after, change }) => (
          <li key={ball}>{CORRECT.planLine(ball, before ?? CORRECT.noPick, after ?? CORRECT.noPick, 100 * change)}</li>
        ))}
      </ul>
    </>
  );
}

function figure(id: Learned["id"], value: number): string {
  const { decimals, unit } = PARAMETER_WORDS[id];
  return unit === "" || unit === "°" ? `${fixed(value, decimals)}${unit}` : `${fixed(value, decimals)} ${unit}`;
}

function span(id: Learned["id"], { low, high }: Pick<Learned, "low" | "high">): string {
  return `${fixed(low, PARAMETER_WORDS[id].decimals)}–${figure(id, high)}`;
}

/** The interval that is left on the whole range that was assumed. */
function OnRange({ of: { id, before, value, low, high } }: { readonly of: Learned }) {
  const at = (x: number) => 2 + 100 * Math.min(1, Math.max(0, (x - before.low) / (before.high - before.low)));
  return (
    <svg
      className="held-bar"
      viewBox="0 0 104 14"
      role="img"
      aria-label={TAUGHT.pictureOf(PARAMETER_WORDS[id].name, span(id, before), `${figure(id, value)} (${span(id, { low, high })})`)}
    >
      <line x1={2} x2={102} y1={7} y2={7} className="held-scale" />
      <line x1={at(low)} x2={at(high)} y1={7} y2={7} className="held-interval" />
      <line x1={at(value)} x2={at(value)} y1={2} y2={12} className="held-share" />
    </svg>
  );
}
