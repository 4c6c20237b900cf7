import type { Reading } from "#contract/records/reading";
import { PAGE_PAINT } from "#drawing/paint";
import { readingLine } from "#drawing/readingLine";
import { SHOP_FRAME } from "#words/en/rooms/frame";
import { MEASURE, placeText } from "#words/en/rooms/measure";
import { PRINT } from "#words/en/rooms/print";
import { TICKET } from "#words/en/rooms/ticket";
import { judgedText } from "../../measured/judgedText.ts";
import { lineOf } from "../../measured/sidesLine.ts";
import { Picture } from "../../pieces/Picture.tsx";
import { useRoughnessUnit, useShopTimes } from "../../shop/zone.ts";
import { type Agreed, agreedBySheen, agreedByTester, type ReadOf, readingsOfNow } from "./agreement.ts";
import { type PlaceRead, raOf, readByPlace } from "./measures.ts";
import { SheetHead } from "./SheetHead.tsx";
import type { SheetParts } from "./sheetParts.ts";
import { useReadOf } from "./useReadOf.ts";

/** What was measured for a ticket, wherever it was measured, before and after, and whether the sides agree. */
export function MeasureSheet(parts: SheetParts) {
  const { ticket } = parts;
  const read = useReadOf(parts);
  return (
    <article className="measure-sheet">
      <SheetHead {...parts}>
        <p className="sheet-finish">
          {TICKET.before} {ticket.finishBefore ?? "–"} → {TICKET.after} <strong>{ticket.finishAfter ?? TICKET.notDecided}</strong>
        </p>
      </SheetHead>
      {read === null ? (
        <p className="reading">{SHOP_FRAME.reading}</p>
      ) : readByPlace(read.readings).length === 0 ? (
        <p className="nothing">{PRINT.noMeasures}</p>
      ) : (
        <Measured read={read} />
      )}
    </article>
  );
}

function Measured({ read }: { readonly read: NonNullable<ReturnType<typeof useReadOf>> }) {
  const times = useShopTimes();
  const { readings, ticket } = read;
  const now = readingsOfNow(read);
  const workedSince = readings.length - now.length;
  const isInWork = read.work.next !== null;
  const days = [...new Set(readings.map(({ at }) => times.day(at)))];
  const agreed = (["before", "after"] as const).flatMap((when) => agreedOf(when, read));
  return (
    <>
      <p>{PRINT.measured(days.join(", "))}</p>
      <PlaceTable places={readByPlace(now)} isInWork={isInWork} />
      {workedSince > 0 && <p className="note">{PRINT.workedSince(workedSince)}</p>}
      {agreed.map((one, i) => (
        <Agreement
          key={`${one.when} ${one.how}`}
          {...one}
          isInWork={isInWork}
          picture={i === agreed.length - 1 && one.how === "tester" ? "drawn" : "none"}
        />
      ))}
      {ticket.keptAsIs.map(({ at, why }) => (
        <p key={at}>{MEASURE.keptAsIs(why)}</p>
      ))}
      {readings.some(({ comparison }) => comparison !== null) && <p className="note">{PRINT.eye}</p>}
      <p className="signed">{PRINT.signed}</p>
    </>
  );
}

function agreedOf(when: Agreed["when"], read: ReadOf & Pick<NonNullable<ReturnType<typeof useReadOf>>, "references">): readonly Agreed[] {
  return [agreedBySheen(when, read, read.references), agreedByTester(when, read)].filter((one) => one !== null);
}

function PlaceTable({ places, isInWork }: { readonly places: readonly PlaceRead[]; readonly isInWork: boolean }) {
  const { columns } = PRINT;
  const { unit } = useRoughnessUnit();
  return (
    <table className="stages">
      <thead>
        <tr>
          {[columns.place, columns.before(unit), (isInWork ? columns.soFar : columns.after)(unit), columns.how].map((name) => (
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
function ReadHere({ readings }: { readonly readings: readonly Reading[] }) {
  const { figure } = useRoughnessUnit();
  const ra = raOf(readings);
  const looks = [...new Set(readings.flatMap(({ comparison }) => (comparison === null ? [] : [MEASURE.comparisons[comparison]])))];
  if (ra.length === 0) return looks.length === 0 ? "–" : looks.join(", ");
  const mean = figure(ra.reduce((sum, um) => sum + um, 0) / ra.length);
  return ra.length === 1 ? mean : PRINT.several(mean, ra.length, figure(Math.min(...ra)), figure(Math.max(...ra)));
}

/** Wide enough for six readings, narrow enough for the paper. */
const LINE_WIDTH = 600;

/** In a sentence, and the last of them on a line too: two would not leave a page room to be read. */
function Agreement({ when, judged, of, isInWork, picture }: Agreed & { readonly isInWork: boolean; readonly picture: "drawn" | "none" }) {
  const { unit } = useRoughnessUnit();
  return (
    <section className="sheet-agreement">
      <h3>{PRINT.agreement[when === "after" && isInWork ? "soFar" : when]}</h3>
      <p>
        <strong>{judgedText(judged)}</strong>
      </p>
      {picture === "drawn" && <Picture svg={readingLine(lineOf(of, judged, unit), LINE_WIDTH, PAGE_PAINT)} className="sheet-picture" />}
    </section>
  );
}
