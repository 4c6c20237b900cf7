import { FORMS } from "#engine/surface/roughness/form";
import type { MeasureOptions } from "#engine/surface/roughness/measure";
import { type TextOptions, USUAL_TEXT } from "#exchange/measured/profileText";
import { UNITS } from "#exchange/measured/units";
import type { OptionName } from "./optionTable.ts";
import type { Line } from "./parseLine.ts";
import { usageFault } from "./usageFault.ts";

/** Most threads that are of any use; a plan has no more pieces that can be computed side by side. */
const MOST_WORKERS = 64;
/** More than any ensemble holds that a plan draws from. */
const MOST_WORLDS = 10_000;
const MOST_SEED = 4294967295;

export interface Options {
  readonly words: readonly string[];
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
}

/** @throws {JobFault} code `usage` for a value that cannot be */
export function readOptions({ words, given }: Line): Options {
  const text = textsOf(given);
  return {
    words,
    json: given.json === true,
    svg: text.svg ?? null,
    seed: text.seed === undefined ? null : wholeNumber("--seed", text.seed, 0, MOST_SEED),
    workers: text.workers === undefined ? null : wholeNumber("--workers", text.workers, 1, MOST_WORKERS),
    worlds: text.worlds === undefined ? null : wholeNumber("--worlds", text.worlds, 1, MOST_WORLDS),
    at: text.at === undefined ? null : distances(text.at),
    taps: text.taps ?? null,
    measure: {
      cutoffMm: text.cutoff === undefined ? null : millimetres("--cutoff", text.cutoff),
      shortCutoffMm: text["short-cutoff"] === undefined ? null : millimetres("--short-cutoff", text["short-cutoff"]),
      form: oneOf("--form", text.form ?? "line", FORMS),
    },
    text: {
      xUnit: oneOf("--x-unit", text["x-unit"] ?? USUAL_TEXT.xUnit, UNITS),
      zUnit: oneOf("--z-unit", text["z-unit"] ?? USUAL_TEXT.zUnit, UNITS),
    },
    on: text.on === undefined ? null : day(text.on),
    book: text.book ?? null,
    due: given.due === true,
    whole: given.whole === true,
    withoutLostFiles: given["without-lost-files"] === true,
    apply: given.apply === true,
    map: text.map === undefined ? null : pairs(text.map),
    by: text.by ?? null,
    shop: text.shop ?? null,
    add: text.add ?? null,
    from: text.from ?? null,
    to: text.to ?? null,
    takeBack: given["take-back"] === true,
  };
}

/** The values that options were given; switches have none. */
function textsOf(given: Line["given"]): Readonly<Partial<Record<OptionName, string>>> {
  return Object.fromEntries(Object.entries(given).filter(([, value]) => typeof value === "string"));
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
