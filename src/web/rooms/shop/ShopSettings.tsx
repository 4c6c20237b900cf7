import type { Settings } from "#contract/records/settings";
import { BOOK_NAMES } from "#words/en/limits";
import { SHOP } from "#words/en/rooms/shop";
import type { EditField } from "../../pieces/EditForm.tsx";
import { EditPlate } from "../../pieces/EditPlate.tsx";
import { answered, madeOn, shop } from "../../shop/shopClient.ts";
import { figureOrNull, typedOf, wordOrNull } from "../../shop/typedValues.ts";
import { type Typed, useEditing } from "../../shop/useEditing.ts";
import { millipercentOf, percentTyped } from "./shopFigures.ts";

type Change = Parameters<typeof shop.settings.$patch>[0]["json"];

const FIELDS: readonly EditField[] = [
  { path: "shopName", label: SHOP.shopName },
  { path: "zone", label: SHOP.zone, help: SHOP.zoneHelp },
  { path: "currency", label: SHOP.currency, help: SHOP.currencyHelp },
  { path: "taxMillipercent", label: SHOP.tax, as: "number", help: SHOP.taxHelp },
  { path: "taxRounding", label: SHOP.taxRounding, words: SHOP.taxRoundings, help: SHOP.taxRulesHelp },
  { path: "taxIncluded", label: SHOP.taxIncluded, words: SHOP.taxIncludeds, help: SHOP.taxRulesHelp },
  { path: "ballsPerHour", label: SHOP.pace, as: "number", help: SHOP.paceHelp },
  { path: "roughnessUnit", label: SHOP.roughnessUnit, words: { µin: "µin", µm: "µm" } },
  { path: "speedUnit", label: SHOP.speedUnit, words: { mph: "mph", "km/h": "km/h" }, help: SHOP.speedHelp },
  { path: "paperSize", label: SHOP.paperSize, words: { A4: "A4", Letter: "Letter" } },
  { path: "ticketSize", label: SHOP.ticketSize, words: { "": SHOP.asPrinter, ...SHOP.cardSizes } },
  { path: "cardSize", label: SHOP.cardSize, words: SHOP.cardSizes },
  { path: "labelSize", label: SHOP.labelSize, help: SHOP.labelSizeHelp },
  { path: "extraction.method", label: SHOP.oilMethod, help: SHOP.oilHelp },
  { path: "extraction.temperatureF", label: SHOP.oilTemperature, as: "number", help: SHOP.oilSources },
  { path: "extraction.minutes", label: SHOP.oilMinutes, as: "number" },
  { path: "extraction.wipeMinutes", label: SHOP.oilWipe, as: "number", help: SHOP.oilWipeHelp },
  { path: "extraction.restMinutes", label: SHOP.oilRest, as: "number" },
  { path: "ruleBook", label: SHOP.ruleBook, words: BOOK_NAMES },
  { path: "language", label: SHOP.language, words: SHOP.languages, help: SHOP.languageHelp },
];

/** What the shop has settled on once for every room. */
export function ShopSettings({ settings }: { readonly settings: Settings }) {
  const editing = useEditing({
    memory: "gritwright.shop.house",
    thing: settings,
    typedOf: settingsTyped,
    send: (typed, made, changed) => answered(shop.settings.$patch({ json: changeOf(typed, changed), header: madeOn(made) })),
    read: async (current) => (await import("#contract/records/settings")).settingsKept.safeParse(current).data ?? null,
    touches: ["settings"],
  });
  return (
    <EditPlate
      least="owner"
      title={SHOP.settings}
      rows={[
        [SHOP.shopName, settings.shopName],
        [SHOP.zone, settings.zone],
        [SHOP.currency, settings.currency],
        [SHOP.tax, SHOP.percent(settings.taxMillipercent)],
        [SHOP.taxRounding, SHOP.taxRoundings[settings.taxRounding]],
        [SHOP.taxIncluded, SHOP.taxIncludeds[settings.taxIncluded]],
        [SHOP.pace, String(settings.ballsPerHour)],
        [SHOP.roughnessUnit, settings.roughnessUnit],
        [SHOP.speedUnit, settings.speedUnit],
        [SHOP.paperSize, settings.paperSize],
        [SHOP.cardSize, SHOP.cardSizes[settings.cardSize]],
        [SHOP.labelSize, settings.labelSize],
        [SHOP.oil, settings.extraction === null ? SHOP.oilNotSet : SHOP.oilIs(settings.extraction)],
        [SHOP.ruleBook, BOOK_NAMES[settings.ruleBook]],
        [SHOP.language, SHOP.languages[settings.language ?? ""]],
      ]}
      fields={FIELDS}
      editing={editing}
    />
  );
}

function settingsTyped(settings: Settings): Typed {
  const {
    shopName,
    zone,
    currency,
    taxMillipercent,
    taxRounding,
    taxIncluded,
    ballsPerHour,
    roughnessUnit,
    speedUnit,
    paperSize,
    ticketSize,
    cardSize,
    labelSize,
    extraction,
    ruleBook,
    language,
  } = settings;
  const figures = { taxMillipercent: percentTyped(taxMillipercent), ballsPerHour: String(ballsPerHour) };
  return {
    shopName,
    zone,
    currency,
    taxRounding,
    taxIncluded,
    ...figures,
    roughnessUnit,
    speedUnit,
    paperSize,
    ticketSize: typedOf(ticketSize),
    cardSize,
    labelSize,
    ...Object.fromEntries(OIL.map((key) => [`extraction.${key}`, typedOf(extraction?.[key])])),
    ruleBook,
    language: typedOf(language),
  };
}

function changeOf(typed: Typed, changed: ReadonlySet<string>): Change {
  const whole = {
    ...typed,
    taxMillipercent: millipercentOf(typed.taxMillipercent),
    ballsPerHour: figureOrNull(typed.ballsPerHour),
    language: wordOrNull(typed.language),
    ticketSize: wordOrNull(typed.ticketSize),
    extraction: extractionOf(typed),
  };
  const touched = new Set([...changed].map((path) => path.split(".")[0]));
  return Object.fromEntries(Object.entries(whole).filter(([path]) => touched.has(path))) as Change;
}

const OIL = ["method", "temperatureF", "minutes", "restMinutes", "wipeMinutes"] as const;

/** As a whole, or not at all: a temperature without a time is no setting. How often it is wiped may stay open. */
function extractionOf(typed: Typed): Change["extraction"] {
  const [method, ...figures] = OIL.map((key) => typed[`extraction.${key}`] ?? "");
  if (method.trim() === "" && figures.every((one) => one.trim() === "")) return null;
  const [temperatureF, minutes, restMinutes, wipeMinutes] = figures.map(figureOrNull);
  return { method: method.trim(), temperatureF, minutes, restMinutes, wipeMinutes } as Change["extraction"];
}
