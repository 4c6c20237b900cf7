import { hasSettled, type Learned } from "#engine/learning/house/correct";
import type { Parameter } from "#engine/learning/house/parameters";
import { WORLDS } from "#engine/planning/worldCounts";
import { CORRECT, misfitText, PARAMETER_WORDS, parameterName } from "#words/en/correct";
import { TAUGHT } from "#words/en/rooms/taught";
import { fixed } from "#words/figures";
import type { HouseAnswer } from "../../client/protocol.ts";
import { IntervalBar } from "../../pieces/IntervalBar.tsx";
import { PlainTable } from "../../pieces/PlainTable.tsx";

/** The strongest pairs; the command line and the file have them all. */
const MOST_TIED = 4;

type Told = Extract<HouseAnswer, { kind: "told" }>;

/** Parameters before and now, what is tied and untold, what to look at next, and what it does to the plans. */
export function HouseAnswerTables({ told: { correction, handNames, misfit, kindNames, next, plans } }: { readonly told: Told }) {
  const nameOf = (of: Parameter) => parameterName(of, handNames);
  const { parameters, beyond, untold, tied, worlds, worstRhat } = correction;
  const most = next[0];
  return (
    <>
      <PlainTable
        name={TAUGHT.table}
        rows={parameters}
        keyOf={({ id, hand }) => `${hand} ${id}`}
        columns={[
          { name: TAUGHT.parameter, cell: nameOf },
          { name: TAUGHT.assumed, cell: ({ id, before }) => span(id, before), kind: "figure" },
          { name: TAUGHT.now, cell: ({ id, value }) => CORRECT.figure(id, value), kind: "figure" },
          { name: TAUGHT.range, cell: (one) => span(one.id, one), kind: "figure" },
          { name: TAUGHT.picture, cell: (one) => <OnRange of={one} name={nameOf(one)} />, kind: "figure" },
          { name: TAUGHT.left, cell: ({ left }) => CORRECT.percent(left), kind: "figure" },
        ]}
      />
      {!misfit.isExplained && <p className="failed">{misfitText(misfit, kindNames)}</p>}
      {!hasSettled(correction) && <p className="failed">{CORRECT.notConverged(worstRhat)}</p>}
      <p>{CORRECT.restsOn(worlds)}</p>
      {beyond.length > 0 && <p>{CORRECT.beyond(beyond.map(nameOf))}</p>}
      {untold.length > 0 && <p>{CORRECT.untold(untold.map(nameOf))}</p>}
      {tied.slice(0, MOST_TIED).map(({ pair: [a, b], correlation }) => (
        <p key={`${nameOf(a)} ${nameOf(b)}`}>{CORRECT.tied(nameOf(a), nameOf(b), correlation)}</p>
      ))}
      <p className="note">{CORRECT.held}</p>
      {most !== undefined && (
        <p>
          <strong>{CORRECT.next}:</strong> {most.ball}, {nameOf(most.shot.tells)}
        </p>
      )}
      <h3>{CORRECT.plans(WORLDS.first)}</h3>
      <ul>
        {plans.map(({ ball, before, after, change }) => (
          <li key={ball}>{CORRECT.planLine(ball, before ?? CORRECT.noPick, after ?? CORRECT.noPick, 100 * change)}</li>
        ))}
      </ul>
    </>
  );
}

function span(id: Learned["id"], { low, high }: Pick<Learned, "low" | "high">): string {
  return `${fixed(low, PARAMETER_WORDS[id].decimals)}–${CORRECT.figure(id, high)}`;
}

/** The interval that is left on the whole range that was assumed. */
function OnRange({ of: { id, before, value, low, high }, name }: { readonly of: Learned; readonly name: string }) {
  const at = (x: number) => Math.min(1, Math.max(0, (x - before.low) / (before.high - before.low)));
  const now = `${CORRECT.figure(id, value)} (${span(id, { low, high })})`;
  return <IntervalBar low={at(low)} value={at(value)} high={at(high)} name={TAUGHT.pictureOf(name, span(id, before), now)} />;
}
