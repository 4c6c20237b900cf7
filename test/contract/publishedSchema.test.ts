import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { checkJob } from "#contract/job/checkJob";
import { FILE_KINDS, type FileKind, publishedSchema, schemaFile } from "#contract/publishedSchema";
import { resolvePlan, resolveShot } from "#contract/resolve/question";
import { readJobText } from "#exchange/jobFileText";

const ROOT = join(import.meta.dirname, "..", "..");
const EXAMPLES = join(ROOT, "examples");

it.each(FILE_KINDS)("docs/%s.schema.json is what the program checks with (npx tsx --conditions=source tools/fileSchemas.ts)", (kind) => {
  expect(JSON.parse(readFileSync(join(ROOT, "docs", schemaFile(kind)), "utf8"))).toEqual(publishedSchema(kind));
});

it.each(FILE_KINDS)("the id of %s leads to itself where it lies, and the package has it", (kind) => {
  const place = pathToFileURL(join(ROOT, "docs", schemaFile(kind)));
  expect(new URL(String(publishedSchema(kind).$id), place).href).toBe(place.href);
  const { files } = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8")) as { files: string[] };
  expect(files).toContain("docs");
});

it("docs/job-file.md names every key of the schema", () => {
  const page = readFileSync(join(ROOT, "docs", "job-file.md"), "utf8");
  const missing = [...keysOf(publishedSchema("job-file"))].filter((key) => !key.includes(".") && !page.includes(`\`${key}\``));
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

  it.each(readdirSync(EXAMPLES).filter((name) => name.endsWith(".yaml")))(
    "%s tells an editor its schema, and is what that says",
    (name) => {
      const [, kind] = /^# yaml-language-server: \$schema=\.\.\/docs\/([\w-]+)\.schema\.json$/m.exec(textOf(name)) ?? [];
      expect(FILE_KINDS).toContain(kind);
      const published = z.fromJSONSchema(JSON.parse(readFileSync(join(ROOT, "docs", schemaFile(kind as FileKind)), "utf8")));
      const read = readJobText(readFileSync(join(EXAMPLES, name))) as Record<string, unknown>;
      expect(published.safeParse(read).error?.issues).toBeUndefined();
      expect(published.safeParse({ ...read, notAKey: 1 }).success).toBe(false);
    },
  );

  /** Files of the other commands name shots, games or several balls. */
  const isJob = (text: string) => /^lane:/m.test(text) && !/^(shots|games|balls|players|symptoms):/m.test(text);
  it.each(readdirSync(EXAMPLES).filter((name) => isJob(textOf(name))))("%s, a job file, can be used", (name) => {
    const job = checkJob(readJobText(readFileSync(join(EXAMPLES, name))));
    const question = job.lane.friction === undefined ? resolvePlan(job).question : resolveShot(job, [60]).question;
    expect(question.ball.finish).toEqual(job.ball.finish);
  });
});
