import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";

const ROOT = join(import.meta.dirname, "..", "..");
const page = readFileSync(join(ROOT, "docs", "decisions", "walks.md"), "utf8");
const steps = [...page.matchAll(/`([\w/]+\.tsx?)` · `([\w-]+)`/g)].map(([, file, name]) => ({ file, name }));

it("the walks through the house name some thirty places", () => {
  expect(steps.length).toBeGreaterThan(30);
});

it.each(steps)("$file is there and has $name in it", ({ file, name }) => {
  expect(readFileSync(join(ROOT, "src", file), "utf8")).toMatch(new RegExp(`(?<![\\w-])${name}(?![\\w-])`));
});
