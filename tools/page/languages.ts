import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import type { Plugin, Rolldown } from "vite";

/** Exports of a catalogue that are kept or compared, not read. */
const NOT_READ = ["BENCH_WAYS", "LEAVES_IN_WORDS"];
/** What stands there for those whose browser runs no scripts. */
const WITHOUT_SCRIPT: Readonly<Record<string, string>> = {
  de: "Gritwright rechnet in der Seite und braucht dafür JavaScript.",
};

/** The module that holds the chosen catalogue; the page takes one before anything that reads words is loaded. */
const CHOSEN = "virtual:catalogue";
const FIRST = "en";
const PSEUDO = "pseudo";
const HERE = "\0catalogue";
/** What every room wants; asked for while the page gets its language. */
const SOONER = ["react", "opening"];
/**
 * What the page opens with reads of a catalogue; the rest of it comes with the first room that somebody goes to. A build in which the opening reads anything else is
 * refused and says what.
 */
const OPENING: readonly string[] = [
  "bench",
  "figures",
  "rooms/access",
  "rooms/ball",
  "rooms/bench",
  "rooms/due",
  "rooms/frame",
  "rooms/search",
  "rooms/ticket",
  "rooms/today",
  "screens",
];
const REST = "/rest";
const FROM_CATALOGUE = "?from-catalogue";

/** The module that is what the page opens with of a language's catalogue. */
function catalogueOf(language: string): string {
  return `${HERE}/${language}`;
}

/** The modules that a language's catalogue is in: what the page opens with, and the rest. */
export function cataloguesOf(language: string): readonly string[] {
  return [catalogueOf(language), `${catalogueOf(language)}${REST}`];
}

/** Languages that the page is written in: English, and each folder that has figures of its own. @param words folder of the catalogues */
export function languagesIn(words: string): readonly string[] {
  const others = readdirSync(words, { withFileTypes: true }).filter((entry) => entry.isDirectory() && entry.name !== FIRST);
  return [FIRST, ...others.map(({ name }) => name).sort()];
}

/**
 * Words are read from the catalogue that was chosen when the page was loaded: `src/words/en` and `src/words/figures.ts`, wherever the sources name them, become
 * modules that hand out the chosen one's exports. Each language is one chunk, with what every other language has too: what only the command line says is in none.
 * `pseudo` is no language: it is the English catalogue with accents and a third longer, so that a text that stands outside of it, or finds no room, is seen.
 *
 * @param words folder of the catalogues
 * @param languages to choose from, the usual one first
 */
