import { useEffect, useState } from "react";
import { Link } from "wouter";
import type { House } from "#contract/records/place";
import { LANES } from "#words/en/rooms/lanes";
import { LineField } from "../../pieces/PlainFields.tsx";
import { emptied } from "../../shop/emptied.ts";
import { Reading } from "../../shop/Reading.tsx";
import { answered, newKey, shop } from "../../shop/shopClient.ts";
import { useHouses, useLanes, usePatterns } from "../../shop/usePlaces.ts";
import { For } from "../../shop/useSession.tsx";
import { useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";

/** The houses, their lanes and their patterns. */
export function LanesRoom() {
  const houses = useHouses();
  useEffect(() => {
    document.title = LANES.title;
  }, []);
  return (
    <main id="answer" className="room lanes" tabIndex={-1}>
      <h1>{LANES.title}</h1>
      <Reading of={houses} isEmpty={({ items }) => items.length === 0} empty={LANES.none}>
        {({ items }) => items.map((house) => <HousePlate key={house.id} house={house} />)}
      </Reading>
      <For least="technician">
        <AddHouse />
      </For>
    </main>
  );
}

function HousePlate({ house }: { readonly house: House }) {
  const lanes = useLanes(house.id);
  const patterns = usePatterns(house.id);
  return (
    <section className="plate" aria-label={house.name}>
      <h2>{house.name}</h2>
      <div className="room-columns">
        <div>
          <h3>{LANES.lanes}</h3>
          <Reading of={lanes} isEmpty={({ items }) => items.length === 0} empty={LANES.noLanes}>
            {({ items }) => (
              <ul className="chips">
                {items
                  .toSorted((a, b) => a.number - b.number)
                  .map(({ id, number }) => (
                    <li key={id}>
                      <Link href={`/lanes/${id}`} className="button">
                        {LANES.lane(number)}
                      </Link>
                    </li>
                  ))}
              </ul>
            )}
          </Reading>
          <For least="technician">
            <AddLane houseId={house.id} known={lanes.data?.items.map(({ number }) => number) ?? []} />
          </For>
        </div>
        <div>
          <h3>{LANES.patterns}</h3>
          <Reading of={patterns} isEmpty={({ items }) => items.length === 0} empty={LANES.noPatterns}>
            {({ items }) => (
              <ul className="found">
                {items.map(({ id, name }) => (
                  <li key={id}>
                    <Link href={`/patterns/${id}`}>{name}</Link>
                  </li>
                ))}
              </ul>
            )}
          </Reading>
          <For least="technician">
            <Link href={`/patterns/new?house=${house.id}`} className="button">
              {LANES.addPattern}
            </Link>
          </For>
        </div>
      </div>
    </section>
  );
}

const MOST_LANES = 200;

function AddLane({ houseId, known }: { readonly houseId: string; readonly known: readonly number[] }) {
  const [typed, setTyped] = useState("");
  const [key, setKey] = useState(newKey);
  const write = useWrite(
    (number: number) => answered(shop.lanes.$post({ json: { houseId, number } }, { headers: { "Idempotency-Key": key } })),
    ["lanes"],
  );
  const number = Number(typed);
  const isNumber = Number.isInteger(number) && number >= 1 && number <= MOST_LANES && !known.includes(number);
  return (
    <form
      className="add-line"
      onSubmit={(event) => {
        event.preventDefault();
        if (!isNumber) return;
        write.mutate(number, {
          onSuccess: () => {
            setTyped(emptied(typed, ""));
            setKey(newKey());
          },
        });
      }}
    >
      <LineField
        label={LANES.laneNumber}
        inputMode="numeric"
        value={typed}
        problem={typed !== "" && !isNumber ? LANES.laneNumberAllowed : undefined}
        onChange={setTyped}
      />
      <button type="submit" className="button" disabled={!isNumber || write.isPending}>
        {LANES.addLane}
      </button>
      <WriteFault error={write.error} />
    </form>
  );
}

function AddHouse() {
  const [name, setName] = useState("");
  const [key, setKey] = useState(newKey);
  const write = useWrite(
    (given: string) => answered(shop.houses.$post({ json: { name: given } }, { headers: { "Idempotency-Key": key } })),
    ["houses"],
  );
  return (
    <form
      className="plate add-line"
      onSubmit={(event) => {
        event.preventDefault();
        if (name.trim() === "") return;
        write.mutate(name.trim(), {
          onSuccess: () => {
            setName(emptied(name, ""));
            setKey(newKey());
          },
        });
      }}
    >
      <LineField label={LANES.houseName} value={name} onChange={setName} />
      <button type="submit" className="button" disabled={name.trim() === "" || write.isPending}>
        {LANES.addHouse}
      </button>
      <WriteFault error={write.error} />
    </form>
  );
}
