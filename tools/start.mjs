/**
 * `npm start`: installs and builds what is missing or stale, then opens the app with the invented demonstration shop.
 * `npm start -- --own` opens one's own. Further arguments go to the server; docs/server.md has them.
 */
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { bundleWeb, compile, ensureInstalled, ROOT } from "./setup.mjs";

await ensureInstalled();
const compiled = await compile();
const built = compiled === 0 ? await bundleWeb() : compiled;
if (built !== 0) {
  console.error("The build failed; the messages above say where.");
  process.exit(built);
}
// In this very process, so that a signal to stop reaches the server and nothing between.
await import(pathToFileURL(join(ROOT, "dist", "server", "main.js")).href);
