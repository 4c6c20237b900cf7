/** Starts the built server over a copy of the invented shop: `node tools/browserServer.mjs PORT FOLDER`. */
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { layDownDemonstration } from "./demonstrationShop.mjs";
import { ROOT } from "./setup.mjs";

const [port, data] = process.argv.slice(2);
await layDownDemonstration(data);
process.argv = [...process.argv.slice(0, 2), "--no-open", "--port", port, "--data", data];
await import(pathToFileURL(join(ROOT, "dist", "server", "main.js")).href);
