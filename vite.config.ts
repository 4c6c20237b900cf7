import { fileURLToPath } from "node:url";
import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";
import { catalogues, languagesIn } from "./tools/page/languages.ts";
import { serviceWorkerList } from "./tools/page/serviceWorkerList.ts";

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
/** `vite build --mode pseudo` builds the page in a language for tests; see docs/decisions/languages.md. */
const PSEUDO = "pseudo";
/** What has to be there before a language is chosen: nothing in it reads a word. */
const FIRST = { name: "first", test: /\0catalogue$|preload-helper|client\/pageFile|offline\/install/, priority: 10 };

/**
 * What most rooms want is one file: in pieces by who wants what there are some fifty of a kilobyte or two on every first visit, and each costs a request with
 * its heads. A room's own, and what a few rooms share, is loaded where somebody goes there.
 */
const FRAME = { name: "frame", minShareCount: 6 };
/** What the catalogues read of the engine must not lie beside rooms, which read words. */
const ENGINE = { name: "engine", minShareCount: 6, test: /\/src\/(engine|words\/(params|numberedNames|numbers))\b/, priority: 5 };

export default defineConfig(({ mode }) => {
  const words = () => catalogues(here("./src/words"), mode === PSEUDO ? [PSEUDO] : languagesIn(here("./src/words")));
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
          codeSplitting: { groups: [FIRST, ENGINE, FRAME] },
        },
      },
    },
  };
});
