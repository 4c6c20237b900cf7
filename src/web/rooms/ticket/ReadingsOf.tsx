import { standingReadings } from "#contract/records/standingReadings";
import { MEASURE, placeText } from "#words/en/rooms/measure";
import { TICKET } from "#words/en/rooms/ticket";
import { PlainTable } from "../../pieces/PlainTable.tsx";
import { useReadingText } from "../../shop/readingText.ts";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead } from "../../shop/useShop.ts";

/** What was measured for this ticket. */
export function ReadingsOf({ ticketId }: { readonly ticketId: string }) {
  const readings = useRead(["readings", ticketId], () =>
    answered(shop.readings.$get({ query: { ticketId, order: "oldest first", limit: "200" } })),
  );
  const readingText = useReadingText();
  const { columns } = MEASURE;
  const items = standingReadings(readings.data?.items ?? []);
  // What was never measured is a press away, under Measure.
  if (items.length === 0) return null;
  return (
    <section className="plate">
      <h2>{TICKET.readings}</h2>
      <PlainTable
        name={TICKET.readings}
        rows={items}
        keyOf={({ id }) => id}
        columns={[
          { name: columns.work, cell: ({ when }) => MEASURE.when[when] },
          { name: columns.place, cell: ({ place }) => placeText(place) },
          { name: columns.reading, kind: "figure", cell: readingText },
          { name: columns.how, cell: ({ how }) => MEASURE.how[how] },
        ]}
      />
    </section>
  );
}
