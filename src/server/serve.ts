import { randomUUID } from "node:crypto";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { JobFault } from "#contract/problem";
import { RecordsFault } from "#contract/records/fault";
import type { Problem } from "#engine/fault";
import { RECORDS_FAULT } from "#words/en/records";
import { problemText } from "#words/problemText";
import { computePool } from "./computePool.ts";
import type { PlacedConfig } from "./config/configSchema.ts";
import { type AskedBesides, askedBesides, readConfig } from "./config/readConfig.ts";
import { jsonLog } from "./log.ts";
import { openBrowser } from "./openBrowser.ts";
import { openShop } from "./openShop.ts";
import { pageInLanguages } from "./pageFiles.ts";
import { askToMove } from "./place/askToMove.ts";
import { placed } from "./place/placed.ts";
import { placeHere } from "./place/placeHere.ts";
import type { Listening } from "./program/wellness.ts";
import { installHere, serviceArguments, uninstallHere } from "./service/asService.ts";
import { NoService } from "./service/installService.ts";
import { firstLine, setPasswordHere } from "./setPassword.ts";
import { shopPartsHere } from "./shopPartsHere.ts";
import { startServer } from "./startServer.ts";
import { programVersion } from "./version.ts";

const USAGE =
  "Usage: gritwright serve [--own | --demonstration] [--data FOLDER] [--port 0–65535] [--config FILE] [--no-open] " +
  "[--address ADDRESS --cert FILE --key FILE --name NAME…] [--set-password NAME] [--move-records] [--install-service | --uninstall-service]";
const BUILT = fileURLToPath(new URL("../", import.meta.url));

/**
 * Serves the page and the records: `gritwright serve`, or `npm start`; docs/server.md has the options.
 *
 * @returns the exit code where it does not serve: 1 our fault or the machine's, 2 what cannot be used. Else it serves on after it has returned.
 */
export async function serve(args: readonly string[]): Promise<0 | 1 | 2> {
  try {
    const besides = askedBesides(args);
    if (besides.service === "uninstall") return answer(await uninstallHere());
    const read = readConfig(args, process.env);
    if (besides.service === "install") mustBeWhole(besides);
    const config = await placed(
      read,
      placeHere(async () => besides.moveRecords || (isSomebodyThere() && (await askToMove()))),
    );
    if (besides.setPassword !== null) return await setPassword(config, besides.setPassword);
    if (!existsSync(join(BUILT, "web", "index.html"))) return complain("The page has not been built yet. Run: npm run build", 1);
    if (besides.service === "install") return answer(await installHere(serviceArguments(args, config)));
    await run(config);
    return 0;
  } catch (error) {
    if (error instanceof NoService) return complain(error.message, 2);
    if (error instanceof JobFault) return complain(`${error.problems.map(problemText).join("\n")}\n${USAGE}`, 2);
    if (error instanceof RecordsFault && error.kind === "refused") return complain(error.problems.map(refusedText).join("\n"), 2);
    if (error instanceof RecordsFault) return complain(notOpened(error), 1);
    return complain(`The server could not start: ${portText(error) ?? (error instanceof Error ? error.message : String(error))}`, 1);
  }
}

/** A service sees neither this terminal's variables nor who sits there, and starts the same shop each time. @throws {NoService} */
function mustBeWhole({ namesShop }: AskedBesides): void {
  const variables = Object.keys(process.env).filter((name) => name.startsWith("GRITWRIGHT_"));
  if (variables.length > 0)
    throw new NoService(`A service does not see ${variables.join(", ")}. Put that into a file, and name it: --config FILE.`);
  if (!namesShop) throw new NoService("Which shop is the service to open? --own, or --demonstration.");
}

/** Instead of serving: the way back in for whoever has the machine. */
async function setPassword(config: PlacedConfig, name: string): Promise<0> {
  const records = await openShop(config, shopPartsHere());
  try {
    if (process.stdin.isTTY) console.log(`New password for ${name}, then Enter:`);
    console.log(await setPasswordHere(records, name, await firstLine(process.stdin)));
    return 0;
  } finally {
    process.stdin.destroy();
    await records.close();
  }
}

function isSomebodyThere(): boolean {
  return process.stdin.isTTY && process.stdout.isTTY;
}

async function run(config: PlacedConfig): Promise<void> {
  const version = programVersion();
  const log = jsonLog(
    config.log,
    (line) => process.stderr.write(line),
    () => new Date().toISOString(),
  );
  const records = await openShop(config, shopPartsHere());
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
  const { port } = new URL(server.address);
  process.send?.({
    gritwright: "listening",
    address: config.address,
    // An address leaves out the port that its kind usually has.
    port: port === "" ? (config.cert === null ? 80 : 443) : Number(port),
    isEncrypted: config.cert !== null,
  } satisfies Listening);
  console.log(`Gritwright is at ${server.address}  (stop it with Ctrl+C)`);
  if (config.open) openBrowser(server.address);
  onStop(async () => {
    await server.stop();
    await Promise.all([pool.close(), records.close()]);
  });
}

/** The first signal lets everything end; a second one does not wait. Whoever watches this server and is gone leaves none behind. */
function onStop(stop: () => Promise<void>): void {
  let isStopping = false;
  const end = (): void => {
    if (isStopping) process.exit(1);
    isStopping = true;
    stop().then(
      () => process.exit(0),
      (error: unknown) => process.exit(complain(`The server did not stop as it should: ${String(error)}`, 1)),
    );
  };
  for (const signal of ["SIGINT", "SIGTERM", "disconnect"] as const) process.on(signal, end);
}

/** What to do where no port could be had. */
function portText(error: unknown): string | null {
  if (!(error instanceof Error && "code" in error && "port" in error)) return null;
  if (error.code === "EADDRINUSE")
    return `port ${error.port} is taken, perhaps by a Gritwright that runs already. Stop what has it, or choose another: --port N.`;
  if (error.code === "EACCES") return `this user may not have port ${error.port}. Choose one above 1023: --port N.`;
  return null;
}

function notOpened({ kind, about, problems }: RecordsFault): string {
  const wanted = problems.map(({ allowed }) => ` Allowed: ${allowed}.`).join("");
  const isPlace = problems.length === 0 && (kind === "readOnly" || kind === "notReachable") && about !== "the PostgreSQL database";
  const elsewhere = isPlace ? " It must lie in a folder that this user may write to: --data FOLDER names another." : "";
  return `The records could not be opened. ${RECORDS_FAULT[kind](about)}${wanted}${elsewhere}`;
}

function refusedText({ path, allowed }: Problem): string {
  return `${path} is not allowed here. Allowed: ${allowed}.`;
}

function answer(words: string): 0 {
  console.log(words);
  return 0;
}

function complain<Code extends 1 | 2>(words: string, code: Code): Code {
  console.error(words);
  return code;
}