export function catalogues(words: string, languages: readonly string[]): Plugin {
  const english = join(words, FIRST);
  const [pattern] = languagesIn(words).filter((language) => language !== FIRST);
  const names = readdirSync(join(words, pattern), { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .map((name) => name.replaceAll("\\", "/").slice(0, -".ts".length))
    .sort();
  const fileOf = (language: string, name: string) =>
    name === "figures" && language === FIRST ? join(words, "figures.ts") : join(words, language, `${name}.ts`);
  const nameOf = (path: string) => (path === join(words, "figures.ts") ? "figures" : relative(english, path).slice(0, -".ts".length));
  const isEnglish = (path: string) => path.startsWith(`${english}/`) || path === join(words, "figures.ts");
  /** A catalogue reads its own words. */
  const readsOwn = (importer: string | undefined) =>
    importer !== undefined &&
    (importer.startsWith(HERE) || languagesIn(words).some((language) => importer.startsWith(`${join(words, language)}/`)));
  return {
    name: "gritwright-catalogues",
    enforce: "pre",
    async resolveId(source, importer, options) {
      if (source === CHOSEN || source.startsWith(`${CHOSEN}/`)) return HERE + source.slice(CHOSEN.length);
      const found = await this.resolve(source, importer, { ...options, skipSelf: true });
      if (found === null || readsOwn(importer) || !isEnglish(found.id)) return found;
      if (!names.includes(nameOf(found.id))) throw new Error(`${source} is read by the page and not written in "${pattern}".`);
      return found.id + FROM_CATALOGUE;
    },
    load(id) {
      if (id === HERE) return chooser(languages);
      if (id.startsWith(`${HERE}/`)) {
        const [language, rest] = id.slice(HERE.length + 1).split("/");
        return catalogueWith(
          language,
          names.filter((name) => OPENING.includes(name) === (rest === undefined)),
          fileOf,
        );
      }
      if (!id.endsWith(FROM_CATALOGUE)) return null;
      const path = id.slice(0, -FROM_CATALOGUE.length);
      return handedOut(nameOf(path), readFileSync(path, "utf8"));
    },
    generateBundle: {
      order: "post",
      handler(_, bundle) {
        const page = bundle["index.html"];
        if (page?.type !== "asset") return;
        mustChooseFirst(bundle);
        mustOpenWithWords(bundle, nameOf);
        const html = String(page.source);
        for (const language of languages) {
          const sooner = chunksOf(bundle).filter(
            ({ name, moduleIds }) => SOONER.includes(name) || moduleIds.includes(catalogueOf(language)),
          );
          const source = inLanguage(
            html,
            language,
            sooner.map(({ fileName }) => fileName),
          );
          if (language === languages[0]) page.source = source;
          this.emitFile({ type: "asset", fileName: `index.${language}.html`, source });
        }
      },
    },
  };
}

function chunksOf(bundle: Rolldown.OutputBundle): readonly Rolldown.OutputChunk[] {
  return Object.values(bundle).filter((file) => file.type === "chunk");
}

/** Neither what the page begins with nor a catalogue may wait for a word: there is no language yet. */
function mustChooseFirst(bundle: Rolldown.OutputBundle): void {
  const chunks = chunksOf(bundle);
  const begun = chunks.filter(({ name, moduleIds }) => name === "main" || moduleIds.some((id) => id.startsWith(`${HERE}/`)));
  // Grows while it is walked.
  for (const { imports } of begun) {
    begun.push(...chunks.filter((one) => imports.includes(one.fileName) && !begun.includes(one)));
  }
  const reads = begun.flatMap(({ moduleIds }) => moduleIds.filter((id) => id.endsWith(FROM_CATALOGUE)));
  if (reads.length > 0) throw new Error(`The page begins with words, before it has a language: ${reads.join(", ")}`);
}

/** What the page opens with may read only what comes with it. */
function mustOpenWithWords(bundle: Rolldown.OutputBundle, nameOf: (path: string) => string): void {
  const chunks = chunksOf(bundle);
  const opened = chunks.filter(({ name }) => name === "opening");
  for (const { imports } of opened) opened.push(...chunks.filter((one) => imports.includes(one.fileName) && !opened.includes(one)));
  const reads = opened.flatMap(({ moduleIds }) => moduleIds.filter((id) => id.endsWith(FROM_CATALOGUE)));
  const names = reads.map((id) => nameOf(id.slice(0, -FROM_CATALOGUE.length))).sort();
  if (names.join() !== OPENING.toSorted().join()) throw new Error(`The page opens with these words, and no others: ${names.join(", ")}`);
}

/** The page as its first answer in a language: what stands there without a script, and its catalogue and what else is wanted first asked for at once. */
function inLanguage(html: string, language: string, sooner: readonly string[]): string {
  const links = sooner.map((name) => `    <link rel="modulepreload" crossorigin href="/${name}">\n`).join("");
  const said = WITHOUT_SCRIPT[language];
  const named = html.replace('lang="en"', `lang="${language}"`).replace("  </head>", `${links}  </head>`);
  return said === undefined ? named : named.replace(/(?<=<noscript>).*(?=<\/noscript>)/, said);
}

function chooser(languages: readonly string[]): string {
  const loaded = languages.map((language) => {
    const from = (part: string) => `() => import(${JSON.stringify(`${CHOSEN}/${language}${part}`)})`;
    return `${JSON.stringify(language)}: { opening: ${from("")}, rest: ${from(REST)} }`;
  });
  return [
    `const languages = { ${loaded.join(", ")} };`,
    "let chosen = null;",
    "let parts = null;",
    `export async function takeLanguage(language) { parts = languages[language] ?? languages[${JSON.stringify(languages[0])}]; chosen = (await parts.opening()).default; }`,
    "export async function takeRest() { chosen = { ...chosen, ...(await parts.rest()).default }; }",
    "export function wordsOf(name) {",
    '  if (chosen === null) throw new Error(name + " was read before a language was chosen.");',
    "  return chosen[name];",
    "}",
  ].join("\n");
}

function catalogueWith(language: string, names: readonly string[], fileOf: (language: string, name: string) => string): string {
  const from = language === PSEUDO ? FIRST : language;
  const longer = language === PSEUDO ? [`import { pseudo } from ${JSON.stringify(join(import.meta.dirname, "pseudo.ts"))};`] : [];
  const entry = (name: string, i: number): string =>
    `${JSON.stringify(name)}: ${language === PSEUDO && name !== "figures" ? `Object.fromEntries(Object.entries(m${i}).map(([key, value]) => [key, ${JSON.stringify(NOT_READ)}.includes(key) ? value : pseudo(value)]))` : `m${i}`}`;
  return [
    ...longer,
    ...names.map((name, i) => `import * as m${i} from ${JSON.stringify(fileOf(from, name))};`),
    `export default { ${names.map(entry).join(",\n")} };`,
  ].join("\n");
}

/** A module with the exports of a catalogue, each as the chosen language has it. */
function handedOut(name: string, source: string): string {
  const exported = [...source.matchAll(/^export (?:const|function) (\w+)/gm)].map(([, one]) => one);
  return [
    `import { wordsOf } from ${JSON.stringify(CHOSEN)};`,
    `const words = wordsOf(${JSON.stringify(name)});`,
    ...exported.map((one) => `export const ${one} = words.${one};`),
  ].join("\n");
}
