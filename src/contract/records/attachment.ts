import { z } from "zod";
import { mapping, oneOf, text } from "../job/fields.ts";
import { id, instant, keptAs, longText, maybe } from "./fields.ts";

/*
 * Photos and profile files: the bytes lie as a file beside the database, the row says what they are.
 */

const file = {
  bytes: z.int().min(1),
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
};

export const PHOTO_TYPES = ["image/jpeg", "image/png", "image/webp"] as const;

/** A photo of a ball: its condition, its serial before that can be sanded away, a crack for the warranty. */
export const photoWritten = mapping(
  {
    ballId: maybe(id),
    ticketId: maybe(id),
    bowlerId: maybe(id),
    of: oneOf(["condition", "serial", "crack", "surface", "other"], "What it shows"),
    takenAt: maybe(instant),
    note: longText,
  },
  "A photo",
);
/** The type is what the bytes are, not what somebody says; data about place and camera are taken out before it is kept. */
export const photoKept = keptAs(z.strictObject({ ...photoWritten.shape, ...file, type: oneOf(PHOTO_TYPES, "What the bytes are") }));
export type PhotoWritten = z.input<typeof photoWritten>;
export type Photo = z.output<typeof photoKept>;

/** A file that a tester wrote, as it was. */
export const profileFileWritten = mapping(
  { ballId: maybe(id), ticketId: maybe(id), name: text("Name of the file"), note: longText },
  "A profile file",
);
export const profileFileKept = keptAs(z.strictObject({ ...profileFileWritten.shape, ...file }));
export type ProfileFileWritten = z.input<typeof profileFileWritten>;
export type ProfileFile = z.output<typeof profileFileKept>;
