import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Plugin } from "vite";

/** Exports of a catalogue that are kept or compared, not read. */
const NOT_READ = new Set(["LANGUAGE", "BENCH_WAYS", "LEAVES_IN_WORDS"]);
/** What stands there for those whose browser runs no scripts. */
const WITHOUT_SCRIPT: Readonly<Record<string, string>> = {
  de: "Gritwright rechnet in der Seite und braucht dafür JavaScript.",
};
const AS_WRITTEN = "?as-written";

/**
 * Takes the words of the page from another language's catalogue: what `src/words/en` and `src/words/figures.ts` hold is taken from `src/words/<language>`.
 * `pseudo` is no language: it is the English catalogue with accents and a third longer, so that a text that stands outside of it, or finds no room, is seen.
 *
 * @param words folder of the catalogues
 */
export function inLanguage(language: string, words: string): Plugin {
  const english = join(words, "en");
  const isSwapped = (path: string): boolean => path.startsWith(`${english}/`) || path === join(words, "figures.ts");
  return {
    name: "gritwright-language",
    enforce: "pre",
    transformIndexHtml: (html) =>
      language === "en" || language === "pseudo"
        ? html
        : html.replace('lang="en"', `lang="${language}"`).replace(/(?<=<noscript>).*(?=<\/noscript>)/, WITHOUT_SCRIPT[language] ?? ""),
    async resolveId(source, importer, options) {
      if (language === "en" || source.endsWith(AS_WRITTEN)) return null;
      const found = await this.resolve(source, importer, { ...options, skipSelf: true });
      if (found === null || !isSwapped(found.id)) return found;
      if (language === "pseudo") return found.id.startsWith(`${english}/`) ? `${found.id}?pseudo` : found;
      const other = found.id.startsWith(`${english}/`)
        ? join(words, language, found.id.slice(english.length))
        : join(words, language, "figures.ts");
      if (!existsSync(other)) throw new Error(`${source} is not written in "${language}": there is no ${other}.`);
      return other;
    },
    load(id) {
      if (!id.endsWith("?pseudo")) return null;
      const path = id.slice(0, -"?pseudo".length);
      return pseudoModule(path, readFileSync(path, "utf8"));
    },
  };
}

/** A module with the exports of a catalogue, each text in it made longer and accented. */
function pseudoModule(path: string, source: string): string {
  const names = [...source.matchAll(/^export (?:const|function) (\w+)/gm)].map(([, name]) => name);
  return [
    `import * as written from ${JSON.stringify(path + AS_WRITTEN)};`,
    `import { pseudo } from ${JSON.stringify(join(import.meta.dirname, "pseudo.ts"))};`,
    ...names.map((name) => `export const ${name} = ${NOT_READ.has(name) ? `written.${name}` : `pseudo(written.${name})`};`),
  ].join("\n");
}
