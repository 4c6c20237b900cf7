import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";

const ROOT = join(import.meta.dirname, "..", "..");
const page = readFileSync(join(ROOT, "CONTRIBUTING.md"), "utf8");
const section = page.slice(page.indexOf("## Where a change goes"), page.indexOf("## The field's words in code"));
const paths = [...new Set([...section.matchAll(/`([\w-]+(?:\/[\w.-]+)+)`/g)].map(([, path]) => path))];

/** A file or folder as a row names it: from the project's root or from `src`, a test without its ending. */
function found(path: string): string | null {
  const places = [path, `src/${path}`, `${path}.test.ts`, `src/${path}.ts`];
  return places.find((place) => existsSync(join(ROOT, place))) ?? null;
}

it("where a change goes names some fifty places", () => {
  expect(paths.length).toBeGreaterThan(50);
});

it.each(paths)("%s is there", (path) => {
  expect(found(path)).not.toBeNull();
});

const named = [...section.matchAll(/`([A-Z_]{3,})` (?:of|in) `([\w./-]+)`/g)].map(([, name, file]) => ({ name, file }));

it("and what a row says to add to", () => {
  expect(named.length).toBeGreaterThan(3);
});

it.each(named)("$name stands in $file", ({ name, file }) => {
  expect(readFileSync(join(ROOT, "src", file), "utf8")).toMatch(new RegExp(`\\b${name}\\b`));
});
