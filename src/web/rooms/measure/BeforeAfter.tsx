import type { Place } from "#engine/surface/readings/places";
import { MEASURE, PLACE_LABELS } from "#words/en/rooms/measure";

interface BeforeAfterProps {
  readonly places: readonly Place[];
  before(place: Place): string | null;
  after(place: Place): string | null;
}

/** Every place before the work and after it, side by side; nothing where only one of them was read. */
export function BeforeAfter({ places, before, after }: BeforeAfterProps) {
  const read = places.filter((place) => before(place) !== null || after(place) !== null);
  if (!read.some((place) => before(place) !== null) || !read.some((place) => after(place) !== null)) return null;
  const { place: name, before: was, after: is } = MEASURE.beforeAfterColumns;
  return (
    <section className="before-after">
      <h2>{MEASURE.beforeAfter}</h2>
      <table>
        <thead>
          <tr>
            {[name, was, is].map((one) => (
              <th key={one} scope="col">
                {one}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {read.map((place) => (
            <tr key={place}>
              <th scope="row">{PLACE_LABELS[place]}</th>
              <td>{before(place) ?? "–"}</td>
              <td>{after(place) ?? "–"}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
