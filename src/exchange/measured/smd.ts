import { measuredFault } from "#contract/problem";
import type { Profile } from "#engine/surface/roughness/profile";
import { checkedHeights } from "./heights.ts";
import { metresOf } from "./units.ts";

const END_OF_RECORD = "\u0003\r\n";
const END_OF_FILE = "\u001a";
const MOST_POINTS = 20_000_000;
/** What the byte sum is taken modulo: by the standard, and as at least one writer of such files has it. */
const MODULI = [65536, 65535] as const;
/** Between the words of a line of the first two records: text strings end with NUL, others with a blank. */
const BETWEEN_WORDS = /[\s\0]+/;
const AXIS_LINE = "type count unit scale datatype increment";

export interface Smd {
  readonly profile: Profile;
  readonly checksumModulo: (typeof MODULI)[number];
}

/**
 * SMD (ISO 5436-2, the older text form): four records, each ended by the byte 03 and a line end. Record 1 names the axes (`CX I count unit scale type increment`, `CZ A count unit scale type`; text strings end with NUL),
 * record 2 is free, record 3 holds a height a line, record 4 the checksum: the sum of the bytes before it, modulo 65536; the byte 1A ends the file, with a line end behind it or without. The axis line's order of words is from memory.
 *
 * @throws {JobFault} `measuredFile`, with what is wrong
 */
export function readSmd(bytes: Uint8Array): Smd {
  const text = new TextDecoder("latin1").decode(bytes);
  const records = text.split(END_OF_RECORD);
  if (records.length < 4 || !text.trimEnd().endsWith(END_OF_FILE))
    throw measuredFault("records", records.length - 1, "4 records and the end mark 1A");
  const checksumModulo = modulusOf(bytes, records);
  const [x, z] = ["CX", "CZ"].map((name) => axisLine(records[0], name));
  const lines = records[2].split(/\r?\n/).filter((line) => line.trim() !== "");
  if (lines.length !== z.count || lines.length > MOST_POINTS) throw measuredFault("size", lines.length, `${z.count} heights`);
  const spacingMm = (x.increment * x.metres * x.scale) / metresOf("mm");
  if (lines.length < 2 || !(spacingMm > 0 && Number.isFinite(spacingMm)))
    throw measuredFault("axis", `CX ${x.increment}`, "an increment above 0 and at least 2 points");
  const toUm = (z.metres * z.scale) / metresOf("um");
  return { profile: { um: checkedHeights(Float64Array.from(lines, (line) => heightOf(line) * toUm)), spacingMm }, checksumModulo };
}

function heightOf(line: string): number {
  if (/bad/i.test(line)) return Number.NaN;
  const value = Number(line);
  if (!Number.isFinite(value)) throw measuredFault("notANumber", line.trim(), "a height a line");
  return value;
}

function axisLine(record: string, name: string): { count: number; metres: number; scale: number; increment: number } {
  const words = record
    .split(/\r?\n/)
    .map((line) => line.split(BETWEEN_WORDS).filter((word) => word !== ""))
    .find(([first]) => first === name);
  if (words === undefined || words.length < 6) throw measuredFault("axis", name, `${name} ${AXIS_LINE}`);
  const [, , count, unit, scale, , increment] = words;
  const numbers = [Number(count), Number(scale), Number(increment ?? "1")];
  if (!numbers.every(Number.isFinite) || !(numbers[1] > 0))
    throw measuredFault("axis", words.join(" "), `${name} ${AXIS_LINE}, finite numbers, a scale above 0`);
  return { count: numbers[0], metres: metresOf(unit.toLowerCase()), scale: numbers[1], increment: numbers[2] };
}

/** Which modulus the stated sum was made with. A sum below both would be the same: then the standard's. */
function modulusOf(bytes: Uint8Array, records: readonly string[]): Smd["checksumModulo"] {
  const length = records.slice(0, 3).reduce((sum, record) => sum + record.length + END_OF_RECORD.length, 0);
  let sum = 0;
  for (let i = 0; i < length; i++) sum += bytes[i];
  const stated = Number(/\d+/.exec(records[3])?.[0] ?? Number.NaN);
  const modulus = MODULI.find((one) => stated === sum % one);
  if (modulus === undefined) throw measuredFault("checksum", Number.isNaN(stated) ? "none" : stated, String(sum % MODULI[0]));
  return modulus;
}
