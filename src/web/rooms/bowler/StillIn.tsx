import { BOWLER } from "#words/en/rooms/bowler";
import { useShopTimes } from "../../shop/zone.ts";

/** As the server says it of an erasure. */
export interface OlderCopy {
  readonly name: string;
  readonly kind: "backup" | "before restore";
  readonly madeAt: string;
  readonly goneBy: string | null;
}

/** Copies of the records from before, which still hold somebody who was erased, and by when each will have gone. */
export function StillIn({ copies }: { readonly copies: readonly OlderCopy[] }) {
  const times = useShopTimes();
  if (copies.length === 0) return <p role="status">{BOWLER.stillInNone}</p>;
  return (
    <section className="plate" role="status">
      <p>{BOWLER.stillIn}</p>
      <ul>
        {copies.map(({ name, goneBy }) => (
          <li key={name}>{goneBy === null ? BOWLER.stillInUntilDeleted(name) : BOWLER.stillInUntil(name, times.day(goneBy))}</li>
        ))}
      </ul>
      <p className="note">{BOWLER.stillInWhy}</p>
    </section>
  );
}
