/** Run by npm after an install, and by `npx gritwright` on a fresh clone: the command line is there once this is done. */
import { compile, ensureInstalled } from "./setup.mjs";

await ensureInstalled();
process.exitCode = await compile();
