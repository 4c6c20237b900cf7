import { readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { checkFile } from "#contract/job/checkJob";
import { JobFault, type JobProblem, wholeFileFault } from "#contract/problem";
import { readJobText } from "#exchange/jobFileText";
import { withoutPassword } from "#records/database/address";
import { type Config, completed, configSchema } from "./configSchema.ts";
import { fromEnvironment, setAt, VARIABLES } from "./environment.ts";

const OPTIONS = {
  port: { type: "string" },
  "no-open": { type: "boolean" },
  own: { type: "boolean" },
  demonstration: { type: "boolean" },
  data: { type: "string" },
  config: { type: "string" },
  address: { type: "string" },
  cert: { type: "string" },
  key: { type: "string" },
  name: { type: "string", multiple: true },
  "set-password": { type: "string" },
  "move-records": { type: "boolean" },
  "install-service": { type: "boolean" },
  "uninstall-service": { type: "boolean" },
} as const;

type Values = Record<string, unknown>;
type Source = (path: string) => string;

/**
 * The configuration: what the command line says goes before the environment, that before the file, that before the usual values.
 *
 * @param args after the program's name
 * @throws {JobFault} with every problem, each naming the option, the variable or the key of the file where it stands
 */
export function readConfig(args: readonly string[], environment: Readonly<Record<string, string | undefined>>): Config {
  const { values: asked, configPath } = fromArguments(args);
  const path = configPath ?? environment.GRITWRIGHT_CONFIG ?? null;
  const inFile = path === null ? {} : checked(readFile(path), (key) => (key === "" ? path : `${path}: ${key}`));
  const inEnvironment = checked(fromEnvironment(environment), variableOf);
  const inArguments = checked(asked, (key) => `--${key}`);
  return completed(checkFile(configSchema, merged(merged(inFile, inEnvironment), inArguments)));
}

function fromArguments(args: readonly string[]): { values: Values; configPath: string | null } {
  const given = parsed(args);
  if (given.own === true && given.demonstration === true) throw usage("--own or --demonstration, not both");
  const values: Values = {};
  if (given.port !== undefined) setAt(values, ["port"], /^\d+$/.test(given.port) ? Number(given.port) : given.port);
  if (given["no-open"] === true) setAt(values, ["open"], false);
  if (given.own === true) setAt(values, ["shop"], "own");
  if (given.demonstration === true) setAt(values, ["shop"], "demonstration");
  for (const option of ["data", "address", "cert", "key"] as const) if (given[option] !== undefined) setAt(values, [option], given[option]);
  if (given.name !== undefined) setAt(values, ["names"], given.name);
  return { values, configPath: given.config ?? null };
}

/** What is to be done besides, before or instead of serving. */
export interface AskedBesides {
  /** The sign-in name whose password is to be set: `--set-password NAME`. */
  readonly setPassword: string | null;
  /** A shop that lies in an older folder is moved before it is opened. */
  readonly moveRecords: boolean;
  readonly service: "install" | "uninstall" | null;
  /** Whether the line, or the file it names, says which shop it is. */
  readonly namesShop: boolean;
}

/** @throws {JobFault} for options that there are not */
export function askedBesides(args: readonly string[]): AskedBesides {
  const given = parsed(args);
  const [install, uninstall] = [given["install-service"] === true, given["uninstall-service"] === true];
  if (install && uninstall) throw usage("--install-service or --uninstall-service, not both");
  return {
    setPassword: given["set-password"] ?? null,
    moveRecords: given["move-records"] ?? false,
    service: install ? "install" : uninstall ? "uninstall" : null,
    namesShop: given.own === true || given.demonstration === true || given.config !== undefined,
  };
}

function parsed(args: readonly string[]) {
  try {
    return parseArgs({ args: [...args], options: OPTIONS }).values;
  } catch (error) {
    throw usage(error instanceof Error ? error.message : String(error));
  }
}

function usage(detail: string): JobFault {
  return wholeFileFault(
    "usage",
    "usage",
    Object.keys(OPTIONS)
      .map((name) => `--${name}`)
      .join(", "),
    { detail },
  );
}

function readFile(path: string): unknown {
  try {
    return readJobText(readFileSync(path));
  } catch (fault) {
    if (fault instanceof JobFault)
      throw new JobFault(
        fault.code,
        fault.problems.map((problem) => ({ ...problem, path })),
      );
    const isMissing = fault instanceof Error && "code" in fault && fault.code === "ENOENT";
    throw wholeFileFault("unreadable", isMissing ? "noFile" : "noAccess", "a configuration file in YAML or JSON", {}, path);
  }
}

/** The values, once they have been checked by themselves, so that a problem is told with the place it came from. */
function checked(values: unknown, source: Source): Values {
  try {
    return checkFile(configSchema, values);
  } catch (fault) {
    if (!(fault instanceof JobFault)) throw fault;
    throw new JobFault(
      fault.code,
      fault.problems.map((problem): JobProblem => ({ ...problem, path: source(problem.path), value: hushed(problem.value) })),
    );
  }
}

/** What is told of a value that cannot be used: an address without its password. */
function hushed(value: unknown): unknown {
  return typeof value === "string" ? withoutPassword(value) : value;
}

function variableOf(key: string): string {
  return VARIABLES.find(({ path }) => path.join(".") === key)?.name ?? key;
}

function merged(under: Values, over: Values): Values {
  const both = { ...under };
  for (const [key, value] of Object.entries(over)) {
    const below = under[key];
    both[key] = isValues(value) && isValues(below) ? merged(below, value) : value;
  }
  return both;
}

function isValues(value: unknown): value is Values {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
