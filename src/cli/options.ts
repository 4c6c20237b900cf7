import { parseArgs } from "node:util";
import { type JobFault, wholeFileFault } from "#contract/problem";
import { FORMS } from "#engine/surface/roughness/form";
import type { MeasureOptions } from "#engine/surface/roughness/measure";
import { type TextOptions, USUAL_TEXT } from "#exchange/measured/profileText";
import { UNITS } from "#exchange/measured/units";

/** Most threads that are of any use; a plan has no more pieces that can be computed side by side. */
const MOST_WORKERS = 64;
/** More than any ensemble holds that a plan draws from. */
const MOST_WORLDS = 10_000;
const MOST_SEED = 4294967295;

const KNOWN = {
  json: { type: "boolean", default: false },
  svg: { type: "string" },
  seed: { type: "string" },
  workers: { type: "string" },
  worlds: { type: "string" },
  at: { type: "string" },
  taps: { type: "string" },
  on: { type: "string" },
  book: { type: "string" },
  cutoff: { type: "string" },
  "short-cutoff": { type: "string" },
  form: { type: "string" },
  "x-unit": { type: "string" },
  "z-unit": { type: "string" },
  due: { type: "boolean", default: false },
  whole: { type: "boolean", default: false },
  "without-lost-files": { type: "boolean", default: false },
  apply: { type: "boolean", default: false },
  map: { type: "string" },
  by: { type: "string" },
  shop: { type: "string" },
  add: { type: "string" },
  from: { type: "string" },
  to: { type: "string" },
  "take-back": { type: "boolean", default: false },
  help: { type: "boolean", short: "h", default: false },
  version: { type: "boolean", short: "v", default: false },
} as const;

export type OptionName = keyof typeof KNOWN;

export interface Options {
  readonly words: readonly string[];
  /** The options that stand on the line. */
  readonly given: readonly OptionName[];
  readonly json: boolean;
  readonly svg: string | null;
  readonly seed: number | null;
  readonly workers: number | null;
  /** In how many worlds a plan is computed, or as many as there are. */
  readonly worlds: number | null;
  /** Distances along the lane, ft. */
  readonly at: readonly number[] | null;
  /** File of the points of the lane in a video. */
  readonly taps: string | null;
  /** How a profile is measured, and the units of text columns that do not name theirs. */
  readonly measure: MeasureOptions;
  readonly text: TextOptions;
  /** Day of play, `2026-05-31`. */
  readonly on: string | null;
  readonly book: string | null;
  /** The backup of the schedule, and only where it is time. */
  readonly due: boolean;
  /** A backup with photos and files in it. */
  readonly whole: boolean;
  /** Restore what is there of a backup whose photos or files are not all. */
  readonly withoutLostFiles: boolean;
  /** Do what was only shown. */
  readonly apply: boolean;
  /** Field by column of a table. */
  readonly map: Readonly<Record<string, string>> | null;
  /** Initials of who does it. */
  readonly by: string | null;
  /** Name or id of a shop, where several share a database. */
  readonly shop: string | null;
  /** Name of a shop to be added. */
  readonly add: string | null;
  /** A shop's folder or the address of a database, on each side of a move. */
  readonly from: string | null;
  readonly to: string | null;
  /** Open again what was moved away. */
  readonly takeBack: boolean;
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
    given: (Object.keys(KNOWN) as OptionName[]).filter((name) => args.some((arg) => arg === `--${name}` || arg.startsWith(`--${name}=`))),
    json: values.json,
    svg: values.svg ?? null,
    seed: values.seed === undefined ? null : wholeNumber("--seed", values.seed, 0, MOST_SEED),
    workers: values.workers === undefined ? null : wholeNumber("--workers", values.workers, 1, MOST_WORKERS),
    worlds: values.worlds === undefined ? null : wholeNumber("--worlds", values.worlds, 1, MOST_WORLDS),
    at: values.at === undefined ? null : distances(values.at),
    taps: values.taps ?? null,
    measure: {
      cutoffMm: values.cutoff === undefined ? null : millimetres("--cutoff", values.cutoff),
      shortCutoffMm: values["short-cutoff"] === undefined ? null : millimetres("--short-cutoff", values["short-cutoff"]),
      form: oneOf("--form", values.form ?? "line", FORMS),
    },
    text: {
      xUnit: oneOf("--x-unit", values["x-unit"] ?? USUAL_TEXT.xUnit, UNITS),
      zUnit: oneOf("--z-unit", values["z-unit"] ?? USUAL_TEXT.zUnit, UNITS),
    },
    on: values.on === undefined ? null : day(values.on),
    book: values.book ?? null,
    due: values.due,
    whole: values.whole,
    withoutLostFiles: values["without-lost-files"],
    apply: values.apply,
    map: values.map === undefined ? null : pairs(values.map),
    by: values.by ?? null,
    shop: values.shop ?? null,
    add: values.add ?? null,
    from: values.from ?? null,
    to: values.to ?? null,
    takeBack: values["take-back"],
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
    const detail =
      fault instanceof Error
        ? (/'(--[\w-]+)[^']*' argument is ambiguous/
            .exec(fault.message)?.[1]
            ?.concat(" wants a value that is not another option; a negative number is not allowed") ?? fault.message.split(". ")[0])
        : String(fault);
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

function oneOf<Word extends string>(option: string, text: string, words: readonly Word[]): Word {
  const word = words.find((one) => one === text);
  if (word === undefined) throw usageFault(`${option} wants one of ${words.join(", ")}; "${text}" is none.`, words.join(", "), text);
  return word;
}

function millimetres(option: string, text: string): number {
  const value = Number(text);
  if (text.trim() !== "" && value > 0 && value <= 100) return value;
  throw usageFault(`${option} wants a length in mm, above 0 and at most 100; "${text}" is none.`, "0 < x ≤ 100 mm", text);
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

function pairs(text: string): Record<string, string> {
  const parts = text.split(",").map((part) => part.split("=").map((side) => side.trim()));
  if (parts.every((sides) => sides.length === 2 && sides.every((side) => side !== ""))) return Object.fromEntries(parts);
  throw usageFault(`--map wants columns and fields: --map "Customer=name,Tel=phone"; "${text}" is not that.`, "COLUMN=FIELD,…", text);
}

function day(text: string): string {
  const at = /^\d{4}-\d{2}-\d{2}$/.test(text) ? new Date(`${text}T00:00:00Z`) : new Date(Number.NaN);
  // A day that is not in the calendar rolls over into the next month, or is no date at all.
  if (!Number.isNaN(at.getTime()) && at.toISOString().startsWith(text)) return text;
  throw usageFault(`--on wants a day of the calendar, 2026-05-31; "${text}" is none.`, "a date, 2026-05-31", text);
}
