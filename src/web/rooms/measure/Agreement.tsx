import type { Reading } from "#contract/records/reading";
import { PAGE_PAINT } from "#drawing/paint";
import { readingsBySide } from "#drawing/readingsBySide";
import type { SideId } from "#engine/surface/padWork/sides";
import type { EvennessVerdict, SideVerdict } from "#engine/surface/readings/evenness";
import { READINGS } from "#words/en/measuring";
import { SIDE_LABELS, SIDE_NAMES } from "#words/en/padWork";
import { MEASURE } from "#words/en/rooms/measure";
import { fixed } from "#words/figures";
import { Chart } from "../../pieces/Chart.tsx";
import { type Column, PlainTable } from "../../pieces/PlainTable.tsx";
import type { SheenVerdict, SidesVerdict } from "./entries.ts";

const named = (sides: readonly SideId[]): string => sides.map((side) => SIDE_NAMES[side]).join(", ");

/** What an eye and a fingertip say: no figures, since none were measured. */
export function SheenAgreement({ found }: { readonly found: SheenVerdict | null }) {
  if (found === null) return <p className="nothing">{MEASURE.noVerdict}</p>;
  const [first, ...others] = found.groups;
  const alike = first.as === "the same" ? MEASURE.sheenAlike : MEASURE.sheenAlikeOff;
  return (
    <>
      <p>
        <strong>{others.length === 0 ? alike(first.sides.length, MEASURE.comparisons[first.as]) : MEASURE.sheenApart}</strong>
      </p>
      {others.length > 0 && (
        <ul>
          {found.groups.map(({ as, sides }) => (
            <li key={as}>{MEASURE.sheenGroup(MEASURE.comparisons[as], named(sides))}</li>
          ))}
        </ul>
      )}
      {found.backTo.length > 0 && <p>{MEASURE.sheenBackTo(named(found.backTo))}</p>}
      {found.notLooked.length > 0 && <p className="note">{MEASURE.notLooked(named(found.notLooked))}</p>}
      <p className="note">{MEASURE.eye}</p>
    </>
  );
}

/** Whether measured sides agree, with the picture and the same figures as a table. */
export function TesterAgreement({ found, when }: { readonly found: SidesVerdict | null; readonly when: Reading["when"] }) {
  if (found === null) return <p className="nothing">{MEASURE.noVerdict}</p>;
  const { verdict, targetUm } = found;
  // Before the work there is nothing to go back to.
  const back = when === "after" ? verdict.sides.find(({ side }) => side === verdict.backTo) : undefined;
  return (
    <>
      <p>
        <strong>{READINGS.verdict[verdict.verdict]}</strong>
      </p>
      <p>
        {targetUm === null ? MEASURE.ownMean(verdict.mean) : READINGS.mean(verdict.mean, targetUm)}{" "}
        {READINGS.spread(verdict.betweenSides, verdict.betweenAtMost, verdict.withinSide)}
      </p>
      {back !== undefined && <p>{READINGS.backTo(SIDE_NAMES[back.side as SideId], back.moreSeconds)}</p>}
      <Chart svg={readingsBySide({ verdict: inPicture(verdict, back), targetUm }, PAGE_PAINT)} className="sides-chart" file="sides" />
      <SideFigures found={found} when={when} />
    </>
  );
}

/** As the picture shows it: it has room for a short word under each side, and rings the one to go back to. */
export function inPicture(verdict: EvennessVerdict, back: SideVerdict | undefined): EvennessVerdict {
  const label = (side: string): string => (side in SIDE_LABELS ? SIDE_LABELS[side as SideId] : side);
  return {
    ...verdict,
    sides: verdict.sides.map((one) => ({ ...one, side: label(one.side) })),
    backTo: back === undefined ? null : label(back.side),
  };
}

/** The same figures as a table; how a side stands only where there is a finish to stand against, more work only after the work. */
function SideFigures({ found, when }: { readonly found: SidesVerdict; readonly when: Reading["when"] }) {
  const { columns } = READINGS;
  const shown: readonly Column<SideVerdict>[] = [
    { name: columns.side, cell: ({ side }) => SIDE_NAMES[side as SideId] },
    { name: columns.ra, kind: "figure", cell: ({ mean }) => fixed(mean, 2) },
    { name: columns.range, kind: "figure", cell: ({ low, high }) => `${fixed(low, 2)} – ${fixed(high, 2)}` },
    ...(found.targetUm === null ? [] : [{ name: columns.stands, cell: ({ stands }: SideVerdict) => READINGS.stands[stands] }]),
    ...(when === "after"
      ? [{ name: columns.more, kind: "figure" as const, cell: ({ moreSeconds }: SideVerdict) => String(moreSeconds) }]
      : []),
  ];
  return <PlainTable name={MEASURE.figures} columns={shown} rows={found.verdict.sides} keyOf={({ side }) => side} />;
}
