import { parseArgs } from "node:util";
import { type JobFault, wholeFileFault } from "#contract/problem";

/** Most threads that are of any use; a plan has no more pieces that can be computed side by side. */
const MOST_WORKERS = 64;
const MOST_SEED = 4294967295;

const KNOWN = {
  json: { type: "boolean", default: false },
  svg: { type: "string" },
  seed: { type: "string" },
  workers: { type: "string" },
  at: { type: "string" },
  help: { type: "boolean", short: "h", default: false },
  version: { type: "boolean", short: "v", default: false },
} as const;

export interface Options {
  readonly words: readonly string[];
  readonly json: boolean;
  readonly svg: string | null;
  readonly seed: number | null;
  readonly workers: number | null;
  /** Distances along the lane, ft. */
  readonly at: readonly number[] | null;
  readonly help: boolean;
  readonly version: boolean;
}

/** Whether JSON was asked for, readable even where the rest of the line is not. */
export function wantsJson(args: readonly string[]): boolean {
  return args.includes("--json");
}

/** @throws {JobFault} code `usage` for an option that is not known, or a value that cannot be */
export function readOptions(args: readonly string[]): Options {
  const { values, positionals } = parse(args);
  return {
    words: positionals,
    json: values.json,
    svg: values.svg ?? null,
    seed: values.seed === undefined ? null : wholeNumber("--seed", values.seed, 0, MOST_SEED),
    workers: values.workers === undefined ? null : wholeNumber("--workers", values.workers, 1, MOST_WORKERS),
    at: values.at === undefined ? null : distances(values.at),
    help: values.help,
    version: values.version,
  };
}

/** A fault of the command line itself. */
export function usageFault(detail: string, allowed: string, value: unknown = null): JobFault {
  return wholeFileFault("usage", "usage", allowed, { detail }, value);
}

function parse(args: readonly string[]) {
  try {
    return parseArgs({ args: [...args], options: KNOWN, allowPositionals: true });
  } catch (fault) {
    // Node's own text names the option; its hint about "--" would only confuse here.
    const detail = fault instanceof Error ? fault.message.split(". ")[0] : String(fault);
    throw usageFault(
      `${detail.replace(/\.$/, "")}.`,
      Object.keys(KNOWN)
        .map((name) => `--${name}`)
        .join(", "),
      args.join(" "),
    );
  }
}

function wholeNumber(option: string, text: string, least: number, most: number): number {
  const value = Number(text);
  if (/^\d+$/.test(text) && value >= least && value <= most) return value;
  throw usageFault(`${option} wants a whole number from ${least} to ${most}; "${text}" is none.`, `${least} ≤ x ≤ ${most}`, text);
}

function distances(text: string): number[] {
  const values = text.split(",").map((part) => (part.trim() === "" ? Number.NaN : Number(part)));
  if (values.every((value) => Number.isFinite(value) && value >= 0 && value <= 60)) return values;
  throw usageFault(
    `--at wants distances from the foul line in ft, 0 to 60, with commas between: --at 15,30,45. "${text}" is not that.`,
    "0 ≤ x ≤ 60 ft",
    text,
  );
}
