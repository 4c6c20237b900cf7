import { useEffect, useState } from "react";
import { Link, useLocation } from "wouter";
import { SHOP_FRAME } from "#words/en/rooms/frame";
import { FRAME } from "#words/en/screens";
import { OneOf } from "../pieces/OneOf.tsx";
import { actAs, actingPerson } from "../shop/person.ts";
import { answered, shop } from "../shop/shopClient.ts";
import { useMay, useSession } from "../shop/useSession.tsx";
import { useRead } from "../shop/useShop.ts";
import { BAR } from "./rooms.ts";
import { SearchAnywhere } from "./SearchAnywhere.tsx";
import { SignedIn } from "./SignedIn.tsx";
import { VARIANTS, type Variant } from "./useVariant.ts";

/** The bar over every room but the bench: the rooms, who is at work, and the look. */
export function TopBar({ variant, onVariant }: { readonly variant: Variant; onVariant(variant: Variant): void }) {
  const [here] = useLocation();
  const { state } = useSession();
  const may = useMay();
  const isHere = (path: string) => (path === "/" ? here === "/" : here === path || here.startsWith(`${path}/`));
  return (
    <header className="top no-print">
      <Link href="/" className="product">
        <img src="/mark.svg" alt="" width="30" height="30" />
        <span>
          <strong>{FRAME.product}</strong> <span className="motto">{FRAME.motto}</span>
        </span>
      </Link>
      <nav aria-label={SHOP_FRAME.rooms}>
        {BAR.filter(({ least }) => may(least)).map(({ path, name }) => (
          <Link key={path} href={path} aria-current={isHere(path) ? "page" : undefined}>
            {name}
          </Link>
        ))}
      </nav>
      <SearchAnywhere />
      {state === "signed in" ? <SignedIn /> : <WhoActs />}
      <OneOf label={FRAME.variant} value={variant} words={VARIANTS} onChange={onVariant} />
    </header>
  );
}

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
