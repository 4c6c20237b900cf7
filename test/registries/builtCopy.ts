import { spawnSync } from "node:child_process";
import { join } from "node:path";
import react from "@vitejs/plugin-react";
import { build } from "vite";
import { catalogues, languagesIn } from "../../tools/page/languages.ts";
import type { CopyOfSources } from "../floors/copyOfSources.ts";

const FLOORS = ["engine", "words", "words/de", "drawing", "contract", "exchange", "tasks", "records", "server", "cli", "web"];

export const COPIED = ["src", "test/registries", "package.json", "tsconfig.base.json"];

/** Builds a copy, and says which of its files the compiler refuses. */
export function compiled(copy: CopyOfSources): { readonly refused: readonly string[]; readonly said: string } {
  const { stdout } = copy.run("typescript/bin/tsc", "-b", ...FLOORS.map((floor) => `src/${floor}`));
  return { refused: [...new Set([...stdout.matchAll(/^(\S+?)\(\d+,\d+\): error/gm)].map(([, file]) => file))].sort(), said: stdout };
}

/** @throws where it does not build */
export function mustBuild(copy: CopyOfSources): void {
  const { refused, said } = compiled(copy);
  if (refused.length > 0) throw new Error(`the copy does not build:\n${said}`);
}

/** What a script of the copy prints. */
export function printed({ folder }: CopyOfSources, script: string, ...args: string[]): string {
  const { stdout, stderr, status } = spawnSync(process.execPath, [join(folder, script), ...args], { cwd: folder, encoding: "utf8" });
  if (status !== 0) throw new Error(`${script} ${args.join(" ")}: ${stderr}${stdout}`);
  return stdout;
}

/** The page's own forms of the copy, in a language. */
export async function formsIn(copy: CopyOfSources, language: "en" | "de") {
  const outDir = join(copy.folder, "dist", "forms");
  const words = join(copy.folder, "src/words");
  await build({
    configFile: false,
    root: copy.folder,
    logLevel: "error",
    // Where the page would ask the shop; no form does while it is drawn.
    define: { "location.origin": JSON.stringify("https://shop.invalid") },
    plugins: [catalogues(words, languagesIn(words)), react()],
    resolve: {
      alias: [{ find: /^#(engine|words|drawing|contract|exchange|tasks)\/(.*)$/, replacement: join(copy.folder, "src/$1/$2.ts") }],
    },
    build: { ssr: join(copy.folder, "test/registries/begin.mjs"), outDir, target: "es2022", minify: false },
  });
  return JSON.parse(printed(copy, "dist/forms/begin.js", language));
}
