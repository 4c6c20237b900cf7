import { z } from "zod";
import { EngineFault } from "#engine/fault";
import { FINISH_WRITTEN, parseFinish } from "#engine/surface/finish";
import { canBeKept, count, text } from "../job/fields.ts";

/*
 * Pieces of the kept things. What is not known is `null` in what is read, and may be left out of what is written.
 */

const UUID7 = /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;
const ID_ALLOWED = "an id: a UUID of version 7, lower case";
/** An id of a kept thing (RFC 9562, version 7): sorts by the time it was made. */
export const id = z.string({ error: ID_ALLOWED }).regex(UUID7, { error: ID_ALLOWED });

const INSTANT_ALLOWED = "a time in UTC, 2026-05-31T18:30:00.000Z";
/** A moment: ISO 8601 in UTC with milliseconds, so that text sorts as time does. */
export const instant = z
  .string({ error: INSTANT_ALLOWED })
  .regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}\.\d{3}Z$/, { error: INSTANT_ALLOWED })
  .refine((written) => isMoment(written, written), { error: INSTANT_ALLOWED });

const DAY_ALLOWED = "a day of the calendar, 2026-05-31";
/** A day of the calendar where the shop is. */
export const day = z
  .string({ error: DAY_ALLOWED })
  .regex(/^\d{4}-\d{2}-\d{2}$/, { error: DAY_ALLOWED })
  .refine((written) => isMoment(`${written}T00:00:00.000Z`, written), { error: DAY_ALLOWED });

/** Days and hours that are not in the calendar roll over into others, or are no time at all. */
function isMoment(written: string, start: string): boolean {
  const at = new Date(written);
  return !Number.isNaN(at.getTime()) && at.toISOString().startsWith(start);
}

const CENTS = 1_000_000_000;
/** Money in the smallest unit of the shop's currency, never a fraction. */
export const cents = count("cents", { from: -CENTS, to: CENTS }, "Amount in the smallest unit of the currency");
/** Money that is not owed the other way round. */
export const plainCents = count("cents", { from: 0, to: CENTS }, "Amount in the smallest unit of the currency");
const CURRENCY_ALLOWED = "three letters of ISO 4217, e.g. USD";
export const currency = z.string({ error: CURRENCY_ALLOWED }).regex(/^[A-Z]{3}$/, { error: CURRENCY_ALLOWED });
/** Tax as a part of the price before it: 8.25 % is 8250. */
export const taxMillipercent = count("thousandths of a percent", { from: 0, to: 100_000 }, "Tax of the price before tax");
/** Kinds of work that a price may be for. */
export const PRICED_WORK = ["refresh", "resurface", "polish", "extraction", "plug"] as const;
/** Where tax is rounded to whole cents: once for each line, or once for each rate of the whole bill. */
export const TAX_ROUNDINGS = ["line", "bill"] as const;
/** Whether prices hold their tax, or it is added to them. */
export const TAX_INCLUDED = ["no", "yes"] as const;

const FINISH_ALLOWED = `a finish: ${FINISH_WRITTEN}`;
/** A finish as it is written: `2000`, `1000 + polish`. */
export const finishText = z
  .string({ error: FINISH_ALLOWED })
  .max(60, { error: FINISH_ALLOWED })
  .refine(isFinish, { error: FINISH_ALLOWED });

function isFinish(written: string): boolean {
  try {
    parseFinish(written);
    return true;
  } catch (fault) {
    if (fault instanceof EngineFault) return false;
    throw fault;
  }
}

const MOST_NOTE = 4000;
const NOTE_ALLOWED = `text of up to ${MOST_NOTE} letters`;
/** Free text, which may hold several lines, and may be empty. */
export const longText = z
  .string({ error: NOTE_ALLOWED })
  .max(MOST_NOTE, { error: NOTE_ALLOWED })
  .refine(canBeKept, { error: `${NOTE_ALLOWED}, without the sign U+0000` })
  .default("");

/** Something that may not be known: `null` where it is not. */
export function maybe<Schema extends z.ZodType>(schema: Schema) {
  return schema.nullable().default(null);
}

/** A list of up to so many; an empty one where nothing is given. */
export function listOf<Schema extends z.ZodType>(schema: Schema, most: number, what: string) {
  const allowed = `a list of up to ${most} ${what}`;
  return z.array(schema, { error: allowed }).max(most, { error: allowed }).default([]);
}

/** What the records add to everything that is kept. */
const kept = {
  id,
  shopId: id,
  /** Counts up by one with every change; a change names the version it was made on. */
  version: count("", { from: 1, to: 2_147_483_647 }, "Version of this thing"),
  createdAt: instant,
  changedAt: instant,
};

/** The schema of a thing as it is read, from the schema of what is written. */
export function keptAs<Shape extends z.ZodRawShape>(written: z.ZodObject<Shape>) {
  return z.strictObject({ ...kept, ...written.shape });
}

export type Kept = z.output<z.ZodObject<typeof kept>>;

/** Ink on paper: the letters a person signs a stage with. */
export const initials = text("Initials").max(5, { error: "1 to 5 letters" });

/** What was made of a delivery, a place or a figure when nobody measured it is said, not hidden. */
export const MEASURED_HOW = ["video", "sensor", "told by the bowler", "estimated", "word only"] as const;
