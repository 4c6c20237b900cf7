/** The page and the records, served to this machine: `npm start`, or `node dist/server/main.js`; see docs/server.md for the options. */
import { randomBytes, randomUUID } from "node:crypto";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { JobFault } from "#contract/problem";
import { RecordsFault } from "#contract/records/fault";
import type { Problem } from "#engine/fault";
import { RECORDS_FAULT } from "#words/en/records";
import { problemText } from "#words/problemText";
import { computePool } from "./computePool.ts";
import type { Config } from "./config/configSchema.ts";
import { passwordToSet, readConfig } from "./config/readConfig.ts";
import { jsonLog } from "./log.ts";
import { openBrowser } from "./openBrowser.ts";
import { openShop } from "./openShop.ts";
import { pageInLanguages } from "./pageFiles.ts";
import { firstLine, setPasswordHere } from "./setPassword.ts";
import { startServer } from "./startServer.ts";
import { programVersion } from "./version.ts";

const USAGE =
  "Usage: node dist/server/main.js [--own | --demonstration] [--data FOLDER] [--port 0–65535] [--config FILE] [--no-open] " +
  "[--address ADDRESS --cert FILE --key FILE --name NAME…] [--set-password NAME]";
const BUILT = fileURLToPath(new URL("../", import.meta.url));

process.exitCode = await main(process.argv.slice(2));

async function main(args: string[]): Promise<number> {
  try {
    const config = readConfig(args, process.env);
    const name = passwordToSet(args);
    if (name !== null) return await setPassword(config, name);
    if (!existsSync(join(BUILT, "web", "index.html"))) return complain("The page has not been built yet. Run: npm run build", 1);
    await run(config);
    return 0;
  } catch (error) {
    if (error instanceof JobFault) return complain(`${error.problems.map(problemText).join("\n")}\n${USAGE}`, 2);
    if (error instanceof RecordsFault && error.kind === "refused") return complain(error.problems.map(refusedText).join("\n"), 2);
    if (error instanceof RecordsFault) return complain(notOpened(error), 1);
    return complain(`The server could not start: ${error instanceof Error ? error.message : String(error)}`, 1);
  }
}

/** Instead of serving: the way back in for whoever has the machine. */
async function setPassword(config: Config, name: string): Promise<number> {
  const records = await openShop(config, partsOfShop());
  try {
    if (process.stdin.isTTY) console.log(`New password for ${name}, then Enter:`);
    console.log(await setPasswordHere(records, name, await firstLine(process.stdin)));
    return 0;
  } finally {
    process.stdin.destroy();
    await records.close();
  }
}

function partsOfShop() {
  return { now: Date.now, randomBytes, programVersion: programVersion(), say: (words: string) => console.log(words) };
}

async function run(config: Config): Promise<void> {
  const version = programVersion();
  const log = jsonLog(
    config.log,
    (line) => process.stderr.write(line),
    () => new Date().toISOString(),
  );
  const records = await openShop(config, partsOfShop());
  const pool = computePool();
  const server = await startServer({
    config,
    records,
    executor: pool,
    files: pageInLanguages(BUILT),
    log,
    now: Date.now,
    nowMs: () => performance.now(),
    newId: randomUUID,
    version,
  }).catch(async (error: unknown) => {
    await Promise.all([pool.close(), records.close()]);
    throw error;
  });
  console.log(`Gritwright is at ${server.address}  (stop it with Ctrl+C)`);
  if (config.open) openBrowser(server.address);
  onStop(async () => {
    await server.stop();
    await Promise.all([pool.close(), records.close()]);
  });
}

/** The first signal lets everything end; a second one does not wait. */
function onStop(stop: () => Promise<void>): void {
  let isStopping = false;
  for (const signal of ["SIGINT", "SIGTERM"] as const) {
    process.on(signal, () => {
      if (isStopping) process.exit(1);
      isStopping = true;
      stop().then(
        () => process.exit(0),
        (error: unknown) => process.exit(complain(`The server did not stop as it should: ${String(error)}`, 1)),
      );
    });
  }
}

function notOpened({ kind, about, problems }: RecordsFault): string {
  const wanted = problems.map(({ allowed }) => ` Allowed: ${allowed}.`).join("");
  return `The records could not be opened. ${RECORDS_FAULT[kind](about)}${wanted}`;
}

function refusedText({ path, allowed }: Problem): string {
  return `${path} is not allowed here. Allowed: ${allowed}.`;
}

function complain(words: string, code: number): number {
  console.error(words);
  return code;
}
