import { Link } from "wouter";
import { SHOP_FRAME } from "#words/en/rooms/frame";
import { FRAME } from "#words/en/screens";
import { OneOf } from "../pieces/OneOf.tsx";
import { ROOMS } from "./rooms.ts";
import { VARIANTS, type Variant } from "./useVariant.ts";
import { WhoActs } from "./WhoActs.tsx";

/** The bar over every room but the bench: the rooms, who is at work, and the look. */
export function TopBar({ variant, onVariant }: { readonly variant: Variant; onVariant(variant: Variant): void }) {
  return (
    <header className="top no-print">
      <Link href="/" className="product">
        <img src="/mark.svg" alt="" width="30" height="30" />
        <span>
          <strong>{FRAME.product}</strong> <span className="motto">{FRAME.motto}</span>
        </span>
      </Link>
      <nav aria-label={SHOP_FRAME.rooms}>
        {ROOMS.flatMap(({ path, name }) =>
          name === null
            ? []
            : [
                <Link key={path} href={path}>
                  {name}
                </Link>,
              ],
        )}
        <Link href="/plan">{SHOP_FRAME.plan}</Link>
        <Link href="/design">{SHOP_FRAME.design}</Link>
      </nav>
      <WhoActs />
      <OneOf label={FRAME.variant} value={variant} words={VARIANTS} onChange={onVariant} />
    </header>
  );
}
