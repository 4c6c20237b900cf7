import { z } from "zod";

/** What a command prints with `--json` when it has no answer: every problem, with its place, what stood there and what is allowed. */
export const errorDocumentSchema = z.strictObject({
  error: z.strictObject({
    code: z.enum(["usage", "unreadable", "syntax", "invalid", "records", "internal"]),
    problems: z.array(z.strictObject({ path: z.string(), value: z.unknown(), allowed: z.string(), message: z.string() })),
  }),
});

export type ErrorDocument = z.output<typeof errorDocumentSchema>;
