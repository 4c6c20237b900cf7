import { expect, it } from "vitest";
import { z } from "zod";
import { text } from "#contract/job/fields";
import { longText } from "#contract/records/fields";

// "Regardless of the specific character set, the character with code zero (sometimes called NUL) cannot be stored" (PostgreSQL 15 documentation, 8.3).
it.each([
  ["a line", text("A name")],
  ["a longer text", longText],
])("%s takes every sign but U+0000", (_, schema: z.ZodType) => {
  for (const words of ["Zoë", "Straße 1", "鳥", "🦩", "a\tb"]) expect(schema.parse(words)).toBe(words);
  const { error } = schema.safeParse("a\u0000b");
  expect(error === undefined ? "" : z.prettifyError(error)).toContain("without the sign U+0000");
});
