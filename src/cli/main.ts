#!/usr/bin/env node
import { pathToFileURL } from "node:url";
import { currentOf, entryOf, OWN_ROOT, programsFolder, readState } from "#server/program/state";

/** Options of `serve` by which it does something else. */
const NOT_SERVING = /^--(?:install-service|uninstall-service|set-password)(?:=|$)/;

const args = process.argv.slice(2);
const folder = programsFolder();
const state = readState(folder, OWN_ROOT);
const isServing = args[0] === "serve" && !args.some((arg) => NOT_SERVING.test(arg));
const tried = isServing && state?.trial != null ? await onTrial(state, state.trial) : null;
if (tried === null) await runCurrent();
else process.exitCode = tried;

async function onTrial(state: NonNullable<ReturnType<typeof readState>>, program: NonNullable<(typeof state)["trial"]>) {
  const { serveOnTrial } = await import("#server/program/onTrial");
  return serveOnTrial({ folder, state, program, args, say: (words) => process.stderr.write(`${words}\n`) });
}

/** A version that was brought in runs in the place of this one. */
async function runCurrent(): Promise<void> {
  const current = currentOf(state);
  if (current !== null) await import(pathToFileURL(entryOf(current)).href);
  else await (await import("./runHere.ts")).runHere(args);
}
