import { z } from "zod";

/** A number that can be written as JSON. */
export const finite = z.number();

/** A chance or a share, 0–1. */
export const share = z.number().min(0).max(1);

/** A thing said: which, with which figures, and the sentence. */
export const note = z.strictObject({ id: z.string(), params: z.record(z.string(), z.union([z.string(), z.number()])), text: z.string() });
