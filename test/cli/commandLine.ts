import { spawn } from "node:child_process";
import { randomBytes } from "node:crypto";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll } from "vitest";
import { runCommandLine } from "#cli/commandLine";

export interface Ended {
  readonly code: number;
  readonly stdout: string;
  readonly stderr: string;
}

const ROOT = join(import.meta.dirname, "..", "..");
export const EXAMPLES = join(ROOT, "examples");

/** Runs a command line in this process, from the sources. */
export async function inProcess(...args: string[]): Promise<Ended> {
  let stdout = "";
  let stderr = "";
  const code = await runCommandLine(args, {
    print: (text) => {
      stdout += text;
    },
    draw: (svg) => {
      stdout += svg;
    },
    tell: (text) => {
      stderr += text;
    },
    isTerminal: false,
    workers: 1,
    now: Date.now,
    randomBytes,
  });
  return { code, stdout, stderr };
}

/** Runs the built program in a process of its own, from another folder, as a shop would. */
export function built(...args: string[]): Promise<Ended> {
  return builtWith("", ...args);
}

/** The same with something on its standard input. */
export function builtWith(input: string, ...args: string[]): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [join(ROOT, "dist", "cli", "main.js"), ...args], { cwd: tmpdir() });
    let stdout = "";
    let stderr = "";
    child.stdout.setEncoding("utf8").on("data", (text: string) => {
      stdout += text;
    });
    child.stderr.setEncoding("utf8").on("data", (text: string) => {
      stderr += text;
    });
    child.on("error", reject);
    // A program that reads nothing may be gone before it has been given everything.
    child.stdin.on("error", () => undefined);
    child.stdin.end(input);
    child.on("close", (code) => resolve({ code: code ?? -1, stdout, stderr }));
  });
}

/** A file of its own with this text in it. */
export function fileWith(text: string | Uint8Array, name = "job.yaml"): string {
  const path = join(scratchFolder(), name);
  writeFileSync(path, text);
  return path;
}

const scratch: string[] = [];

/** A folder for this test file alone, gone when it is done. */
export function scratchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "gritwright-cli-"));
  scratch.push(folder);
  return folder;
}

afterAll(() => {
  for (const folder of scratch) rmSync(folder, { recursive: true, force: true });
});
