import { Link } from "wouter";
import { MEASURE, placeText } from "#words/en/rooms/measure";
import { TICKET } from "#words/en/rooms/ticket";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { For } from "../../shop/useDoor.tsx";
import { useRead } from "../../shop/useShop.ts";
import { useRoughness } from "../../shop/zone.ts";

/** What was measured for this ticket. */
export function ReadingsOf({ ticketId, ballId }: { readonly ticketId: string; readonly ballId: string }) {
  const readings = useRead(["readings", ticketId], () =>
    answered(shop.readings.$get({ query: { ticketId, order: "oldest first", limit: "200" } })),
  );
  const roughness = useRoughness();
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
      <Reading of={readings} isEmpty={({ items }) => items.length === 0} empty={TICKET.noReadings}>
        {({ items }) => (
          <table className="stages">
            <tbody>
              {items.map(({ id, when, place, how, raUm, comparison }) => (
                <tr key={id}>
                  <td>{MEASURE.when[when]}</td>
                  <td>{placeText(place)}</td>
                  <td className="figure">{raUm === null ? (comparison ?? "") : roughness(raUm)}</td>
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
