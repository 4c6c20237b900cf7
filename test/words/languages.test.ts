import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";

/* The compiler holds every text of another language to the English one; that a whole export is missing, it cannot see. */

const WORDS = join(import.meta.dirname, "..", "..", "src", "words");
const modulesOf = (language: string): string[] =>
  readdirSync(join(WORDS, language), { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts") && name !== "figures.ts")
    .sort();

const SOURCES = join(WORDS, "..");

/** Catalogues that the page reads: those that its floors name, and those of the shared sentence makers. */
function readByThePage(): readonly string[] {
  const floors = ["web", "drawing", "tasks", "exchange"].flatMap((floor) =>
    readdirSync(join(SOURCES, floor), { recursive: true, encoding: "utf8" }).map((name) => join(SOURCES, floor, name)),
  );
  const shared = ["messageText.ts", "assumptionText.ts", "problemText.ts"].map((name) => join(WORDS, name));
  const texts = [...floors.filter((name) => /\.tsx?$/.test(name)), ...shared].map((name) => readFileSync(name, "utf8"));
  return [
    ...new Set(texts.flatMap((text) => [...text.matchAll(/["](?:#words|\.)\/en\/([\w/]+)(?:\.ts)?["]/g)].map(([, name]) => `${name}.ts`))),
  ];
}

describe("German", () => {
  test("has every catalogue that the page uses", () => {
    const written = new Set(modulesOf("de"));
    const wanted = readByThePage();
    expect(wanted.length).toBeGreaterThan(25);
    expect(wanted.filter((name) => !written.has(name))).toEqual([]);
    expect(modulesOf("de").filter((name) => !modulesOf("en").includes(name))).toEqual([]);
  });

  test.each(modulesOf("de"))("%s exports what the English one does", async (name) => {
    const [german, english] = await Promise.all([import(join(WORDS, "de", name)), import(join(WORDS, "en", name))]);
    expect(Object.keys(german).sort()).toEqual(Object.keys(english).sort());
  });

  test("writes numbers with a comma and the same signs", async () => {
    const german = await import(join(WORDS, "de", "figures.ts"));
    const english = await import(join(WORDS, "figures.ts"));
    expect(Object.keys(german).sort()).toEqual(Object.keys(english).sort());
    for (const value of [-0.04, 0, 3.14159, -2.5, 1234.5]) expect(german.fixed(value, 1)).toBe(english.fixed(value, 1).replace(".", ","));
  });
});
