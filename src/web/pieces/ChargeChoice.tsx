import type { Price } from "#contract/records/money";
import { PRICING } from "#words/en/rooms/pricing";
import { BY_HAND, chargeName, FREE, LATER, lacksAmount, lacksReason, type PricingDraft } from "../shop/pricing.ts";
import { useShopTimes } from "../shop/zone.ts";
import { LineField, WordField } from "./PlainFields.tsx";

interface ChoiceProps {
  readonly draft: PricingDraft;
  readonly prices: readonly Price[];
  /** What the work usually costs; null where that is not clear. */
  readonly usual: readonly Price[] | null;
  /** Whether somebody tried to go on. */
  readonly tried: boolean;
  /** Whether a price may be typed that the list does not have. */
  readonly byHand?: boolean;
  onChange(change: Partial<PricingDraft>): void;
}

/** What a ball's work costs: by the work, a price of the list, or free for a reason. */
export function ChargeChoice({ draft, prices, usual, tried, byHand = false, onChange }: ChoiceProps) {
  const { money } = useShopTimes();
  const byWork =
    usual === null
      ? { "": PRICING.toBePriced }
      : {
          "": PRICING.usual(
            usual.map(({ name }) => chargeName(name)).join(" + "),
            money(usual.reduce((sum, { eachCents }) => sum + eachCents, 0)),
          ),
          [LATER]: PRICING.later,
        };
  const words: Readonly<Record<string, string>> = {
    ...byWork,
    ...Object.fromEntries(prices.map(({ id, name, eachCents }) => [id, PRICING.price(chargeName(name), money(eachCents))])),
    ...(byHand ? { [BY_HAND]: PRICING.byHand } : {}),
    [FREE]: PRICING.free,
  };
  return (
    <>
      <WordField label={PRICING.charged} value={draft.priceId} words={words} onChange={(priceId) => onChange({ priceId })} />
      {draft.priceId === BY_HAND && (
        <LineField
          label={PRICING.typed}
          inputMode="decimal"
          value={draft.typed ?? ""}
          problem={(tried || (draft.typed ?? "") !== "") && lacksAmount(draft) ? PRICING.needsAmount : undefined}
          onChange={(typed) => onChange({ typed })}
        />
      )}
      {draft.priceId === FREE && (
        <LineField
          label={PRICING.freeWhy}
          value={draft.freeWhy}
          problem={tried && lacksReason(draft) ? PRICING.needsWhy : undefined}
          onChange={(freeWhy) => onChange({ freeWhy })}
        />
      )}
    </>
  );
}
