import type { Person } from "#contract/records/person";
import { SHOP } from "#words/en/rooms/shop";
import { EditedList } from "../../pieces/EditedList.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { answered, madeOn, shop } from "../../shop/shopClient.ts";
import type { Typed } from "../../shop/useEditing.ts";
import { usePeople } from "../../shop/usePeople.ts";

const WORDS = SHOP.person;

/** Who works here, or did: initials stay with the work. */
export function People() {
  const people = usePeople();
  return (
    <>
      <p className="note">{SHOP.peopleWhy}</p>
      <Reading of={people}>
        {(all) => (
          <EditedList<Person>
            least="owner"
            name={SHOP.people}
            rows={all}
            columns={[
              { name: WORDS.initials, cell: ({ initials }) => <strong>{initials}</strong> },
              { name: WORDS.name, cell: ({ name }) => name },
              { name: WORDS.state, cell: ({ state }) => SHOP.personStates[state] },
            ]}
            fields={[
              { path: "name", label: WORDS.name },
              { path: "initials", label: WORDS.initials },
              { path: "state", label: WORDS.state, words: SHOP.personStates },
            ]}
            memory="gritwright.shop.people"
            touches={["people"]}
            nameOf={({ name }) => name}
            typedOf={({ name, initials, state }) => ({ name, initials, state })}
            change={({ id }, typed, made) =>
              answered(shop.people[":id"].$patch({ param: { id }, json: personOf(typed), header: madeOn(made) }))
            }
            read={async (current) => (await import("#contract/records/person")).personKept.safeParse(current).data ?? null}
            adding={{
              title: SHOP.addPerson,
              empty: { name: "", initials: "", state: "works here" },
              make: (typed, { headers }) => answered(shop.people.$post({ json: personOf(typed) }, { headers })),
            }}
          />
        )}
      </Reading>
    </>
  );
}

function personOf({ name, initials, state }: Typed): Pick<Person, "name" | "initials" | "state"> {
  return { name: name.trim(), initials: initials.trim(), state: state as Person["state"] };
}
