import { cpSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { gunzipSync, gzipSync } from "node:zlib";
import { createTar, parseTar } from "nanotar";
import type { Install } from "#server/program/stage";

const ROOT = join(import.meta.dirname, "..", "..");
const manifest = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8")) as Record<string, unknown>;

/** What `npm pack` would put into a package of the built program, as another version. */
export function builtPackage(path: string, version: string, change: Readonly<Record<string, string>> = {}): string {
  const dist = join(ROOT, "dist");
  const runs = readdirSync(dist, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(dist, join(entry.parentPath, entry.name)))
    .filter((name) => !/\.d\.ts$|\.map$|\.tsbuildinfo$|(^|[\\/])\.[^\\/]+[\\/]/.test(name));
  const files = new Map(runs.map((name) => [join("dist", name).replaceAll("\\", "/"), readFileSync(join(dist, name))]));
  for (const [name, text] of Object.entries(change)) files.set(name, Buffer.from(text));
  return written(path, version, files);
}

/** A package that has everything a program of ours must have, and does nothing but what its one file says. */
export function strangePackage(path: string, version: string, main: string, about: Readonly<Record<string, unknown>> = {}): string {
  const files = new Map(["dist/server/serve.js", "dist/web/index.html"].map((name) => [name, Buffer.from("x")]));
  return written(path, version, files.set("dist/cli/main.js", Buffer.from(main)), about);
}

function written(path: string, version: string, files: ReadonlyMap<string, Buffer>, about: Readonly<Record<string, unknown>> = {}): string {
  const json = JSON.stringify({ ...manifest, version, ...about });
  const all = [["package.json", Buffer.from(json)] as const, ...files];
  writeFileSync(path, gzipSync(createTar(all.map(([name, data]) => ({ name: `package/${name}`, data }))), { level: 1 }));
  return path;
}

/** In the place of npm's, which fetches: lays out what is in the package, over the packages that are installed here. */
export const laidOut: Install = async (prefix, file) => {
  layOut(file, join(prefix, "lib", "node_modules", "gritwright"));
  return null;
};

/** @returns the folder of the program */
export function layOut(file: string, root: string): string {
  for (const { name, data } of parseTar(Uint8Array.from(gunzipSync(readFileSync(file))))) {
    const path = join(root, name.replace(/^package\//, ""));
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, data ?? new Uint8Array());
  }
  symlinkSync(join(ROOT, "node_modules"), join(root, "node_modules"), "junction");
  return root;
}

/** A copy of a file with some bytes of it changed, or its end cut off. */
export function damaged(file: string, path: string, how: "changed" | "cut"): string {
  cpSync(file, path);
  const bytes = readFileSync(file);
  if (how === "changed") bytes.fill(0x55, Math.floor(bytes.length / 2), Math.floor(bytes.length / 2) + 20);
  writeFileSync(path, how === "cut" ? bytes.subarray(0, bytes.length - 1000) : bytes);
  return path;
}
