import { fileURLToPath } from "node:url";
import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";
import { inLanguage } from "./tools/page/languages.ts";
import { serviceWorkerList } from "./tools/page/serviceWorkerList.ts";

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
/** `vite build --mode de` builds the page in German beside the English one; see docs/decisions/languages.md. */
const OTHER_LANGUAGES = ["de", "pseudo"];

/**
 * What most rooms want is one file: in pieces by who wants what there are some fifty of a kilobyte or two on every first visit, and each costs a request with
 * its heads. A room's own, and what a few rooms share, is loaded where somebody goes there.
 */
const FRAME = { name: "frame", minShareCount: 6 };

export default defineConfig(({ mode }) => {
  const language = OTHER_LANGUAGES.includes(mode) ? mode : "en";
  const words = () => inLanguage(language, here("./src/words"));
  return {
    root: here("./src/web"),
    plugins: [words(), react(), serviceWorkerList(here("./src/web/public"))],
    resolve: {
      // Only our own floors are read from source. The condition "source" would do it too, but packages use it for files that they do not ship.
      alias: [{ find: /^#(engine|words|drawing|contract|exchange|tasks)\/(.*)$/, replacement: here("./src/$1/$2.ts") }],
    },
    worker: { format: "es", plugins: () => [words()] },
    build: {
      outDir: here(language === "en" ? "./dist/web" : `./dist/web-${language}`),
      emptyOutDir: true,
      target: "es2022",
      rolldownOptions: {
        input: { main: here("./src/web/index.html"), sw: here("./src/web/offline/serviceWorker.ts") },
        // A service worker is asked for by one name for ever.
        output: {
          entryFileNames: ({ name }) => (name === "sw" ? "sw.js" : "assets/[name]-[hash].js"),
          codeSplitting: { groups: [FRAME] },
        },
      },
    },
  };
});
