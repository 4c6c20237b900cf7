import { MEASURE, placeText } from "#words/en/rooms/measure";
import { PlainTable } from "../../pieces/PlainTable.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { useReadingText } from "../../shop/readingText.ts";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead } from "../../shop/useShop.ts";
import { useShopTimes } from "../../shop/zone.ts";

/** What has been read on the ball so far, the newest first. */
export function EarlierReadings({ ballId }: { readonly ballId: string }) {
  const times = useShopTimes();
  const readingText = useReadingText();
  const readings = useRead(["readings", "of ball", ballId], () =>
    answered(shop.readings.$get({ query: { ballId, order: "newest first", limit: "200" } })),
  );
  const { columns } = MEASURE;
  return (
    <section className="plate">
      <h2>{MEASURE.earlier}</h2>
      <Reading of={readings} isEmpty={({ items }) => items.length === 0} empty={MEASURE.noEarlier}>
        {({ items }) => (
          <PlainTable
            name={MEASURE.earlier}
            rows={items}
            keyOf={({ id }) => id}
            columns={[
              { name: columns.at, kind: "day", cell: ({ at }) => times.at(at) },
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
