/**
 * Leaves out each physical term of the model in turn, in a copy of the tree, and demands that the truth tests turn red.
 *
 *   npm run leave-out            prints the table; exit 1 if a term can go without a test noticing
 *
 * docs/validation.md carries the table (npm run validation).
 */
import { execFile } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { TERMS, type Term } from "./terms.ts";

export interface LeftOut {
  readonly term: Term;
  /** Names of the tests that turned red, as far as they were run. */
  readonly red: readonly string[];
}

const ROOT = join(import.meta.dirname, "../..");
const AT_ONCE = 2;

/**
 * Runs every term, two at a time, each worker in a copy of its own.
 *
 * @param until the first red test, which is enough to know that the term is missed; or all of them, which takes five times as long
 */
export async function leaveOutAll(
  until: "first red" | "all red",
  progress: (done: number, of: number, name: string) => void,
): Promise<readonly LeftOut[]> {
  const queue = TERMS.map((term, index) => ({ term, index }));
  const results: LeftOut[] = [];
  let done = 0;
  const worker = async () => {
    const copy = copyOfTree();
    try {
      for (let next = queue.shift(); next; next = queue.shift()) {
        results[next.index] = { term: next.term, red: await redWithout(copy, next.term, until === "first red" ? ["--bail=1"] : []) };
        progress(++done, TERMS.length, next.term.name);
      }
    } finally {
      rmSync(copy, { recursive: true, force: true });
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, worker));
  return results;
}

function copyOfTree(): string {
  const copy = mkdtempSync(join(tmpdir(), "leave-out-"));
  for (const part of ["package.json", "vitest.config.ts", "tsconfig.base.json", "src/engine", "test/truth", "test/surface"]) {
    mkdirSync(join(copy, part, ".."), { recursive: true });
    cpSync(join(ROOT, part), join(copy, part), { recursive: true });
  }
  symlinkSync(join(ROOT, "node_modules"), join(copy, "node_modules"), "junction");
  return copy;
}

async function redWithout(copy: string, term: Term, options: readonly string[]): Promise<readonly string[]> {
  const path = join(copy, "src/engine", term.file);
  const whole = readFileSync(path, "utf8");
  writeFileSync(
    path,
    term.edits.reduce((text, [find, instead]) => replacedOnce(text, find, instead, term), whole),
  );
  const report = join(copy, "report.json");
  rmSync(report, { force: true });
  await run(
    process.execPath,
    [
      join(ROOT, "node_modules/vitest/vitest.mjs"),
      "run",
      "test/truth",
      "test/surface",
      "--reporter=json",
      `--outputFile=${report}`,
      "--testTimeout=20000",
      "--maxWorkers=1",
      ...options,
    ],
    copy,
  );
  writeFileSync(path, whole);
  return failures(readFileSync(report, "utf8"));
}

function replacedOnce(text: string, find: string, instead: string, term: Term): string {
  const pieces = text.split(find);
  if (pieces.length !== 2) throw new Error(`${term.name}: the edit fits ${pieces.length - 1} times in ${term.file}, not once: ${find}`);
  return pieces.join(instead);
}

function run(command: string, args: readonly string[], cwd: string): Promise<void> {
  return new Promise((resolve) => {
    execFile(command, args, { cwd, maxBuffer: 64e6, env: { ...process.env, FROM_SOURCE: "1" } }, () => resolve());
  });
}

interface Report {
  readonly testResults: readonly {
    readonly message: string;
    readonly name: string;
    readonly assertionResults: readonly { readonly status: string; readonly fullName: string }[];
  }[];
}

function failures(text: string): readonly string[] {
  const report: Report = JSON.parse(text);
  return report.testResults.flatMap((file) =>
    file.assertionResults.filter((test) => test.status === "failed").map((test) => test.fullName),
  );
}
