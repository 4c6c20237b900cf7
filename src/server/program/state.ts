import { existsSync, mkdirSync, readFileSync, renameSync, statSync, writeFileSync } from "node:fs";
import { homedir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { userFolder } from "../place/userFolder.ts";

/* Read before anything else by each command: no package, and no file of ours that reads one. */

/** A version of the program in a folder of its own. */
export interface Program {
  readonly version: string;
  /** Folder of its package.json. */
  readonly root: string;
}

/** Which version runs in the place of the one that was installed. */
export interface ProgramState {
  /** The installed one that this is said of; installed anew, it speaks for itself again. */
  readonly over: { readonly root: string; readonly installedAt: number };
  /** null: the installed one. */
  readonly current: Program | null;
  /** One that has not yet served well for once. */
  readonly trial: Program | null;
  /** How the last trial ended. */
  readonly last: { readonly version: string; readonly isWell: boolean; readonly why: string } | null;
}

/** Folder of this very program. */
export const OWN_ROOT = join(dirname(fileURLToPath(import.meta.url)), "..", "..", "..");

/** Where versions lie that were brought in by `gritwright update`. */
export function programsFolder(): string {
  return join(userFolder({ platform: process.platform, environment: process.env, home: homedir() }), "programs");
}

/** @returns null where nothing has been brought in, or not over this installed program */
export function readState(folder: string, installed: string): ProgramState | null {
  const state = anyState(folder);
  return state?.over.root === installed && state.over.installedAt === installedAt(installed) ? state : null;
}

/** The state that a program goes on from which brings in another one: that of the installed one, also where it runs in its place. */
export function stateOf(folder: string, root: string): ProgramState {
  const state = anyState(folder);
  if (state?.current?.root === root) return state;
  return readState(folder, root) ?? { over: { root, installedAt: installedAt(root) }, current: null, trial: null, last: null };
}

function anyState(folder: string): ProgramState | null {
  try {
    return JSON.parse(readFileSync(join(folder, "state.json"), "utf8")) as ProgramState;
  } catch {
    return null;
  }
}

/** Written whole or not at all. */
export function writeState(folder: string, state: ProgramState): void {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const path = join(folder, "state.json");
  writeFileSync(`${path}.making`, JSON.stringify(state), { flush: true });
  renameSync(`${path}.making`, path);
}

/** The file that is started of a program. */
export function entryOf({ root }: Pick<Program, "root">): string {
  return join(root, "dist", "cli", "main.js");
}

/** What runs where nothing is on trial; null: the installed one itself. */
export function currentOf(state: ProgramState | null): Program | null {
  return state?.current != null && existsSync(entryOf(state.current)) ? state.current : null;
}

function installedAt(root: string): number {
  return statSync(join(root, "package.json")).mtimeMs;
}
