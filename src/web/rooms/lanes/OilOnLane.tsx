import { useRef } from "react";
import { OIL } from "#words/en/rooms/lanes";
import { fixed } from "#words/figures";
import { useComputed } from "../../client/poolHere.ts";
import type { OilDrawn } from "../../client/protocol.ts";
import { Chart } from "../../pieces/Chart.tsx";
import { Facts } from "../../pieces/Facts.tsx";
import { Fold } from "../../pieces/Fold.tsx";
import { TableFile } from "../../pieces/TableFile.tsx";

/** A pattern's oil as a sea chart, and in figures. */
export function OilOnLane({ oil, title }: { readonly oil: unknown; readonly title: string }) {
  const drawn = useComputed({ kind: "oil", oil, title });
  if (drawn.data === undefined) return <p className="reading">{drawn.error === null ? OIL.drawing : OIL.notDrawn(drawn.error.message)}</p>;
  return (
    <>
      <Chart svg={drawn.data.lane} className="lane-chart" file="oil" />
      <Facts rows={factsOf(drawn.data)} />
      <Fold title={OIL.sections} summary={OIL.sectionsWhat} startsOpen="wide" level={3}>
        <Chart svg={drawn.data.across} className="across-chart" file="oil-across" />
        <Sections {...drawn.data.sections} />
      </Fold>
    </>
  );
}

function factsOf({ lengthFt, volumeMl, ratio, meanUm, laidMl, statedMl, statedRatio }: OilDrawn): readonly (readonly [string, string])[] {
  return [
    [OIL.length, OIL.feet(lengthFt)],
    [OIL.volume, OIL.mL(volumeMl)],
    ...(laidMl === null ? [] : [[OIL.laid, OIL.mL(laidMl)] as const]),
    ...(laidMl === null || statedMl === null ? [] : [[OIL.stated, OIL.apart(laidMl, statedMl)] as const]),
    [OIL.ratio, OIL.ratioValue(ratio, statedRatio)],
    [OIL.mean, OIL.um(meanUm)],
  ];
}

function Sections({ boards, rows }: OilDrawn["sections"]) {
  const table = useRef<HTMLTableElement>(null);
  return (
    <div className="scrolls">
      <table ref={table} className="stages sections">
        <caption className="note">{OIL.sectionsWhat}</caption>
        <thead>
          <tr>
            <td />
            {boards.map((board) => (
              <th key={board} scope="col" className="figure">
                {board}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ ft, um }) => (
            <tr key={ft}>
              <th scope="row">{OIL.at(ft)}</th>
              {um.map((value, i) => (
                <td key={boards[i]} className="figure">
                  {fixed(value, 1)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <TableFile of={table} name={OIL.sections} />
    </div>
  );
}
