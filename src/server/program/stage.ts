import { execFile } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { type Inspected, NoUpdate } from "./inspect.ts";
import { entryOf, type Program, type ProgramState } from "./state.ts";

/** Puts a package with all that it stands on under a folder, as npm does for all users. @returns null, or what it complained of */
export type Install = (prefix: string, file: string) => Promise<string | null>;

/**
 * Puts a version into a folder of its own beside the others, and asks it for its version.
 *
 * @throws {NoUpdate}
 */
export async function staged(folder: string, file: string, { version, sha256 }: Inspected, install: Install): Promise<Program> {
  const place = join(folder, `${version}-${sha256.slice(0, 12)}`);
  const program: Program = { version, root: join(place, ...(process.platform === "win32" ? [] : ["lib"]), "node_modules", "gritwright") };
  if (!existsSync(place)) {
    const making = `${place}.making`;
    rmSync(making, { recursive: true, force: true });
    mkdirSync(making, { recursive: true, mode: 0o700 });
    const said = await install(making, resolve(file));
    if (said !== null) {
      rmSync(making, { recursive: true, force: true });
      throw new NoUpdate(
        `npm could not install it: ${said}\nIt fetches the packages that it stands on: is there a connection? Nothing has changed.`,
      );
    }
    renameSync(making, place);
  }
  const answer = await ran(process.execPath, [entryOf(program), "--version"]);
  if (answer.out.trim() === version) return program;
  rmSync(place, { recursive: true, force: true });
  throw new NoUpdate(`Version ${version} does not start: ${answer.err.trim() || answer.out.trim()}\nNothing has changed.`, "the version");
}

/** Takes out versions that nothing speaks of any more. */
export function removeOthers(folder: string, { current, trial }: ProgramState, keep: string): void {
  if (!existsSync(folder)) return;
  const kept = [current?.root, trial?.root, keep].filter((root) => root !== undefined);
  for (const { name } of readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isDirectory())) {
    const place = join(folder, name);
    if (!kept.some((root) => resolve(root).startsWith(resolve(place)))) rmSync(place, { recursive: true, force: true });
  }
}

/** With the npm that came with this Node, where it lies where it usually does. */
export async function installWithNpm(prefix: string, file: string): Promise<string | null> {
  const beside = dirname(process.execPath);
  const places = [join(beside, "node_modules"), join(beside, "..", "lib", "node_modules"), "/usr/share/nodejs"];
  const npm = places.map((place) => join(place, "npm", "bin", "npm-cli.js")).find((path) => existsSync(path));
  const args = ["install", "--global", "--prefix", prefix, "--omit=dev", "--no-audit", "--no-fund", "--allow-scripts=better-sqlite3", file];
  const { code, err } =
    npm === undefined ? await ran("npm", args, process.platform === "win32") : await ran(process.execPath, [npm, ...args]);
  return code === 0 ? null : err.trim().split("\n").slice(-12).join("\n");
}

function ran(command: string, args: readonly string[], shell = false): Promise<{ code: number; out: string; err: string }> {
  return new Promise((resolve) => {
    execFile(command, args, { shell, maxBuffer: 64e6, windowsHide: true }, (fault, out, err) => {
      resolve({ code: fault === null ? 0 : 1, out, err: err || (fault?.message ?? "") });
    });
  });
}
