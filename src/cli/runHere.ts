import { randomBytes } from "node:crypto";
import { availableParallelism } from "node:os";
import { runCommandLine } from "./commandLine.ts";

/** More threads than this gain nothing: a plan has about this many finishes to work on at once. */
const MOST_THREADS = 4;

/** Runs a command line in this process, with its streams. */
export async function runHere(args: readonly string[]): Promise<void> {
  // A reader that has seen enough (`gritwright … | head`) is no fault of ours.
  process.stdout.on("error", (fault: NodeJS.ErrnoException) => {
    process.exit(fault.code === "EPIPE" ? 0 : 1);
  });
  process.exitCode = await runCommandLine(args, {
    print: (text) => process.stdout.write(text),
    tell: (text) => process.stderr.write(text),
    isTerminal: process.stderr.isTTY,
    workers: Math.min(MOST_THREADS, availableParallelism()),
    now: Date.now,
    randomBytes,
  });
}
