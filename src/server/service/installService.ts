import { execFile } from "node:child_process";
import { existsSync, mkdirSync, rmSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import type { Service, Step } from "./service.ts";

/** The service could not be installed or taken out; the message says what to do. */
export class NoService extends Error {
  override readonly name = "NoService";
}

/** Runs a command and gives what it said where it failed; null where it did what it was to. */
export type Run = (command: readonly string[]) => Promise<string | null>;

/** Writes the file and makes it known to the system, which starts the server. @throws {NoService} */
export async function installService({ path, text, encoding, install }: Service, run: Run): Promise<void> {
  try {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, encoding === "utf16le" ? `\uFEFF${text}` : text, { encoding, mode: 0o644 });
  } catch (error) {
    throw new NoService(`${path} could not be written (${codeOf(error)}). Nothing was installed. Does the folder belong to this user?`);
  }
  await runAll(install, run, `The service lies in ${path}, but is not running.`);
}

/** Stops the server, and takes out the file; the records stay. @returns whether there was one */
export async function uninstallService({ path, uninstall }: Pick<Service, "path" | "uninstall">, run: Run): Promise<boolean> {
  const wasThere = existsSync(path);
  await runAll(uninstall, run, "");
  try {
    rmSync(path, { force: true });
  } catch (error) {
    throw new NoService(`${path} could not be taken out (${codeOf(error)}). Does it belong to another user, or to root?`);
  }
  return wasThere;
}

export async function runAll(steps: readonly Step[], run: Run, meanwhile: string): Promise<void> {
  for (const { command, mayFail } of steps) {
    const said = await run(command);
    if (said !== null && !mayFail)
      throw new NoService([meanwhile, `${command.join(" ")} said: ${said}`, adviceFor(said)].filter(Boolean).join("\n"));
  }
}

function adviceFor(said: string): string {
  if (/ENOENT/.test(said)) return "This system has no such command: start the server with it as you start other programs with it.";
  if (/bus|not been booted with systemd/i.test(said))
    return "systemd is not running for this user, as in a container or after su. Sign in as the user itself, or install as root.";
  if (/denied|access|permitted|privileg/i.test(said))
    return "This wants more rights: on Windows, open the terminal as administrator; else use sudo.";
  return "";
}

function codeOf(error: unknown): string {
  return error instanceof Error && "code" in error ? String(error.code) : String(error);
}

/** Runs it here. */
export function runHere([command, ...args]: readonly string[]): Promise<string | null> {
  return new Promise((resolve) => {
    execFile(command, args, { windowsHide: true }, (fault, _out, err) => resolve(fault === null ? null : err.trim() || fault.message));
  });
}
