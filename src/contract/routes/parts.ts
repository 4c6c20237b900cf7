import { z } from "zod";
import { count, mapping, text } from "../job/fields.ts";
import { id } from "../records/fields.ts";

/** The id of a thing in a path. */
export const idParams = mapping({ id: text("Id") }, "Where");

const cursor = id.describe("`next` of the page before");

/** Which page of a list: how many, and the cursor that the page before gave as `next`. */
export const pageQuery = {
  limit: z
    .preprocess(
      (written) => (typeof written === "string" && /^\d+$/.test(written) ? Number(written) : written),
      count("", { from: 1, to: 200 }, "How many"),
    )
    .optional(),
  after: cursor.optional(),
};

/** One page of a list; `next` is null on the last. */
export function pageOf<const S extends z.ZodType>(item: S) {
  return z.strictObject({ items: z.array(item), next: z.string().nullable() });
}
