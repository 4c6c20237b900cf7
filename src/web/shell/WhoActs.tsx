import { useEffect, useState } from "react";
import { SHOP_FRAME } from "#words/en/rooms/frame";
import { actAs, actingPerson } from "../shop/person.ts";
import { answered, shop } from "../shop/shopClient.ts";
import { useRead } from "../shop/useShop.ts";

/** Who is at work at this machine: whose initials stand beside what is done. */
export function WhoActs() {
  const people = useRead(["people"], () => answered(shop.people.$get({ query: { state: "works here", order: "oldest first" } })));
  const [chosen, setChosen] = useState(actingPerson());
  const items = people.data?.items ?? [];
  const isGone = chosen !== null && items.length > 0 && items.every(({ id }) => id !== chosen);
  useEffect(() => {
    if (!isGone) return;
    actAs(items[0].id);
    setChosen(items[0].id);
  }, [isGone, items]);
  const value = items.some(({ id }) => id === chosen) ? (chosen ?? "") : (items[0]?.id ?? "");
  return (
    <label className="who-acts">
      <span>{SHOP_FRAME.whoActs}</span>
      <select
        value={value}
        disabled={items.length === 0}
        onChange={({ target }) => {
          actAs(target.value);
          setChosen(target.value);
        }}
      >
        {items.length === 0 && <option value="">{SHOP_FRAME.nobody}</option>}
        {items.map(({ id, name, initials }) => (
          <option key={id} value={id}>
            {initials} · {name}
          </option>
        ))}
      </select>
    </label>
  );
}
