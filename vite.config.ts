import { fileURLToPath } from "node:url";
import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  root: here("./src/web"),
  plugins: [react()],
  resolve: {
    // Only our own floors are read from source. The condition "source" would do it too, but packages use it for files that they do not ship.
    alias: [{ find: /^#(engine|words|drawing|contract|exchange|tasks)\/(.*)$/, replacement: here("./src/$1/$2.ts") }],
  },
  worker: { format: "es" },
  build: { outDir: here("./dist/web"), emptyOutDir: true, target: "es2022" },
});
