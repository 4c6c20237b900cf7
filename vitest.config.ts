import { defineConfig } from "vitest/config";

export default defineConfig({
  resolve: { conditions: ["source", "module", "node", "development|production"] },
  ssr: { resolve: { conditions: ["source", "module", "node", "development|production"] } },
  test: {
    include: ["test/**/*.test.ts"],
    exclude: ["test/browser/**"],
    testTimeout: 60_000,
    // Two cores is what a build machine has; more workers only make the timings of long tests scatter.
    maxWorkers: 2,
  },
});
