import { expect, it } from "vitest";
import { z } from "zod";
import { text } from "#contract/job/fields";
import { longText } from "#contract/records/fields";

function refusalOf(schema: z.ZodType, words: string): string {
  const { error } = schema.safeParse(words);
  return error === undefined ? "" : z.prettifyError(error);
}

it.each([
  ["a line", text("A name")],
  ["a longer text", longText],
])("%s takes every letter", (_, schema: z.ZodType) => {
  for (const words of ["Zoë", "Straße 1", "鳥", "🦩", "شهاب", "👩‍👧"]) expect(schema.parse(words)).toBe(words);
});

// "Regardless of the specific character set, the character with code zero (sometimes called NUL) cannot be stored" (PostgreSQL 15 documentation, 8.3).
it("a longer text takes lines and tabs, and every sign but U+0000", () => {
  expect(longText.parse("a\tb\nc")).toBe("a\tb\nc");
  expect(refusalOf(longText, "a\u0000b")).toContain("without the sign U+0000");
});

// Line breaks of Unicode (UAX #14, class BK), and what turns the direction (UAX #9, section 2).
it.each(["\u0000", "\t", "\n", "\r", "\u0085", "\u2028", "\u2029", "\u202e", "\u2066", "\u200f", "\u061c"])(
  "a line does not take %j",
  (sign) => {
    expect(refusalOf(text("A name"), `Hedda${sign}Plover`)).toContain("on one line");
  },
);
