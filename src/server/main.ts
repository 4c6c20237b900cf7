/** The page, served to this machine: `npm start`, or `node dist/server/main.js [--port 4780] [--no-open]`. */
import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { app } from "./app.ts";
import { listen } from "./listen.ts";
import { openBrowser } from "./openBrowser.ts";
import { pageFiles } from "./pageFiles.ts";

const USAGE = "Usage: node dist/server/main.js [--port 0–65535] [--no-open]";
const PAGE = fileURLToPath(new URL("../web/", import.meta.url));

process.exitCode = await main(process.argv.slice(2));

async function main(args: string[]): Promise<number> {
  const asked = readArguments(args);
  if (typeof asked === "string") return complain(`${asked}\n${USAGE}`, 2);
  if (!existsSync(`${PAGE}index.html`)) return complain("The page has not been built yet. Run: npm run build", 1);
  try {
    const { address } = await listen(app({ files: pageFiles(PAGE) }), asked.port);
    console.log(`Gritwright is at ${address}  (stop it with Ctrl+C)`);
    if (asked.open) openBrowser(address);
    return 0;
  } catch (error) {
    return complain(`No port could be had: ${error instanceof Error ? error.message : String(error)}`, 1);
  }
}

/** What was asked for, or the sentence that says what is wrong with it. */
function readArguments(args: string[]): { port: number | null; open: boolean } | string {
  try {
    const { values } = parseArgs({ args, options: { port: { type: "string" }, "no-open": { type: "boolean" } } });
    const port = values.port === undefined ? null : Number(values.port);
    if (port !== null && !(Number.isInteger(port) && port >= 0 && port <= 65535))
      return `--port ${values.port}: a whole number from 0 to 65535 is allowed.`;
    return { port, open: values["no-open"] !== true };
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

function complain(words: string, code: number): number {
  console.error(words);
  return code;
}
