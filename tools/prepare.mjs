/** Run by npm after an install, and by `npx gritwright` on a fresh clone: the command line is there once this is done. */
import { compile, ensureInstalled } from "./setup.mjs";

// Whoever leaves out what builds does not build; to install it all the same would run this once more, and so on without end.
if (!`${process.env.npm_config_omit ?? ""}`.split(/\s+/).includes("dev")) {
  await ensureInstalled();
  process.exitCode = await compile();
}
