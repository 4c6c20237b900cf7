import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { homedir, userInfo } from "node:os";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import type { PlacedConfig } from "../config/configSchema.ts";
import { USUAL_PORT } from "../listen.ts";
import { userFolder } from "../place/userFolder.ts";
import { installService, NoService, runHere, uninstallService } from "./installService.ts";
import { type Service, serviceOf } from "./service.ts";

/** Options that name a file or a folder: the service is started from elsewhere. */
const PATHS = new Set(["--data", "--config", "--cert", "--key"]);
/** Options that are not the service's. */
const NOT_ITS = new Set(["--install-service", "--uninstall-service", "--move-records", "--no-open"]);

/**
 * What the service is started with: the options of the line, paths from the root on, and what must not change from start to start.
 *
 * @param config what they come to
 */
export function serviceArguments(args: readonly string[], { data, port }: Pick<PlacedConfig, "data" | "port">): string[] {
  const kept: string[] = [];
  for (let at = 0; at < args.length; at++) {
    const [option, inline] = args[at].split(/=(.*)/s, 2);
    if (NOT_ITS.has(option)) continue;
    if (inline !== undefined) kept.push(PATHS.has(option) ? `${option}=${resolve(inline)}` : args[at]);
    else if (PATHS.has(option)) kept.push(option, resolve(args[++at]));
    else kept.push(args[at]);
  }
  const hasData = kept.some((word) => word === "--data" || word.startsWith("--data="));
  return [...kept, ...(hasData ? [] : ["--data", resolve(data)]), ...(port !== null ? [] : ["--port", String(USUAL_PORT)]), "--no-open"];
}

const OWN_PROGRAM = fileURLToPath(new URL("../../cli/main.js", import.meta.url));
/** Remembers what the service is started with, for whoever brings the program up to date. */
export const SERVICE_NOTE = "service.json";

const usersFolder = (): string => userFolder({ platform: process.platform, environment: process.env, home: homedir() });

/** The program as it was called, which stays where it is when a newer one runs in its place; a clone's start is no such program. */
function program(): string {
  const called = process.argv[1];
  return /gritwright$|cli[\\/]main\.js$/.test(called) ? called : OWN_PROGRAM;
}

/** @throws {NoService} on a system of which no service is known */
export function serviceHere(args: readonly string[]): Service {
  const { uid, username } = userInfo();
  const { USERDOMAIN, XDG_CONFIG_HOME } = process.env;
  const logFile = join(usersFolder(), "service.log");
  const service = serviceOf({
    platform: process.platform,
    home: homedir(),
    configHome: XDG_CONFIG_HOME || null,
    userId: uid < 0 ? null : uid,
    userName: USERDOMAIN === undefined ? username : `${USERDOMAIN}\\${username}`,
    command: [process.execPath, program(), ...args],
    logFile,
  });
  if (service === null)
    throw new NoService(
      `Of ${process.platform} no service is known here. Start it with the machine as other programs are: ${program()} serve --no-open`,
    );
  mkdirSync(dirname(logFile), { recursive: true });
  return service;
}

/** @returns what to tell. @throws {NoService} */
export async function installHere(args: readonly string[]): Promise<string> {
  const service = serviceHere(["serve", ...args]);
  writeFileSync(join(usersFolder(), SERVICE_NOTE), JSON.stringify({ args }));
  await installService(service, runHere);
  return `Gritwright is started ${service.when}, and again when it broke. It runs now. To take it out: gritwright serve --uninstall-service\n  ${service.path}`;
}

/** @returns what to tell. @throws {NoService} */
export async function uninstallHere(): Promise<string> {
  const { path, uninstall } = serviceHere([]);
  const wasThere = await uninstallService({ path, uninstall }, runHere);
  rmSync(join(usersFolder(), SERVICE_NOTE), { force: true });
  return wasThere ? "The service is taken out. The records are as they were." : "There was no service of this user.";
}
