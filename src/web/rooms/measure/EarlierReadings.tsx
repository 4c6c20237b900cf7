import { MEASURE, placeText } from "#words/en/rooms/measure";
import { PlainTable } from "../../pieces/PlainTable.tsx";
import type { ReadingHere } from "../../shop/readingsHere.ts";
import { useReadingText } from "../../shop/readingText.ts";
import { useShopTimes } from "../../shop/zone.ts";

/** What has been read on the ball so far, the newest first. @param readings those that stand */
export function EarlierReadings({ readings }: { readonly readings: readonly ReadingHere[] }) {
  const times = useShopTimes();
  const readingText = useReadingText();
  const { columns } = MEASURE;
  return (
    <details className="plate earlier-readings">
      <summary>{MEASURE.earlierCount(readings.length)}</summary>
      {readings.length === 0 ? (
        <p className="nothing">{MEASURE.noEarlier}</p>
      ) : (
        <PlainTable
          name={MEASURE.earlier}
          rows={readings.toSorted((a, b) => b.at.localeCompare(a.at))}
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
    </details>
  );
}
