import { fileURLToPath } from "node:url";
import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";
import { catalogues, cataloguesOf, languagesIn } from "./tools/page/languages.ts";
import { serviceWorkerList } from "./tools/page/serviceWorkerList.ts";

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
/** `vite build --mode pseudo` builds the page in a language for tests; see docs/decisions/languages.md. */
const PSEUDO = "pseudo";
const WORDS = here("./src/words");
const CATALOGUES = [...languagesIn(WORDS), PSEUDO].flatMap(cataloguesOf);
const web = (file: string): string => here(`./src/web/${file}`);
/** Takes the language, then loads the rest, one piece after the other, and waits for each: what it needs itself must not lie in a piece that it waits for. */
const BEGINNING = [web("main.ts")];
/** The frame of every room, and the shop's first room. */
const OPENING = [web("App.tsx"), web("rooms/today/TodayRoom.tsx")];

interface Modules {
  getModuleInfo(id: string): { readonly importedIds: readonly string[] } | null;
}

function reachedFrom(first: readonly string[], modules: Modules): Set<string> {
  const reached = new Set<string>();
  const left = [...first];
  for (let id = left.pop(); id !== undefined; id = left.pop()) {
    if (reached.has(id)) continue;
    reached.add(id);
    left.push(...(modules.getModuleInfo(id)?.importedIds ?? []));
  }
  return reached;
}

/** Names the piece that a module lies in: which pieces want it is known once all have been read. */
function pieceOf(): (id: string, modules: Modules) => string | null {
  let pieces: Record<"beginning" | "catalogues" | "opening", Set<string>> | null = null;
  return (id, modules) => {
    pieces ??= {
      beginning: reachedFrom(BEGINNING, modules),
      catalogues: reachedFrom(CATALOGUES, modules),
      opening: reachedFrom(OPENING, modules),
    };
    if (BEGINNING.includes(id)) return null;
    if (pieces.beginning.has(id) || /preload-helper|rolldown\/runtime/.test(id)) return "beginning";
    // Each language is a piece of its own; what they read of the engine must not lie beside rooms, which read words.
    if (pieces.catalogues.has(id)) return CATALOGUES.includes(id) || isWords(id) ? null : "beginning";
    if (/node_modules\/(react|react-dom|scheduler)\/|client\/react\.ts$/.test(id)) return "react";
    if (pieces.opening.has(id)) return "opening";
    return /node_modules\/zod\/|src\/contract\/(records|job)\/fields/.test(id) ? "schemas" : null;
  };
}

/** The words of one language, in its own folder or, for English figures, beside them. */
function isWords(id: string): boolean {
  return id === `${WORDS}/figures.ts` || languagesIn(WORDS).some((language) => id.startsWith(`${WORDS}/${language}/`));
}

/**
 * What the page opens with is few files, and one more what many rooms want beside it, schemas apart for the forms that check by them: in pieces by who wants
 * what there are some fifty of a kilobyte or two on every first visit, and each costs a request with its heads. A room's own, and what a few rooms share, is
 * loaded where somebody goes there.
 */
const FEW_FILES = () => [
  { name: pieceOf(), debugName: "pieces", priority: 2 },
  { name: "rooms", minShareCount: 6, priority: 1 },
];

export default defineConfig(({ mode }) => {
  const words = () => catalogues(WORDS, mode === PSEUDO ? [PSEUDO] : languagesIn(WORDS));
  return {
    root: here("./src/web"),
    plugins: [words(), react(), serviceWorkerList(here("./src/web/public"))],
    resolve: {
      // Only our own floors are read from source. The condition "source" would do it too, but packages use it for files that they do not ship.
      alias: [{ find: /^#(engine|words|drawing|contract|exchange|tasks)\/(.*)$/, replacement: here("./src/$1/$2.ts") }],
    },
    worker: { format: "es", plugins: () => [words()] },
    build: {
      outDir: here(mode === PSEUDO ? "./dist/web-pseudo" : "./dist/web"),
      emptyOutDir: true,
      target: "es2022",
      rolldownOptions: {
        input: { main: here("./src/web/index.html"), sw: here("./src/web/offline/serviceWorker.ts") },
        // A service worker is asked for by one name for ever.
        output: {
          entryFileNames: ({ name }) => (name === "sw" ? "sw.js" : "assets/[name]-[hash].js"),
          codeSplitting: { groups: FEW_FILES() },
        },
      },
    },
  };
});
