import { MEASURE, placeText } from "#words/en/rooms/measure";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead } from "../../shop/useShop.ts";
import { useRoughness, useShopTimes } from "../../shop/zone.ts";

/** What has been read on the ball so far, the newest first. */
export function EarlierReadings({ ballId }: { readonly ballId: string }) {
  const times = useShopTimes();
  const roughness = useRoughness();
  const readings = useRead(["readings", "of ball", ballId], () =>
    answered(shop.readings.$get({ query: { ballId, order: "newest first", limit: "200" } })),
  );
  const { columns } = MEASURE;
  return (
    <section className="plate">
      <h2>{MEASURE.earlier}</h2>
      <Reading of={readings} isEmpty={({ items }) => items.length === 0} empty={MEASURE.noEarlier}>
        {({ items }) => (
          <table className="stages">
            <thead>
              <tr>
                {[columns.at, columns.work, columns.place, columns.reading, columns.how].map((name) => (
                  <th key={name} scope="col">
                    {name}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {items.map(({ id, at, when, place, raUm, comparison, how }) => (
                <tr key={id}>
                  <td>{times.at(at)}</td>
                  <td>{MEASURE.when[when]}</td>
                  <td>{placeText(place)}</td>
                  <td>{raUm === null ? (comparison === null ? "" : MEASURE.comparisons[comparison]) : roughness(raUm)}</td>
                  <td>{MEASURE.how[how]}</td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </Reading>
    </section>
  );
}
