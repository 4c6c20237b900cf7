import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { checkJob } from "#contract/job/checkJob";
import { publishedSchema } from "#contract/job/publishedSchema";
import { resolvePlan, resolveShot } from "#contract/resolve/question";
import { readJobText } from "#exchange/jobFileText";

const ROOT = join(import.meta.dirname, "..", "..");
const EXAMPLES = join(ROOT, "examples");

it("docs/job-file.schema.json is what the program checks with (npx tsx --conditions=source tools/jobFileSchema.ts)", () => {
  expect(JSON.parse(readFileSync(join(ROOT, "docs", "job-file.schema.json"), "utf8"))).toEqual(publishedSchema());
});

it("docs/job-file.md names every key of the schema", () => {
  const page = readFileSync(join(ROOT, "docs", "job-file.md"), "utf8");
  const missing = [...keysOf(publishedSchema())].filter((key) => !key.includes(".") && !page.includes(`\`${key}\``));
  expect(missing).toEqual([]);
});

function keysOf(schema: unknown): Set<string> {
  const keys = new Set<string>();
  if (typeof schema !== "object" || schema === null) return keys;
  for (const [name, part] of Object.entries(schema)) {
    if (name === "properties" && typeof part === "object" && part !== null) for (const key of Object.keys(part)) keys.add(key);
    for (const key of keysOf(part)) keys.add(key);
  }
  return keys;
}

const textOf = (name: string) => readFileSync(join(EXAMPLES, name), "utf8");

describe("every example", () => {
  it.each(readdirSync(EXAMPLES))("%s says at its head that it is invented", (name) => {
    expect(textOf(name).split("\n")[0]).toMatch(/^#.*\binvented\b/i);
  });

  /** Files of the other commands name shots, games or several balls. */
  const isJob = (text: string) => /^lane:/m.test(text) && !/^(shots|games|balls|players|symptoms):/m.test(text);
  it.each(readdirSync(EXAMPLES).filter((name) => isJob(textOf(name))))("%s, a job file, can be used", (name) => {
    const job = checkJob(readJobText(readFileSync(join(EXAMPLES, name))));
    const question = job.lane.friction === undefined ? resolvePlan(job).question : resolveShot(job, [60]).question;
    expect(question.ball.finish).toEqual(job.ball.finish);
  });
});
