import type { Fields } from "../things/definition.ts";

/** What versions 1 and 2 wrote into the notes of a ball whose cover nobody knew, where they put a reactive solid. */
const TAKEN = new Set(["Cover not known at the counter; reactive solid taken.", "Cover not known beside the lane; reactive solid taken."]);

/** Version 3 of balls: a cover that nobody knows is null. Where the notes say that a solid was only taken, and nobody has written another since, it never was known. */
export function coverNotKnown(body: Fields): Fields {
  const isTaken = body.cover === "solid" && typeof body.notes === "string" && TAKEN.has(body.notes);
  return isTaken ? { ...body, cover: null, notes: "" } : body;
}
