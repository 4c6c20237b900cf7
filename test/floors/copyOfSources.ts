import { type SpawnSyncReturns, spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

export const ROOT = join(import.meta.dirname, "..", "..");

/** A copy of the program in which something may be planted. */
export interface CopyOfSources {
  readonly folder: string;
  /** Runs a script of a package that is installed, in the copy: `typescript/bin/tsc`. */
  run(program: string, ...args: string[]): SpawnSyncReturns<string>;
  /** Puts text before a piece of a file that stands in it once. */
  plant(path: string, before: string, text: string): void;
  remove(): void;
}

/** @param names what is copied: folders and files of the project */
export function copyOfSources(names: readonly string[]): CopyOfSources {
  const folder = mkdtempSync(join(tmpdir(), "gritwright-copy-"));
  for (const name of names) cpSync(join(ROOT, name), join(folder, name), { recursive: true });
  symlinkSync(join(ROOT, "node_modules"), join(folder, "node_modules"), "junction");
  return {
    folder,
    run: (program, ...args) =>
      spawnSync(process.execPath, [join(ROOT, "node_modules", ...program.split("/")), ...args], { cwd: folder, encoding: "utf8" }),
    plant(path, before, text) {
      const source = readFileSync(join(folder, path), "utf8");
      if (source.split(before).length !== 2) throw new Error(`${path} does not hold once: ${before}`);
      writeFileSync(
        join(folder, path),
        source.replace(before, () => text + before),
      );
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
