import type { Reading } from "#contract/records/reading";
import { PAGE_PAINT } from "#drawing/paint";
import { readingsBySide } from "#drawing/readingsBySide";
import type { SideId } from "#engine/surface/padWork/sides";
import { READINGS } from "#words/en/measuring";
import { SIDE_LABELS, SIDE_NAMES } from "#words/en/padWork";
import { MEASURE } from "#words/en/rooms/measure";
import { Picture } from "../../pieces/Picture.tsx";
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
      <Picture
        svg={readingsBySide({ verdict: withLabels(verdict), targetUm: targetUm ?? verdict.mean }, PAGE_PAINT)}
        className="sides-chart"
      />
      <SideFigures sides={verdict.sides} when={when} />
    </>
  );
}

/** The picture has room for a short word under each side. */
function withLabels(verdict: SidesVerdict["verdict"]): SidesVerdict["verdict"] {
  const label = (side: string): string => SIDE_LABELS[side as SideId];
  return {
    ...verdict,
    sides: verdict.sides.map((one) => ({ ...one, side: label(one.side) })),
    backTo: verdict.backTo === null ? null : label(verdict.backTo),
  };
}

function SideFigures({ sides, when }: { readonly sides: SidesVerdict["verdict"]["sides"]; readonly when: Reading["when"] }) {
  const { more, ...always } = READINGS.columns;
  const columns = when === "after" ? { ...always, more } : always;
  return (
    <table className="stages">
      <thead>
        <tr>
          {Object.values(columns).map((name) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {sides.map(({ side, mean, low, high, stands, moreSeconds }) => (
          <tr key={side}>
            <td>{SIDE_NAMES[side as SideId]}</td>
            <td>{mean.toFixed(2)}</td>
            <td>
              {low.toFixed(2)} – {high.toFixed(2)}
            </td>
            <td>{READINGS.stands[stands]}</td>
            {when === "after" && <td>{moreSeconds}</td>}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
