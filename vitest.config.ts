import { defineConfig } from "vitest/config";

/** Tests that put another module in a program's place: it has to go through the runner, from source. */
const REPLACES_MODULES = ["test/records/versions.test.ts"];

/** What a shorter run leaves out, by commas. */
const LEFT_OUT = process.env.LEFT_OUT?.split(",") ?? [];

/** Where a source was changed a moment ago and nothing is to be built, everything goes through the runner. */
const FROM_SOURCE = process.env.FROM_SOURCE === "1";

/** How `#engine/…` is found: from source, or as built. */
function found(conditions: readonly string[]) {
  const all = [...conditions, "module", "node", "development|production"];
  return { resolve: { conditions: all }, ssr: { resolve: { conditions: all } } };
}

/**
 * Tests run what is built, as a shop does: `#engine/…` is dist/engine, loaded by Node itself. Transformed for the runner, the engine would take two and a half
 * times as long.
 */
export default defineConfig({
  test: {
    globalSetup: FROM_SOURCE ? [] : ["tools/compiled.mjs"],
    // Two cores is what a build machine has; more workers only make the timings of long tests scatter.
    maxWorkers: 2,
    projects: [
      {
        ...found(FROM_SOURCE ? ["source"] : []),
        test: {
          name: "built",
          include: ["test/**/*.test.ts"],
          exclude: ["test/browser/**", ...REPLACES_MODULES, ...LEFT_OUT],
          server: { deps: { external: [/\/dist\//] } },
          // As in the program: many shots run on vectors.
          setupFiles: FROM_SOURCE ? [] : ["test/vectorKernel.ts"],
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
      { ...found(["source"]), test: { name: "source", include: REPLACES_MODULES, testTimeout: 60_000 } },
    ],
  },
});
