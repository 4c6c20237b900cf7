import { dayIn } from "#contract/records/dayIn";
import type { Price } from "#contract/records/money";
import type { Settings } from "#contract/records/settings";
import { PRICING } from "#words/en/rooms/pricing";
import { SHOP } from "#words/en/rooms/shop";
import { EditedList } from "../../pieces/EditedList.tsx";
import type { EditField } from "../../pieces/EditForm.tsx";
import { everyPage } from "../../shop/everyPage.ts";
import { Reading } from "../../shop/Reading.tsx";
import { answered, madeOn, shop } from "../../shop/shopClient.ts";
import { textOrNull, typedOf, wordOrNull } from "../../shop/typedValues.ts";
import type { Typed } from "../../shop/useEditing.ts";
import { useRead } from "../../shop/useShop.ts";
import { useSettings, useShopTimes } from "../../shop/zone.ts";
import { centsTyped, millipercentOf, percentTyped } from "./shopFigures.ts";

/** What work costs, from when until when. A bill keeps the price that it was made with. */
export function Prices() {
  const settings = useSettings();
  return <Reading of={settings}>{(read) => <PriceList settings={read} />}</Reading>;
}

function PriceList({ settings }: { readonly settings: Settings }) {
  const times = useShopTimes();
  const prices = useRead(["prices", "all"], () =>
    everyPage((after) => answered(shop.prices.$get({ query: { limit: "200", order: "oldest first", ...after } }))),
  );
  const words = SHOP.price;
  const { currency, zone, taxMillipercent, taxIncluded } = settings;
  const today = dayIn(zone, new Date().toISOString());
  return (
    <Reading of={prices}>
      {(all) => (
        <>
          {all.length === 0 && <p className="nothing">{SHOP.noPrices}</p>}
          <EditedList<Price>
            least="owner"
            name={SHOP.prices}
            rows={all}
            columns={[
              { name: words.name, cell: ({ name }) => name },
              { name: PRICING.work, cell: ({ work }) => (work === null ? "" : PRICING.works[work]) },
              { name: words.each[taxIncluded], kind: "figure", cell: ({ eachCents }) => times.money(eachCents) },
              { name: words.tax, kind: "figure", cell: (price) => SHOP.percent(price.taxMillipercent) },
              { name: words.until, cell: ({ until }) => (until === null ? SHOP.openEnd : times.date(until)) },
            ]}
            fields={fieldsIn(settings)}
            memory="gritwright.shop.priceList"
            touches={["prices"]}
            nameOf={({ name }) => name}
            typedOf={priceTyped}
            change={({ id }, typed, made) =>
              answered(shop.prices[":id"].$patch({ param: { id }, json: priceOf(typed), header: madeOn(made) }))
            }
            read={async (current) => (await import("#contract/records/money")).priceKept.safeParse(current).data ?? null}
            adding={{
              title: SHOP.addPrice,
              empty: {
                name: "",
                work: "",
                eachCents: "",
                taxMillipercent: percentTyped(taxMillipercent),
                from: today,
                until: "",
                note: "",
              },
              make: (typed, { headers }) => answered(shop.prices.$post({ json: { ...priceOf(typed), currency } }, { headers })),
            }}
          />
        </>
      )}
    </Reading>
  );
}

function fieldsIn({ currency, taxIncluded }: Settings): readonly EditField[] {
  const words = SHOP.price;
  return [
    { path: "name", label: words.name },
    { path: "work", label: PRICING.work, words: PRICING.works, help: PRICING.workHelp },
    { path: "eachCents", label: SHOP.priceEach(words.each[taxIncluded], currency), as: "number", help: SHOP.priceAllowed },
    { path: "taxMillipercent", label: words.tax, as: "number" },
    { path: "from", label: words.from, as: "date" },
    { path: "until", label: words.until, as: "date" },
    { path: "note", label: words.note },
  ];
}

function priceTyped({ name, work, eachCents, taxMillipercent, from, until, note }: Price): Typed {
  return {
    name,
    work: typedOf(work),
    eachCents: (eachCents / 100).toFixed(2),
    taxMillipercent: percentTyped(taxMillipercent),
    from,
    until: typedOf(until),
    note,
  };
}

function priceOf(typed: Typed): Pick<Price, "name" | "work" | "eachCents" | "taxMillipercent" | "from" | "until" | "note"> {
  return {
    name: typed.name.trim(),
    work: wordOrNull(typed.work),
    eachCents: centsTyped(typed.eachCents),
    taxMillipercent: millipercentOf(typed.taxMillipercent),
    from: typed.from,
    until: textOrNull(typed.until),
    note: typed.note,
  };
}
