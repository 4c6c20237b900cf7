import { fileURLToPath } from "node:url";
import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";
import { serviceWorkerList } from "./tools/page/serviceWorkerList.ts";

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  root: here("./src/web"),
  plugins: [react(), serviceWorkerList(here("./src/web/public"))],
  resolve: {
    // Only our own floors are read from source. The condition "source" would do it too, but packages use it for files that they do not ship.
    alias: [{ find: /^#(engine|words|drawing|contract|exchange|tasks)\/(.*)$/, replacement: here("./src/$1/$2.ts") }],
  },
  worker: { format: "es" },
  build: {
    outDir: here("./dist/web"),
    emptyOutDir: true,
    target: "es2022",
    rolldownOptions: {
      input: { main: here("./src/web/index.html"), sw: here("./src/web/offline/serviceWorker.ts") },
      // A service worker is asked for by one name for ever.
      output: { entryFileNames: ({ name }) => (name === "sw" ? "sw.js" : "assets/[name]-[hash].js") },
    },
  },
});
