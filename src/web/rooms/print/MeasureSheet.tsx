import type { Reading as OneReading } from "#contract/records/reading";
import { PAGE_PAINT } from "#drawing/paint";
import { readingsBySide } from "#drawing/readingsBySide";
import { READINGS } from "#words/en/measuring";
import { MEASURE, placeText } from "#words/en/rooms/measure";
import { PRINT } from "#words/en/rooms/print";
import { TICKET } from "#words/en/rooms/ticket";
import { benchBallOf } from "../../benchWork/benchBall.ts";
import { Picture } from "../../pieces/Picture.tsx";
import { everyPage } from "../../shop/everyPage.ts";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead } from "../../shop/useShop.ts";
import { useRoughnessUnit, useShopTimes } from "../../shop/zone.ts";
import { inPicture } from "../measure/Agreement.tsx";
import { type SidesVerdict, verdictOf } from "../measure/entries.ts";
import { isSide, type PlaceRead, raOf, readByPlace } from "./measures.ts";
import { SheetHead } from "./SheetHead.tsx";
import type { SheetParts } from "./sheetParts.ts";

/** What was measured for a ticket, side by side, before and after, and whether the sides agree. */
export function MeasureSheet(parts: SheetParts) {
  const { ticket } = parts;
  const readings = useRead(["readings", "all of ticket", ticket.id], () =>
    everyPage((after) => answered(shop.readings.$get({ query: { ticketId: ticket.id, order: "oldest first", limit: "200", ...after } }))),
  );
  return (
    <article className="measure-sheet">
      <SheetHead {...parts}>
        <p className="sheet-finish">
          {TICKET.before} {ticket.finishBefore ?? "–"} → {TICKET.after} <strong>{ticket.finishAfter ?? TICKET.notDecided}</strong>
        </p>
      </SheetHead>
      <Reading of={readings} isEmpty={(all) => readByPlace(all).length === 0} empty={PRINT.noMeasures}>
        {(all) => <Measured parts={parts} readings={all} />}
      </Reading>
    </article>
  );
}

function Measured({ parts, readings }: { readonly parts: SheetParts; readonly readings: readonly OneReading[] }) {
  const times = useShopTimes();
  const places = readByPlace(readings);
  const days = [...new Set(readings.map(({ at }) => times.day(at)))];
  const isByEye = readings.some(({ comparison }) => comparison !== null);
  return (
    <>
      <p>{PRINT.measured(days.join(", "))}</p>
      <PlaceTable places={places} />
      {agreements(parts, places).map(({ when, found }, i, all) => (
        <Agreement key={when} when={when} found={found} picture={i === all.length - 1 ? "drawn" : "none"} />
      ))}
      {isByEye && <p className="note">{PRINT.eye}</p>}
      <p className="note">{PRINT.notPlace}</p>
      <p className="signed">{PRINT.signed}</p>
    </>
  );
}

function PlaceTable({ places }: { readonly places: readonly PlaceRead[] }) {
  const { columns } = PRINT;
  const { unit } = useRoughnessUnit();
  return (
    <table className="stages">
      <thead>
        <tr>
          {[columns.place, columns.before(unit), columns.after(unit), columns.how].map((name) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {places.map(({ place, before, after }) => (
          <tr key={place}>
            <td>{placeText(place)}</td>
            <td>
              <ReadHere readings={before} />
            </td>
            <td>
              <ReadHere readings={after} />
            </td>
            <td>{[...new Set([...before, ...after].map(({ how }) => MEASURE.how[how]))].join(", ")}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** One reading as it is; of several their mean and range. */
function ReadHere({ readings }: { readonly readings: readonly OneReading[] }) {
  const { figure } = useRoughnessUnit();
  const ra = raOf(readings);
  if (ra.length === 0)
    return [...new Set(readings.flatMap(({ comparison }) => (comparison === null ? [] : [MEASURE.comparisons[comparison]])))].join(", ");
  const mean = figure(ra.reduce((sum, um) => sum + um, 0) / ra.length);
  return ra.length === 1 ? mean : PRINT.several(mean, ra.length, figure(Math.min(...ra)), figure(Math.max(...ra)));
}

interface Agreed {
  readonly when: "before" | "after";
  readonly found: SidesVerdict;
}

/** Whether the sides agree, before and after; left out where fewer than two were read with a tester. Before the work there is no finish to hold them to. */
function agreements({ ticket, ball }: SheetParts, places: readonly PlaceRead[]): readonly Agreed[] {
  return (["before", "after"] as const).flatMap((when) => {
    const found = verdictOf(
      // The track and what lies beside it are no sides: they stand in the table.
      places.filter(({ place }) => isSide(place)).map((one) => ({ side: one.place, um: raOf(one[when]) })),
      {
        cover: ball.cover,
        diameterIn: benchBallOf(ball).diameterIn,
        wanted: when === "after" ? (ticket.finishAfter ?? "") : "",
        lastAbrasive: ticket.stages.findLast(({ abrasive }) => abrasive !== null)?.abrasive ?? null,
      },
    );
    return found === null ? [] : [{ when, found }];
  });
}

/** In a sentence, and the last of them as a picture too: two would not leave a page room to be read. */
function Agreement({ when, found, picture }: Agreed & { readonly picture: "drawn" | "none" }) {
  const { verdict, targetUm } = found;
  const back = when === "after" ? verdict.sides.find(({ side }) => side === verdict.backTo) : undefined;
  return (
    <section className="sheet-agreement">
      <h3>{PRINT.agreement[when]}</h3>
      <p>
        <strong>{READINGS.verdict[verdict.verdict]}</strong>{" "}
        {targetUm === null ? MEASURE.ownMean(verdict.mean) : READINGS.mean(verdict.mean, targetUm)}{" "}
        {READINGS.spread(verdict.betweenSides, verdict.betweenAtMost, verdict.withinSide)}
      </p>
      {picture === "drawn" && (
        <Picture svg={readingsBySide({ verdict: inPicture(verdict, back), targetUm }, PAGE_PAINT)} className="sheet-picture" />
      )}
    </section>
  );
}
