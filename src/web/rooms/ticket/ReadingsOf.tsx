import { Link } from "wouter";
import { standingReadings } from "#contract/records/reading";
import { MEASURE, placeText } from "#words/en/rooms/measure";
import { TICKET } from "#words/en/rooms/ticket";
import { PlainTable } from "../../pieces/PlainTable.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { useReadingText } from "../../shop/readingText.ts";
import { answered, shop } from "../../shop/shopClient.ts";
import { For } from "../../shop/useDoor.tsx";
import { useRead } from "../../shop/useShop.ts";

/** What was measured for this ticket. */
export function ReadingsOf({ ticketId, ballId }: { readonly ticketId: string; readonly ballId: string }) {
  const readings = useRead(["readings", ticketId], () =>
    answered(shop.readings.$get({ query: { ticketId, order: "oldest first", limit: "200" } })),
  );
  const readingText = useReadingText();
  const { columns } = MEASURE;
  return (
    <section className="plate">
      <div className="ball-work-head">
        <h2>{TICKET.readings}</h2>
        <For least="technician">
          <Link href={`/measure?ball=${ballId}&ticket=${ticketId}`} className="button">
            {TICKET.measure}
          </Link>
        </For>
      </div>
      <Reading of={readings} isEmpty={({ items }) => standingReadings(items).length === 0} empty={TICKET.noReadings}>
        {({ items }) => (
          <PlainTable
            name={TICKET.readings}
            rows={standingReadings(items)}
            keyOf={({ id }) => id}
            columns={[
              { name: columns.work, cell: ({ when }) => MEASURE.when[when] },
              { name: columns.place, cell: ({ place }) => placeText(place) },
              { name: columns.reading, kind: "figure", cell: readingText },
              { name: columns.how, cell: ({ how }) => MEASURE.how[how] },
            ]}
          />
        )}
      </Reading>
    </section>
  );
}
