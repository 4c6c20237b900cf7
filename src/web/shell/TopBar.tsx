import { Link, useLocation } from "wouter";
import { SHOP_FRAME } from "#words/en/rooms/frame";
import { FRAME } from "#words/en/screens";
import { OneOf } from "../pieces/OneOf.tsx";
import { useDoor, useMay } from "../shop/useDoor.tsx";
import { BAR } from "./rooms.ts";
import { SearchAnywhere } from "./SearchAnywhere.tsx";
import { SignedIn } from "./SignedIn.tsx";
import { VARIANTS, type Variant } from "./useVariant.ts";
import { WhoActs } from "./WhoActs.tsx";

/** The bar over every room but the bench: the rooms, who is at work, and the look. */
export function TopBar({ variant, onVariant }: { readonly variant: Variant; onVariant(variant: Variant): void }) {
  const [here] = useLocation();
  const { state } = useDoor();
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
