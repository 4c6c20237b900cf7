import { type Reading as OneReading, standingReadings } from "#contract/records/reading";
import type { SignedEntry } from "#contract/records/ticketWork";
import { PAGE_PAINT } from "#drawing/paint";
import { readingLine } from "#drawing/readingLine";
import type { Work } from "#engine/signed/work";
import type { SideId } from "#engine/surface/padWork/sides";
import { MEASURE, placeText } from "#words/en/rooms/measure";
import { PRINT } from "#words/en/rooms/print";
import { TICKET } from "#words/en/rooms/ticket";
import { benchBallOf } from "../../benchWork/benchBall.ts";
import { workHere } from "../../benchWork/onTheBench.ts";
import { Picture } from "../../pieces/Picture.tsx";
import { everyPage } from "../../shop/everyPage.ts";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useOutbox } from "../../shop/useOutbox.tsx";
import { useRead } from "../../shop/useShop.ts";
import { useRoughnessUnit, useShopTimes } from "../../shop/zone.ts";
import { type Judged, judgedByTester } from "../measure/judged.ts";
import { judgedText } from "../measure/judgedText.ts";
import { type Asked, readAt, readingsNow } from "../measure/readings.ts";
import { lineOf } from "../measure/sidesLine.ts";
import { useStagesDone } from "../ticket/useTicket.ts";
import { type PlaceRead, raOf, readByPlace } from "./measures.ts";
import { SheetHead } from "./SheetHead.tsx";
import type { SheetParts } from "./sheetParts.ts";

/** What was measured for a ticket, wherever it was measured, before and after, and whether the sides agree. */
export function MeasureSheet(parts: SheetParts) {
  const { ticket } = parts;
  const { waiting } = useOutbox();
  const readings = useRead(["readings", "all of ticket", ticket.id], () =>
    everyPage((after) => answered(shop.readings.$get({ query: { ticketId: ticket.id, order: "oldest first", limit: "200", ...after } }))),
  );
  const done = useStagesDone(ticket.id);
  return (
    <article className="measure-sheet">
      <SheetHead {...parts}>
        <p className="sheet-finish">
          {TICKET.before} {ticket.finishBefore ?? "–"} → {TICKET.after} <strong>{ticket.finishAfter ?? TICKET.notDecided}</strong>
        </p>
      </SheetHead>
      <Reading of={done}>
        {({ items }) => (
          <Reading of={readings} isEmpty={(all) => readByPlace(standingReadings(all)).length === 0} empty={PRINT.noMeasures}>
            {(all) => {
              const again = items.flatMap(({ doneAt, sidesAgain }) => (sidesAgain.length === 0 ? [] : [{ at: doneAt, sides: sidesAgain }]));
              return <Measured parts={parts} readings={standingReadings(all)} work={workHere(ticket, items, waiting)} again={again} />;
            }}
          </Reading>
        )}
      </Reading>
    </article>
  );
}

interface MeasuredProps {
  readonly parts: SheetParts;
  readonly readings: readonly OneReading[];
  readonly work: Work<SignedEntry>;
  readonly again: Asked["again"];
}

function Measured({ parts, readings, work, again }: MeasuredProps) {
  const times = useShopTimes();
  const days = [...new Set(readings.map(({ at }) => times.day(at)))];
  const isByEye = readings.some(({ comparison }) => comparison !== null);
  const { keptAsIs } = parts.ticket;
  const agreed = (["before", "after"] as const).flatMap((when) => agreement(when, { parts, readings, work, again }));
  return (
    <>
      <p>{PRINT.measured(days.join(", "))}</p>
      <PlaceTable places={readByPlace(readings)} />
      {agreed.map((one, i) => (
        <Agreement key={one.when} {...one} picture={i === agreed.length - 1 ? "drawn" : "none"} />
      ))}
      {keptAsIs.map(({ at, why }) => (
        <p key={at}>{MEASURE.keptAsIs(why)}</p>
      ))}
      {isByEye && <p className="note">{PRINT.eye}</p>}
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

/** One reading as it is; of several their mean and range. What was not read is a dash. */
function ReadHere({ readings }: { readonly readings: readonly OneReading[] }) {
  const { figure } = useRoughnessUnit();
  const ra = raOf(readings);
  const looks = [...new Set(readings.flatMap(({ comparison }) => (comparison === null ? [] : [MEASURE.comparisons[comparison]])))];
  if (ra.length === 0) return looks.length === 0 ? "–" : looks.join(", ");
  const mean = figure(ra.reduce((sum, um) => sum + um, 0) / ra.length);
  return ra.length === 1 ? mean : PRINT.several(mean, ra.length, figure(Math.min(...ra)), figure(Math.max(...ra)));
}

interface Agreed {
  readonly when: "before" | "after";
  readonly judged: Judged;
  readonly of: (side: SideId) => ReturnType<typeof readAt>;
}

/** Whether the sides agree; nothing where fewer than two were read with a tester. Before the work there is no finish to hold them to. */
function agreement(when: Agreed["when"], { parts: { ticket, ball }, readings, work, again }: MeasuredProps): readonly Agreed[] {
  const now = readingsNow(readings, { when, ticketId: ticket.id, from: "", how: "tester", work, again });
  const of = (side: SideId) => readAt(now, side);
  const { cover, diameterIn } = benchBallOf(ball);
  const lastAbrasive = work.surface.findLast(({ kind }) => kind !== "polish")?.abrasive ?? null;
  const judged = judgedByTester(of, { cover, diameterIn, wanted: when === "after" ? (ticket.finishAfter ?? "") : "", lastAbrasive });
  return judged.kind === "more" ? [] : [{ when, judged, of }];
}

/** Wide enough for six readings, narrow enough for the paper. */
const LINE_WIDTH = 600;

/** In a sentence, and the last of them on a line too: two would not leave a page room to be read. */
function Agreement({ when, judged, of, picture }: Agreed & { readonly picture: "drawn" | "none" }) {
  const { unit } = useRoughnessUnit();
  return (
    <section className="sheet-agreement">
      <h3>{PRINT.agreement[when]}</h3>
      <p>
        <strong>{judgedText(judged)}</strong>
      </p>
      {picture === "drawn" && <Picture svg={readingLine(lineOf(of, judged, unit), LINE_WIDTH, PAGE_PAINT)} className="sheet-picture" />}
    </section>
  );
}
