/** `npm start`: installs and builds what is missing or stale, then opens the app. Further arguments go to the server. */
import { join } from "node:path";
import { bundleWeb, compile, ensureInstalled, ROOT, run } from "./setup.mjs";

await ensureInstalled();
const compiled = await compile();
const built = compiled === 0 ? await bundleWeb() : compiled;
if (built !== 0) {
  console.error("The build failed; the messages above say where.");
  process.exit(built);
}
process.exitCode = await run(process.execPath, [join(ROOT, "dist", "server", "main.js"), ...process.argv.slice(2)]);
