import { z } from "zod";
import { NEVER_ABOVE_F } from "#engine/rules/heat";
import { BOOK_IDS } from "#engine/rules/ruleBooks";
import { count, mapping, oneOf, quantity, text } from "../job/fields.ts";
import { currency, keptAs, maybe, TAX_INCLUDED, TAX_ROUNDINGS, taxMillipercent } from "./fields.ts";
import { CARD_SIZES, labelSize } from "./paper.ts";

const ZONE_ALLOWED = "a time zone of the IANA list, e.g. America/Chicago";

/** Languages that the page is written in. */
export const LANGUAGES = ["en", "de"] as const;

const TIME_ALLOWED = "a time of day, 10:00";
const timeOfDay = z.string({ error: TIME_ALLOWED }).regex(/^([01]\d|2[0-3]):[0-5]\d$/, { error: TIME_ALLOWED });
const OPEN_ALLOWED = "a time of day and a later one, 10:00 to 19:00; null where the shop is closed";
const opening = z
  .strictObject({ from: timeOfDay, until: timeOfDay }, { error: OPEN_ALLOWED })
  .refine(({ from, until }) => from < until, { error: OPEN_ALLOWED })
  .nullable();
const SOME_DAY = "at least one day on which the shop is open";
const openings = mapping(
  { monday: opening, tuesday: opening, wednesday: opening, thursday: opening, friday: opening, saturday: opening, sunday: opening },
  "When the shop is open",
).refine((days) => Object.values(days).some((day) => day !== null), { error: SOME_DAY });
export type Openings = z.output<typeof openings>;

/** How this shop draws oil out of a ball. */
const extraction = mapping(
  {
    method: text("What it is done with"),
    temperatureF: quantity("°F", { from: 60, to: NEVER_ABOVE_F }, "What the ball is warmed to"),
    minutes: count("min", { from: 1, to: 600 }, "How long it is warmed"),
    /** Null: nobody has said how often the oil that comes out is wiped off. */
    wipeMinutes: maybe(count("min", { from: 1, to: 120 }, "How often beads of oil are wiped off")),
    restMinutes: count("min", { from: 0, to: 2880 }, "How long it rests before it is worked"),
  },
  "How oil is drawn out",
);
export type Extraction = z.output<typeof extraction>;

/** What one shop has settled on. There is one of these, and its id is the shop's. */
export const settingsWritten = mapping(
  {
    shopName: text("Name of the shop"),
    /** Times are kept in UTC; days and clock times are shown in this zone. */
    zone: z.string({ error: ZONE_ALLOWED }).refine(isZone, { error: ZONE_ALLOWED }).default("UTC"),
    currency: currency.default("USD"),
    taxMillipercent: taxMillipercent.default(0),
    /** Of bills that are made from now on; a visit keeps what it was made with. */
    taxRounding: oneOf(TAX_ROUNDINGS, "Where tax is rounded").default("bill"),
    taxIncluded: oneOf(TAX_INCLUDED, "Whether prices hold their tax").default("no"),
    roughnessUnit: oneOf(["µin", "µm"], "Unit that roughness is shown in").default("µin"),
    speedUnit: oneOf(["mph", "km/h"], "Unit that speed is shown in").default("mph"),
    paperSize: oneOf(["A4", "Letter"], "Paper in the shop's printer").default("A4"),
    /** What the bench's ticket is printed on; null: what is in the printer. */
    ticketSize: maybe(oneOf(CARD_SIZES, "Paper of the ticket")),
    /** What the care card is printed on. */
    cardSize: oneOf(CARD_SIZES, "Paper of the care card").default("A6"),
    /** Of the label printer: width × height, as it is written on the roll. */
    labelSize: labelSize.default("62 × 90 mm"),
    /** Whose limits a ball is held to unless an event says otherwise. */
    ruleBook: oneOf(BOOK_IDS, "Rule book that the shop goes by").default("usbc"),
    /** Null: nobody has said it, and the guide runs no clock for it. */
    extraction: maybe(extraction),
    ballsPerHour: count("", { from: 1, to: 60 }, "Balls that the bench works in an hour").default(3),
    /** Promises are made for these times; null: the usual ones. */
    openings: maybe(openings),
    /** Null: as each browser prefers. */
    language: maybe(oneOf(LANGUAGES, "Language of the page")),
    /** An invented shop says so wherever its data are shown. */
    data: oneOf(["real", "invented"], "Whether the records are real").default("real"),
  },
  "Settings of the shop",
);
export const settingsKept = keptAs(settingsWritten);
export type SettingsWritten = z.input<typeof settingsWritten>;
export type Settings = z.output<typeof settingsKept>;

function isZone(written: string): boolean {
  try {
    new Intl.DateTimeFormat("en", { timeZone: written });
    return true;
  } catch {
    return false;
  }
}
